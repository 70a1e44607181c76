"""At the weigh bench: jars 1 to 4 (turquoise, lemon, black, navy) and a recipe for 602 g."""

from app.calculations.codes import Kind, numbered
from app.lookups.weighings import open_weighings
from app.store.book import Book
from app.work.recipes import ComponentIn
from tests.dyehouse import DYES, Dyehouse
from tests.window.benches.at_work import begin_work
from tests.window.hands import pause, send

WEIGHING = 3


def jar(number):
    """The code on a jar's plate."""
    return numbered(Kind.JAR, number).text


def vessel(number):
    """The code on a bottle's plate."""
    return numbered(Kind.VESSEL, number).text


def begin_weighing_bench(qtbot, settings, studio, components: tuple[ComponentIn, ...] = DYES):
    """At the balance, on a morning when nothing is weighed yet."""
    house = Dyehouse(studio, components)
    for at_work in begin_work(qtbot, settings, studio, WEIGHING):
        at_work.house = house
        yield at_work


def begin_602(bench):
    """By keys alone: 602 g weighed dry, the one colourway."""
    bench.type("602")
    bench.bench.hand.setFocus()
    bench.type("sluice")
    bench.press("Enter", "Enter")
    assert bench.bench.hand.cup.isVisible()


def weigh(bench, number, grams):
    """Scan a jar; write what the balance says, and Enter."""
    before = len(out(bench).lines)
    bench.scan(jar(number))
    bench._qtbot.waitUntil(lambda: bench.bench.hand.cup.field.isVisible())
    bench.type(grams)
    bench.press("Enter")
    bench._qtbot.waitUntil(lambda: len(out(bench).lines) > before
                           and not out(bench).lines[-1].is_open)
    bench.quiet()


def balance_types(bench, text):
    """A balance that types its reading as fast as a scanner, with Enter."""
    send(bench.window, text + "\r", 5)
    bench._qtbot.wait(300)
    bench.quiet()


def out(bench):
    """The one open weigh-out as the book has it."""
    (found,) = bench.studio.book.ask(open_weighings)
    return found


def shown(bench):
    """What is read at two metres: the name, what is wanted, what is in the cup, the word."""
    cup = bench.bench.hand.cup
    return tuple(part.accessibleName() for part in (cup.name, cup.wanted, cup.cup, cup.verdict))


def wait_a_while():
    """Longer than a trigger bounces."""
    for _ in range(3):
        pause()


def again(qtbot, settings, studio, path):
    """The computer is switched on again after the power failed, at the weigh bench."""
    studio.book = Book(path, studio.clock)
    yield from begin_work(qtbot, settings, studio, WEIGHING)
