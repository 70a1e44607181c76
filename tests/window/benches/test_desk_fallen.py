"""A label fell off: its skein stays not known until it is matched, and the lost mark is void."""

import pytest

from app.calculations.codes import Kind, numbered, shown
from app.lookups.present import NOT_MATCHED
from app.lookups.printed import VOID, WAITING, tags_of
from app.lookups.skeins import named_by_tag, now_of
from app.lookups.untagged import finds_waiting
from app.work.bundling import make_plates
from app.work.moving import To, move
from app.work.studio import choose
from tests.window.benches.at_work import DONE, open_window, plate
from tests.window.benches.desk_hands import AtDesk


@pytest.fixture
def shop(qtbot, settings, studio, opened):
    """Six skeins of a lot lie on shelf 4; counter, tag table and desk are there."""
    studio.do(choose, {"name": "Quernlow Dyeyard", "address": "Staithe Row 3, Quernlow"})
    (studio.shelf,) = studio.do(make_plates, Kind.SHELF, [4])
    group = studio.wind(studio.cone(), 6)
    studio.lot = studio.dye(group)
    (studio.pile,) = studio.finish(group, red=6)
    studio.skeins = studio.tag(studio.pile, 6)
    studio.do(move, studio.skeins, To("shelf", place=studio.shelf))
    settings.person, settings.station = "OW", "till"
    yield from open_window(AtDesk, qtbot, settings, studio.book, (7, 9, 10), studio)


def write(shop, field, text):
    field.line.setFocus()
    field.line.clear()
    shop.type(text)


def found_under_the_shelf(shop):
    """The counter takes it in: what it is, nobody knows."""
    shop.enter(9)
    shop.press("F9")
    asked = shop.bench.hand.question
    write(shop, asked.base, "tarn")
    write(shop, asked.grams, "97")
    shop.press("Enter")
    (find,) = shop.studio.book.ask(finds_waiting)
    return find


def counted_short(shop, marks):
    """The shelf is counted: one mark is met by nobody, and the book is put right."""
    shop.enter(7)
    shop.scan(numbered(Kind.SHELF, 4).text)
    shop.press("F6")
    shop.scan(*marks, DONE)
    counting = shop.bench.shelf
    assert counting.why is not None  # something differs
    write(shop, counting.why.field, "fallen label")
    shop.press("Enter", "F8")


def test_a_fallen_label_is_void_once_its_skein_is_matched_and_wears_another(shop):
    studio = shop.studio
    marks = {row: skein.mark for row, skein in
             studio.book.ask(named_by_tag, studio.skeins).items()}
    fallen = studio.skeins[2]
    find = found_under_the_shelf(shop)
    assert studio.present()[NOT_MATCHED, "skein"].count == 1
    assert studio.origins(find.yarn, "lot")[0].word == "not known"
    counted_short(shop, [mark for row, mark in marks.items() if row != fallen])
    assert studio.book.ask(now_of, fallen).state == "lost"

    shop.enter(0)
    shop.ask(marks[fallen])
    card = shop.hand.page.tagless
    assert "1 skein of Tarnfield 4-ply without a tag, 97.0 g" in shop.words(card)
    assert [key.accessibleName() for key in card.keys] == ["It is this one, its tag was lost"]
    shop.click(card.keys[0])
    assert shop.hand.page.why.why.title == (
        f"The skein without a tag is {shown(marks[fallen])}?")
    shop.scan(plate(1))
    assert [(link.thing, link.word, link.basis) for link in studio.origins(find.yarn, "lot")] == [
        (studio.lot, "known", "matched")]
    assert {key: amount.count for key, amount in studio.present().items()} == {
        ("shelf", "skein"): 5, ("table", "skein"): 1}

    shop.enter(7)
    shop.scan(next(mark for row, mark in marks.items() if row != fallen))
    shop.click(shop.bench.in_hand.print_card.reasons[2])
    shop.scan(DONE)
    (new,) = [tag for tag in studio.book.ask(tags_of, studio.pile) if tag.state == WAITING]
    shop.scan(new.mark, new.mark)
    assert shop.said == f"tied {shown(new.mark)} on: {shown(marks[fallen])} is void"
    old = next(tag for tag in studio.book.ask(tags_of, studio.pile) if tag.mark == marks[fallen])
    assert (old.state, old.successor) == (VOID, new.mark)
    assert studio.book.ask(now_of, find.yarn).mark == new.mark
    shop.scan(marks[fallen])
    assert f"{shown(marks[fallen])} is void: {shown(new.mark)} took its place" in shop.trouble
    studio.check()
    shop.press("F2")
    assert studio.book.ask(now_of, find.yarn).mark is None
