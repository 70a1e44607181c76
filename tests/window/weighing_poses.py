"""The weigh bench for pictures: jars that stand open, and what is done before each picture."""

from app.calculations.codes import Kind, numbered
from app.lookups.pots import recipes
from app.lookups.recipes import recipe_then
from app.store.book import Book
from app.store.deed import By
from app.work.jars import JarIn, Refill, open_jar, refill, supplier_lot
from app.work.recipes import ComponentIn, RecipeIn, write_recipe

_DYES = ("B2 mid blue", "N1 navy", "K1 black", "Y1 lemon")


def open_the_jars(book: Book) -> None:
    """Four jars stand open, one of them refilled, and Ferry Ledger's recipe is written."""
    da = By("DA", "balance")
    lot = book.do(supplier_lot, 1, "p", by=da).answer
    for number, dye in enumerate(_DYES, 1):
        book.do(open_jar, JarIn(number, dye, ((lot, 140_000),), 1000), by=da)
    book.do(refill, 1, Refill("q", 500_000), by=da)
    found = next(one for one in book.ask(recipes) if one.colourway == "Ferry Ledger")
    book.do(write_recipe, RecipeIn(
        book.ask(recipe_then, found.version).colourway,
        (ComponentIn("B2 mid blue", "owf", 8500), ComponentIn("N1 navy", "owf", 4000),
         ComponentIn("K1 black", "owf", 200),
         ComponentIn("acetic acid", "owf", 15_000, "assistant", "5 % vinegar")),
        liquor_tenths=200, reason="deeper navy"), by=da)


def _code(kind: Kind, number: int) -> str:
    return numbered(kind, number).text


def _weigh_out(it) -> None:
    """A weigh-out is begun for two cords of Ferry Ledger."""
    it.scan(_code(Kind.DISC, 46), _code(Kind.DISC, 47))
    it.press("F", "Return", "Return")


def _jar(it, number: int) -> None:
    it.scan(_code(Kind.JAR, number))


AT_THE_BALANCE = {
    "weighing-empty": lambda it: None,
    "weighing-start": lambda it: (
        it.scan(_code(Kind.DISC, 46), _code(Kind.DISC, 47)), it.press("F", "Return")),
    "weighing": lambda it: (_weigh_out(it), _jar(it, 1), it.press(*"11.2")),
    "weighing-wrong": lambda it: (_weigh_out(it), _jar(it, 4)),
    "weighing-little": lambda it: (_weigh_out(it), it.press("F4", "F4")),
    "weighing-stopped": lambda it: (
        _weigh_out(it), _jar(it, 1), it.press("F8"), it.scan(_code(Kind.ACTION, 11))),
    "weighing-jars": lambda it: it.press("F4"),
    "weighing-jar": lambda it: _jar(it, 1),
    "weighing-recipe": lambda it: it.press("F6", "F", "Return"),
}
