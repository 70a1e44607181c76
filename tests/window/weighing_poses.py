"""The weigh bench for pictures: jars that stand open, and what is done before each picture."""

from decimal import Decimal

from app.calculations.codes import Kind, numbered
from app.lookups.jars import jar_with
from app.lookups.pots import recipes
from app.lookups.recipes import recipe_then
from app.scanning.balance_ear import Heard, Wiring
from app.scanning.balance_lines import Weight
from app.store.book import Book
from app.store.deed import By
from app.window.posing import quiet
from app.work.balances import BalanceIn, set_up_balance
from app.work.jars import JarIn, Refill, open_jar, refill, set_reorder, supplier_lot
from app.work.recipes import ComponentIn, RecipeIn, write_recipe
from app.work.stocks import StockIn, make_stock
from app.work.weigh_lines import LineIn, begin_line, take_weight
from app.work.weighing import WeighingIn, begin_weighing

_DYES = ("B2 mid blue", "N1 navy", "K1 black", "Y1 lemon")


def open_the_jars(book: Book) -> None:
    """Four jars stand open, one of them refilled, and Ferry Ledger's recipe is written."""
    da = By("DA", "balance")
    lot = book.do(supplier_lot, 1, "p", by=da).answer
    for number, dye in enumerate(_DYES, 1):
        book.do(open_jar, JarIn(number, dye, ((lot, 140_000),), 1000), by=da)
    book.do(refill, 1, Refill("q", 500_000), by=da)
    book.do(set_reorder, 4, 150_000, by=da)
    out = book.do(begin_weighing, WeighingIn("stock"), by=da).answer
    line = book.do(begin_line, LineIn(out, fill=book.ask(jar_with, _code(Kind.JAR, 1)).fill),
                   by=da).answer
    book.do(take_weight, line, 10_000, by=da)
    book.do(make_stock, StockIn(out, 1000), by=da)
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


def _two(it) -> None:
    """The studio has a kitchen balance and a fine one, and the kitchen balance is in use."""
    bench = it.window.floor.bench()
    for balance in (BalanceIn(1, "kitchen balance", Decimal("0.1"), Decimal(3000)),
                    BalanceIn(3, "fine balance", Decimal("0.01"), Decimal(600))):
        bench.do(set_up_balance, balance)
    quiet(it.window)
    it.scan(_code(Kind.BALANCE, 1))


def _wire(it, figures: str, *, stands: bool, why: str = "") -> None:
    """What the wire says, without one."""
    balance, number = it.window.balance, it.window.balance.plate
    kept = balance._settings.wiring
    balance._settings.wiring = Wiring("COM3", balance=number)
    weight = Weight(f"N {figures} g", Decimal(figures), figures) if figures else None
    balance.heard.emit(Heard(weight, stands, why, (f"N   {figures} g",) if figures else ()))
    balance._settings.wiring = kept


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
    "weighing-buying": lambda it: (_jar(it, 1), it.press("F10")),
    "weighing-strength": lambda it: (_jar(it, 2), it.press(*"500", "Return")),
    "weighing-new-jar": lambda it: it.press("F4", "F9"),
    "weighing-stocks": lambda it: it.press("F9"),
    "weighing-stock": lambda it: (
        it.press("F9", "F9"), _jar(it, 1), it.press(*"10.2", "Return", *"1000")),
    "weighing-recipe": lambda it: it.press("F6", "F", "Return"),
    "weighing-steps": lambda it: it.press(
        "F6", "F", "Return", "F3", *"heat up", "Tab", *"85", "Tab", *"46", "Return"),
    "weighing-zones": lambda it: it.press(
        "F6", "F", "Return", "F4", "A", "Tab", *"60", "Tab", *"90", "Return",
        "B", "Tab", *"40", "Tab", *"57", "Return"),
    "weighing-kitchen": lambda it: (_two(it), _weigh_out(it), it.press("F4", "F4")),
    "weighing-live": lambda it: (
        _two(it), _weigh_out(it), _jar(it, 1), _wire(it, "11.9", stands=True)),
    "weighing-moving": lambda it: (
        _two(it), _weigh_out(it), _jar(it, 1), _wire(it, "7.3", stands=False)),
    "weighing-unplugged": lambda it: (
        _two(it), _weigh_out(it), _jar(it, 1),
        _wire(it, "", stands=False, why="The balance at COM3 is unplugged. What was weighed is "
                                        "kept; type the weight, or plug it in again.")),
    "weighing-balances": lambda it: (_two(it), it.press("F5"), _wire(it, "5.12", stands=True)),
}
