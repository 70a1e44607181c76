"""A tag is read back at the desk: from a photograph, from gaps, or from the telephone."""

from importlib.util import find_spec

import pytest
from PIL import Image
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFileDialog

from app.calculations.typed_codes import fits
from app.work.dyeing import name_colourway
from app.work.opening_stock import OldLot, open_lot
from app.work.selling import sell
from app.work.tagging import Printing, apply_tag, print_tags
from tests.documents.samples import LOT
from tests.lookups.shop import ordered, shelved
from tests.makers import EACH_MG
from tests.scanning.photographed import MARKS, as_file, blurred, photo
from tests.window.benches.at_work import plate
from tests.window.benches.desk_hands import open_desk
from tests.window.photo_hands import drop, paste, read_rows

FIVE = [code.text for code in fits("26?9K4?")]


@pytest.fixture
def desk(qtbot, settings, studio):
    """The first two tags of the photographs hang on skeins, one more is printed."""
    pile = studio.do(open_lot, OldLot(LOT, studio.version, 1, 4), EACH_MG)
    studio.tags = studio.do(print_tags, Printing(pile, MARKS[:3], "{}", "swing-85x55",
                                                 version=studio.version))
    studio.skeins = [studio.do(apply_tag, tag) for tag in studio.tags[:2]]
    yield from open_desk(qtbot, settings, studio)


def a_file(tmp_path, content, name="IMG_2231.JPG"):
    path = tmp_path / name
    path.write_bytes(content)
    return path


def bases_of(desk):
    """What the book keeps of every look at a skein: how it is known."""
    return desk.studio.book.ask(lambda c: c.exec_driver_sql(
        "SELECT basis FROM sighting").scalars().all())


def test_a_crumpled_tag_has_five_fits_the_best_first_and_what_is_chosen_is_stated(desk):
    studio = desk.studio
    studio.do(name_colourway, "Teal Lamp", "#1B856E")
    assert len(FIVE) == 5
    for code in FIVE:
        studio.do(open_lot, OldLot(code, studio.version, 2 if code == FIVE[1] else 1, 4), EACH_MG)
    desk.ask("26?9 K4? teal 4-ply")
    page = desk.hand.read
    rows = read_rows(page)
    assert len(rows) == 5
    first = f"{FIVE[1][:2]}·{FIVE[1][2:4]}·{FIVE[1][4:]}"
    assert rows[0] == f"{first}, from before the book, Teal Lamp, Tarnfield 4-ply, 0 left"
    assert page.rows.rows[0].offer.swatch == "#1B856E"
    assert desk.hand.thing is None
    assert "nothing was chosen for you" in page.next_step.text()
    assert "laid flat" in page.reply.text()
    assert "count the colours of the ties" in page.reply.text()
    desk.press("F9")
    assert QGuiApplication.clipboard().text() == page.reply.text()
    desk.press("Enter")
    assert desk.name.code.accessibleName() == first
    assert desk.name.named.text() == (
        "As stated, from what could be read of the code: scan its tag when it comes.")
    (lot, skeins), = shelved(studio, 3)
    (line,) = ordered(studio, "77", 1)
    studio.do(sell, skeins[:1], line)
    code = studio.code(lot)
    desk.ask(f"{code[:2]}?{code[3:6]}?")
    (row,) = read_rows(desk.hand.read)
    assert "dyed 6 Apr 2026 · Ada Nygård has some, Sluice Keeper's Glove, Tarnfield 4-ply, " in row
    assert row.endswith("2 left")
    desk.scan(plate(1))
    assert desk.hand.thing.found.code == code


def test_a_code_told_on_the_telephone_is_stated_too_and_a_scan_proves_it(desk):
    desk.ask("two six one five R six something")
    (row,) = read_rows(desk.hand.read)
    assert row.startswith("26·15·R6F, ")
    desk.press("Enter")
    assert desk.name.named.isVisible()
    desk.scan(LOT)
    assert not desk.name.named.isVisible()


def test_a_dropped_photograph_of_several_tags_lists_each_and_keeps_a_link_as_stated(
    desk, tmp_path
):
    drop(desk, a_file(tmp_path, as_file(photo(0, 1, 2, 3, share=0.4))))
    page = desk.hand.read
    assert page.sentence.text() == "4 codes were read, 3 of them in this book."
    rows = read_rows(page)
    assert sum("never printed" in row for row in rows) == 1
    assert sum("a printed tag that hangs on no skein" in row for row in rows) == 1
    (mine,) = [row for row in page.rows.rows if row.offer.head.endswith(MARKS[0][-2:])]
    desk.click(mine)
    assert desk.hand.thing.found.id == desk.studio.skeins[0]
    assert desk.name.named.text().startswith("As stated, from a photograph")
    desk.press("G")
    assert bases_of(desk) == ["stated"]
    desk.scan(MARKS[0])
    desk.press("G")
    assert bases_of(desk) == ["stated", "scanned"]


def test_a_picture_is_pasted_wherever_the_hands_are(desk):
    desk.press("F4")
    paste(desk, as_file(photo(0)))
    assert read_rows(desk.hand.read)[0].startswith(f"26·15·R6F {MARKS[0][-2:]}, from before")
    desk.scan(MARKS[0])
    desk.press("F")
    desk.hand.page.why.field.line.setFocus()
    paste(desk, as_file(photo(1)))
    assert len(desk.hand.page.why.pictures) == 1


def test_pictures_of_every_kind_are_read_together_and_files_are_chosen_with_a_key(desk, tmp_path):
    exif = Image.Exif()
    exif[0x0112] = 6  # the camera was held upright
    files = [a_file(tmp_path, as_file(photo(0).swapaxes(0, 1)[::-1], exif=exif), "turned.jpg"),
             a_file(tmp_path, as_file(photo(1), "PNG"), "a.png")]
    if find_spec("pillow_heif"):
        from pillow_heif import register_heif_opener

        register_heif_opener()
        files.append(a_file(tmp_path, as_file(photo(2), "HEIF"), "a.heic"))
    drop(desk, *files)
    marks = [f"26·15·R6F {mark[-2:]}" for mark in MARKS[:len(files)]]
    assert sorted(row[:12] for row in read_rows(desk.hand.read)) == sorted(marks)
    desk.press("F10")
    (dialog,) = desk.bench.findChildren(QFileDialog)
    assert dialog.isVisible()
    dialog.filesSelected.emit([str(files[1])])
    dialog.close()
    desk.quiet()
    assert [row[:12] for row in read_rows(desk.hand.read)] == marks[1:2]


def test_what_cannot_be_read_says_so_and_what_to_answer(desk, tmp_path):
    drop(desk, a_file(tmp_path, as_file(blurred(photo(0, width=500, height=400), 9))))
    page = desk.hand.read
    assert page.sentence.text() == "No code could be read on this photograph."
    assert "type what is readable" in page.next_step.text()
    assert "laid flat and in daylight" in page.reply.text()
    assert read_rows(page) == []
    drop(desk, a_file(tmp_path, b"%PDF-1.7"))
    assert page.sentence.text().startswith("This file is a PDF, whatever its name says")
    assert page.reply.text()
