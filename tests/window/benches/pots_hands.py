"""At the pots: discs that wait, and what lies in the pots."""

from app.lookups.bundles import bundle_facts
from app.lookups.now import NOW
from app.lookups.pots import pots_now
from app.work.dyeing import name_colourway
from tests.window.benches.at_work import begin_work


def begin_dyeing(qtbot, settings, studio):
    """At the pots; 7 and 5 skeins of two cones, both with red ties, hang on discs 031 and 032."""
    one, other, third = studio.cones(3)
    studio.wind(one, 7, "red", studio.discs[0])
    studio.wind(other, 5, "red", studio.discs[1])
    studio.wind(third, 8, "yellow", studio.discs[2])
    studio.do(name_colourway, "Ferry Ledger", "#2E3553")
    studio.do(name_colourway, "Plum Stone in a Pocket")
    yield from begin_work(qtbot, settings, studio, 4)


def in_pots(pots):
    """{pot: codes and counts} as the book has it."""
    return {
        now.pot: [(lot.code, lot.count) for lot in now.lots]
        for now in pots.studio.book.ask(pots_now)
    }


def cones_of(pots, number):
    """(word, least, most) for each cone of what hangs on a disc."""
    facts = pots.studio.book.ask(bundle_facts, pots.studio.discs[number - 31], NOW)
    return [
        (link.word, link.least, link.most)
        for row in facts.rows
        for link in pots.studio.origins(row)
    ]
