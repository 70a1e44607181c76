"""At the finishing table with finished skeins, and the benches they go to from there."""

from app.lookups.discs import bundle_on
from app.lookups.now import NOW
from app.lookups.tagging import piles_waiting
from app.lookups.things import by_code, of_lot
from app.work.studio import choose
from tests.window.benches.at_work import begin_work


def begin_remaking(qtbot, settings, studio, count=8):
    """At the finishing table; so many skeins of one lot lie finished on the table."""
    studio.do(choose, {"name": "Quernlow Dyeyard", "address": "Staithe Row 3, Quernlow"})
    studio.lot, studio.skeins = studio.tagged(studio.cone(), count)
    yield from begin_work(qtbot, settings, studio, 6)


def marks(studio, lot=None):
    """The codes of a lot's tags that are not void."""
    tags = studio.book.ask(of_lot, lot or studio.lot)
    return [tag.code for tag in tags if not tag.void]


def mark_of(studio, skein):
    return next(tag.code for tag in studio.book.ask(of_lot, studio.lot)
                if tag.kind == "skein" and tag.id == skein)


def void(studio, mark):
    """What is said of a void tag besides that."""
    found = studio.book.ask(by_code, mark)
    assert found.void
    return found.became


def piles(studio):
    """(lot, put-up, count) of what waits for tags."""
    return [(pile.lot, pile.put_up, pile.left) for pile in studio.book.ask(piles_waiting)]


def hangs(studio, disc):
    return studio.book.ask(bundle_on, disc, NOW) is not None
