"""Orders come to the packing bench: by the web shop's file, or written by hand."""

import pytest
from PySide6.QtWidgets import QFileDialog, QLabel
from sqlalchemy import select

from app.calculations.codes import shown
from app.exchange.columns import known_columns
from app.exchange.orders_in import SETTING
from app.lookups.orders import open_orders
from app.lookups.studio import setting
from app.records import Customer
from tests.window.benches.at_work import DONE, UNDO
from tests.window.benches.packing_hands import (
    HEADS,
    MOTH,
    SLUICE,
    again,
    at_packing,
    stocked,
)

GOOD = ("#1101;2026-04-05 10:12;Ada Nygård;ada@post.example;"
        f"{SLUICE} – Tarnfield 4-ply;2;;24,00 €\n"
        f"#1101;;;;{MOTH}, Tarnfield 4-ply, skein;1;;24,00 €\n"
        "#1102;2026-04-05;Bo Lind;bo@post.example;Gift card;1;;30,00 €\n")
BAD = (f"#1103;2026-04-05;Cy;cy@post.example;{MOTH};two;;24,00\n"
       f"#1103;;;;{SLUICE};1;;24,00\n"
       f"#1042;2026-04-05;Ada Nygård;ada@post.example;{SLUICE};1;;24,00\n")


@pytest.fixture(scope="module")
def kept(studio_file, tmp_path_factory):
    """Skeins on two shelves and order 1042, made once."""
    return stocked(studio_file, tmp_path_factory.mktemp("orders"))


@pytest.fixture
def packing(qtbot, settings, book, kept):
    """At the packing bench."""
    yield from at_packing(qtbot, settings, again(book, kept))


@pytest.fixture
def lay(tmp_path):
    """A way to lay a file into a folder."""

    def written(text, name="orders.csv"):
        path = tmp_path / name
        path.write_bytes(text if isinstance(text, bytes) else text.encode())
        return path

    return written


def drop(packing, path):
    packing.window.head.scan_line.filed.emit([path])
    packing.quiet()


def card(packing):
    return packing.bench.file


def test_a_file_is_looked_at_and_taken_in_with_one_key(packing, lay):
    drop(packing, lay(HEADS + GOOD))
    assert card(packing).number.accessibleName() == "2 orders to take in 4 pieces in all"
    assert card(packing).table._rows[0] == (
        "1101", "Ada Nygård", "5 Apr", "3",
        f"2 × {SLUICE} – Tarnfield 4-ply; 1 × {MOTH}, Tarnfield 4-ply, skein")
    assert card(packing).doubts.lines == ["“Gift card” names no colourway of the studio."]
    assert packing.orders() == {"1042": (0, 4)}
    packing.press("Enter")
    assert packing.said == "took in 2 orders, 4 pieces"
    assert packing.orders() == {"1042": (0, 4), "1101": (0, 3), "1102": (0, 1)}
    assert [row[0] for row in packing.listed] == ["1101", "1102", "1042"]
    packing.scan(UNDO)
    assert packing.orders() == {"1042": (0, 4)}


def test_what_stays_out_is_said_with_its_row_and_nothing_is_half_taken_in(packing, lay):
    drop(packing, lay(HEADS + GOOD + BAD))
    assert card(packing).troubles.lines == [
        "Row 5, Quantity: it is no whole number. It says: two",
        "Order 1103 stays out whole: nothing is half taken in.",
        "Order 1042 of 6 Apr 2026 is in the book already: it is skipped."]
    packing.scan(DONE)
    assert packing.said == "took in 2 orders, 4 pieces; 1 order left out"
    assert packing.orders() == {"1042": (0, 4), "1101": (0, 3), "1102": (0, 1)}


def test_a_file_with_nothing_to_take_in_says_why_and_can_be_mended(packing, lay):
    path = lay(HEADS + BAD)
    drop(packing, path)
    assert not card(packing).take_in.isEnabled()
    path.write_text(HEADS + GOOD, "utf-8")
    packing.press("F5")
    assert card(packing).take_in.accessibleName() == "Take in 2 orders"
    packing.press("F8")
    assert packing.bench.waiting.isVisible()


def test_a_column_that_is_lacking_is_asked_and_remembered(packing, lay):
    heads = HEADS.replace("Quantity", "No. of balls")
    drop(packing, lay(heads + GOOD))
    words = [label.text() for label in card(packing).columns.findChildren(QLabel)]
    assert "No column is headed as how many." in words
    packing.click(card(packing).columns.keys["count", "No. of balls"])
    packing.press("Enter")
    assert len(packing.orders()) == 3
    assert known_columns(packing.studio.book.ask(setting, SETTING))
    drop(packing, lay(heads + GOOD.replace("#110", "#120"), "second.csv"))
    assert card(packing).notes.text() == "Columns as they were settled before."
    assert card(packing).take_in.isVisible()


def test_two_columns_that_may_hold_the_name_are_asked_and_may_both_be_wrong(packing, lay):
    heads = HEADS.replace("Customer;", "Billing name;Shipping name;")
    rows = "1101;2026-04-05;A;B;ada@post.example;Gift card;1;;1\n"
    drop(packing, lay(heads + rows))
    assert card(packing).seen.lacks == ("name",)
    packing.click(card(packing).columns.keys["name", "in no column"])
    assert card(packing).seen.lacks == ()
    packing.press("F6")
    packing.click(card(packing).columns.keys["name", ""])
    packing.click(card(packing).columns.keys["name", "Shipping name"])
    assert card(packing).table._rows[0][1] == "B"


