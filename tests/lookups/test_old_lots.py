"""What can be said of an old lot, and which were opened."""

from app.lookups.old_lots import LiesHere, can_be_old, opened_last
from app.work.bases import describe_base
from app.work.opening_stock import LayHere, open_lots
from tests.makers import Studio, tarnfield

TARNFIELD, GLOVE = "Tarnfield 4-ply", "Sluice Keeper's Glove"


def test_bases_put_ups_colourways_and_codes_are_offered(studio: Studio) -> None:
    lot, _ = studio.tagged(studio.cone(), 1)
    now = studio.book.ask(can_be_old)
    assert now.put_ups == {TARNFIELD: ("skein", "mini")}
    assert now.colourways == (GLOVE,)
    assert now.codes == {studio.code(lot)}


def test_only_the_newest_description_of_a_base_counts(studio: Studio) -> None:
    words = tarnfield()
    studio.do(describe_base, tarnfield(put_ups=words.put_ups[:1]))
    assert studio.book.ask(can_be_old).put_ups == {TARNFIELD: ("skein",)}


def test_old_lots_are_listed_the_newest_first_and_no_others(studio: Studio) -> None:
    studio.tagged(studio.cone(), 1)
    assert studio.book.ask(opened_last) == ()
    studio.do(open_lots, [LayHere("OLD1", TARNFIELD, GLOVE, 4)])
    studio.do(open_lots, [LayHere("OLD2", TARNFIELD, GLOVE, 9, "mini")])
    assert studio.book.ask(opened_last) == (
        LiesHere("OLD2", GLOVE, TARNFIELD, "mini", 9, "#1B856E"),
        LiesHere("OLD1", GLOVE, TARNFIELD, "skein", 4, "#1B856E"))
    studio.undo()
    assert [one.code for one in studio.book.ask(opened_last)] == ["OLD1"]
