"""A fault is told, and yarn is seen good, at the tag table and while skeins are twisted."""

from app.lookups.printed import tags_of
from app.lookups.reports import reports
from tests.window.benches.at_work import DONE, GOOD, disc, plate
from tests.window.faults.told import card_of, seen


def test_it_is_told_while_tags_are_tied_on_and_while_skeins_are_twisted(work):
    """At the tag table of the skein whose tag was scanned; of a cord without tags, of its lot."""
    studio = work.studio
    cone = studio.cone()
    cord, other = studio.wind(cone, 3), studio.wind(cone, 2, "red", studio.discs[1])
    studio.dye(cord)
    studio.dye(other)
    (pile,) = studio.finish(cord, red=3)
    first, *_ = studio.tag(pile, 2)
    tags = studio.book.ask(tags_of, pile)
    work.enter(7)
    work.scan(tags[0].mark)
    work.press("F1")
    work.scan(plate(2), DONE)
    assert work.said == "stain on 1 skein"
    work.scan(tags[1].mark, GOOD)
    assert [row[1:] for row in seen(work)] == [(1, "tag table"), (0, "tag table")]
    work.enter(6)
    work.scan(disc(32))
    assert "Look for “stain”: it was told of yarn that shares cone " in (
        work.bench.card.look_for.text())
    work.press("F1")
    work.click(card_of(work).count.line)
    work.type("1")
    work.scan(plate(2), DONE)
    stated = studio.book.ask(reports)[0]
    assert (stated.seen_at, stated.count, stated.faulty) == ("inspection", 1, 0)
    work.scan(tags[0].mark, GOOD)
    assert seen(work)[-1] == (first, 0, "inspection")
