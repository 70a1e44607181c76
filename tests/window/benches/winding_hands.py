"""Hands at the reel: what is read there, and what hangs on its discs."""

from app.calculations.codes import Kind, numbered
from app.lookups.bundles import bundle_facts
from app.lookups.now import NOW
from tests.window.benches.at_work import AtWork, open_window


def begin_winding(qtbot, settings, studio):
    """The winding bench in the real window, with nothing on its reel; closed at the end."""
    settings.person, settings.station = "OW", "reel"
    yield from open_window(AtWork, qtbot, settings, studio.book, (2,), studio)


def cone(number):
    return numbered(Kind.CONE, number).text


def cards(reel):
    return reel.bench.cards


def big(reel):
    """Tie, turns and count, as they are read across the room."""
    card = cards(reel).cone
    return card.ties.tie, card.turns.accessibleName(), card.count.accessibleName()


def on_disc(studio, number):
    """What hangs on a disc now: {tie: count}, and its cones."""
    found = studio.book.ask(bundle_facts, studio.discs[number - 31], NOW)
    return found and ({part.tie: part.count for part in found.ties}, found.cones)


def groups(reel):
    """The keys of the cord, as they are read."""
    return [key.words() for key in cards(reel).cord.keys]


def today(reel):
    return [row.accessibleName() for row in cards(reel).today.rows]