UNREADABLE = {
    "empty.csv": (b"", "The file is empty."),
    "orders.pdf": (b"%PDF-1.4", "This is a PDF: a picture of a list, not the list."),
    "photo.csv": (b"\x89PNG\r\n\x1a\n\x00\x01\x02\x03" * 9, "This is neither a spreadsheet nor"),
    "letter.txt": (b"Dear shop,\nthank you\n", "No row of this file looks like headings of a list"),
}


@pytest.mark.parametrize("name", UNREADABLE)
def test_a_file_that_cannot_be_read_says_why(packing, lay, name):
    data, sentence = UNREADABLE[name]
    drop(packing, lay(data, name))
    assert card(packing).wrong.isVisible()
    assert card(packing).wrong.text().startswith(sentence)
    assert not card(packing).take_in.isVisible()


def test_a_file_is_chosen_in_a_window_that_blocks_nothing(packing, lay):
    packing.press("F3")
    (dialog,) = packing.bench.findChildren(QFileDialog)
    dialog.fileSelected.emit(str(lay(HEADS + GOOD)))
    dialog.reject()
    packing.quiet()
    assert card(packing).number.accessibleName().startswith("2 orders to take in")


def test_an_order_by_hand_takes_three_fields_at_a_time_and_is_in_hand_at_once(packing):
    packing.press("F4")
    hand = packing.bench.hand
    hand.name.line.setText("Dag Berg")
    hand.mail.line.setText("dag@post.example")
    packing.press("Enter")
    assert hand.title.text() == "What does Dag Berg want?"
    hand.what.line.setText(f"{SLUICE} on Tarnfield 4-ply")
    hand.count.line.setText("2")
    hand.lot.line.setText(shown(packing.studio.code(packing.studio.lots[1])))
    packing.press("Enter")
    assert hand.table._rows[0][2] == f"{SLUICE}, Tarnfield 4-ply"
    hand.what.line.setText("a book")
    hand.count.line.setText("1")
    packing.press("Enter", "Enter")
    assert packing.card.order.number.startswith("H")
    assert packing.card.order.name == "Dag Berg"
    assert packing.lines == [f"{SLUICE}, Tarnfield 4-ply: 0 of 2", "a book: 0 of 1"]
    assert packing.found == ["“a book” names no colourway of the studio. It is kept as words."]


def test_a_number_that_is_taken_keeps_what_was_written(packing):
    packing.press("F4")
    hand = packing.bench.hand
    hand.number.line.setText("1042")
    packing.press("Enter")
    hand.what.line.setText(SLUICE)
    hand.count.line.setText("1")
    packing.press("F5")
    assert "Order 1042 is in the book already" in packing.trouble
    assert [line.what for line in hand.rows] == [SLUICE]
    assert hand.isVisible()


def test_a_number_or_a_line_that_was_wrong_is_put_right_where_it_was_written(packing):
    packing.press("F4")
    hand = packing.bench.hand
    hand.number.line.setText("1042")
    packing.press("Enter")
    hand.what.line.setText(SLUICE)
    hand.count.line.setText("9")
    hand.lot.line.setText(packing.studio.code(packing.studio.lots[1]))
    packing.press("F5", "F7")
    assert hand.number.line.text() == "1042"
    hand.number.line.setText("1043")
    packing.press("Enter", "F5")
    assert "can still be promised, not 9" in packing.trouble
    packing.press("F6")
    assert (hand.rows, hand.count.line.text()) == ([], "9")
    hand.count.line.setText("2")
    packing.press("Enter")
    hand.what.line.setText("half a line")
    packing.press("F6")
    assert hand.what.wrong.text() == "Add this line first, or clear it."
    assert len(hand.rows) == 1
    hand.what.line.clear()
    packing.press("F5")
    assert packing.said == "wrote order 1043: 2 pieces"


def test_an_order_that_was_being_written_waits_while_another_is_packed(packing):
    packing.press("F4")
    hand = packing.bench.hand
    hand.name.line.setText("Dag Berg")
    packing.press("Enter")
    hand.what.line.setText(SLUICE)
    packing.scan("1042")
    packing.press("F8", "F4")
    assert hand.title.text() == "What does Dag Berg want?"
    assert hand.what.line.text() == SLUICE
    packing.press("F8", "F4")
    assert hand.name.line.text() == ""
    assert not hand.on_lines


def test_the_same_mail_is_the_same_customer_and_the_same_name_is_not(packing):
    def customers():
        return packing.studio.book.ask(
            lambda c: len(c.execute(select(Customer.id)).all()))

    before = customers()
    for mail in ("eve@post.example", "Eve@Post.example", ""):
        packing.press("F4")
        hand = packing.bench.hand
        hand.name.line.setText("Eve Holm")
        hand.mail.line.setText(mail)
        packing.press("Enter")
        hand.what.line.setText(SLUICE)
        hand.count.line.setText("1")
        packing.press("F5", "F8")
    assert customers() == before + 2
    assert [one.name for one in packing.studio.book.ask(open_orders)][1:] == ["Eve Holm"] * 3
