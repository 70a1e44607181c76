"""Tagged skeins that are in hand once more."""

from app.lookups.finished import finished_skeins, is_believed, reasons, scanned_tag
from app.lookups.things import of_lot
from app.work.holding import hold
from app.work.moving import call_second
from app.work.remaking import cut
from tests.makers import EACH_MG


def marks(studio):
    return {tag.id: tag.code for tag in studio.book.ask(of_lot, 1) if tag.kind == "skein"}


def test_a_skein_says_what_it_is_and_what_its_base_is_wound_in(studio):
    _, (one, *_) = studio.tagged(studio.cone(), 2)
    skein = studio.book.ask(scanned_tag, marks(studio)[one]).skein
    assert (skein.yarn, skein.base, skein.put_up, skein.mg, skein.state) == (
        one, "Tarnfield 4-ply", "skein", EACH_MG, "table")
    assert [form.name for form in skein.forms] == ["skein", "mini"]
    assert (skein.second, skein.held) == (None, False)


def test_a_hold_and_a_second_are_seen_on_it(studio):
    cone = studio.cone()
    _, (one, *_) = studio.tagged(cone, 2)
    studio.do(hold, "cone", cone, "oil")
    studio.do(call_second, [one], "tie mark")
    skein = studio.book.ask(scanned_tag, marks(studio)[one]).skein
    assert (skein.second, skein.held) == ("tie mark", True)


def test_a_tag_that_came_off_is_found_without_a_skein(studio):
    _, (one, other) = studio.tagged(studio.cone(), 2)
    code = marks(studio)[one]
    pile = studio.do(cut, one, 5, "mini", 0)
    tag = studio.book.ask(scanned_tag, code)
    assert (tag.skein, tag.found.void) == (None, True)
    assert studio.book.ask(scanned_tag, "2619K44-7M").found is None
    left = studio.book.ask(finished_skeins, [code, marks(studio)[other]])
    assert [skein.yarn for skein in left] == [other]
    assert studio.book.ask(is_believed, pile)
    studio.undo()
    assert not studio.book.ask(is_believed, pile)


def test_reasons_are_said_once_and_the_last_first(studio):
    _, skeins = studio.tagged(studio.cone(), 4)
    for skein, why in zip(skeins, ("tie mark", "knot", "tie mark"), strict=False):
        studio.do(call_second, [skein], why)
    assert studio.book.ask(reasons) == ("tie mark", "knot")
    assert studio.book.ask(reasons, 1) == ("tie mark",)
