"""A tag is read back at the counter: nothing that was only named lies in the basket."""

import pytest

from app.window.benches.counter.ways_card import STATED
from app.work.moving import To, move
from app.work.opening_stock import OldLot, open_lot
from app.work.tagging import Printing, apply_tag, print_tags
from tests.documents.samples import LOT
from tests.makers import EACH_MG
from tests.scanning.photographed import MARKS, as_file, blurred, photo
from tests.window.benches.at_work import plate
from tests.window.benches.counter_hands import open_counter
from tests.window.photo_hands import drop, paste, read_rows


@pytest.fixture
def counter(qtbot, settings, studio):
    """Two skeins with the tags of the photographs; they are shelved once the window is open."""
    pile = studio.do(open_lot, OldLot(LOT, studio.version, 1, 4), EACH_MG)
    tags = studio.do(print_tags, Printing(pile, MARKS[:2], "{}", "swing-85x55",
                                          version=studio.version))
    studio.skeins = [studio.do(apply_tag, tag) for tag in tags]
    for at_counter in open_counter(qtbot, settings, studio):
        studio.do(move, studio.skeins, To("shelf", place=studio.shelves[0]))
        at_counter.quiet()
        yield at_counter


def test_a_photographed_tag_shows_its_lot_and_only_a_scan_lays_it_down(counter, tmp_path):
    (tmp_path / "a.jpg").write_bytes(as_file(photo(0)))
    drop(counter, tmp_path / "a.jpg")
    (row,) = read_rows(counter.hand.read)
    assert row.startswith(f"26·15·R6F {MARKS[0][-2:]}, from before the book, Sluice")
    assert row.endswith("2 left")
    counter.press("Enter")
    assert counter.left.startswith("2 skeins left to sell")
    assert counter.card.note.text().startswith(
        f"26·15·R6F {MARKS[0][-2:]} as stated, from a photograph: scan its tag when it is here.")
    assert counter.basket == []
    counter.scan(plate(2))
    assert STATED in counter.words(counter.hand.question)
    counter.press("F8")
    counter.scan(MARKS[0])
    assert len(counter.basket) == 1
    assert not counter.card.note.isVisible()
    counter.scan(plate(2))
    assert STATED not in counter.words(counter.hand.question)


def test_gaps_list_what_fits_and_what_cannot_be_read_is_answered_in_words(counter):
    counter.ask("26?5R6? glove")
    (row,) = read_rows(counter.hand.read)
    assert row == ("26·15·R6F, from before the book, Sluice Keeper's Glove, Tarnfield 4-ply, "
                   "2 left")
    assert counter.bench.lot is None
    counter.press("Enter")
    assert counter.left.startswith("2 skeins left to sell")
    counter.press("F8")
    assert counter.hand.empty.isVisible()
    paste(counter, as_file(blurred(photo(1, width=500, height=400), 9), "PNG"))
    page = counter.hand.read
    assert page.sentence.text() == "No code could be read on this photograph."
    assert page.reply.text().startswith("Please photograph the tag once more, laid flat")
    counter.press("F9")
    assert "can be pasted now" in counter.note
