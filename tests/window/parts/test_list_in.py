from dataclasses import dataclass
from pathlib import Path

import pytest

from app.exchange.cells import Row, Table
from app.exchange.columns import ColumnMatch, propose
from app.exchange.order_headings import ORDERS
from app.exchange.taking_in import Said
from app.problems import BadInput
from app.window.parts.list_in import ListIn

NOTE = propose(Table((Row(1, ("Note", "Base", "Gross")),)), {})
SHOP = propose(Table((Row(1, ("Order", "Product")),)), {}, None, ORDERS)


@dataclass(frozen=True, slots=True)
class Understood:
    match: ColumnMatch = NOTE
    lacks: tuple[str, ...] = ()
    cones: int = 3
    bad_rows: int = 0


class Cones(ListIn[Understood]):
    def __init__(self):
        super().__init__("cones of a list")
        self.add(self.wrong, self.number, self.notes, self.columns, self.take_in, self.leave_out)

    def show_list(self, seen):
        self.show_number(seen.cones, "cones", "in all")
        self.show_notes(seen, "", "Two batches.")
        self.show_ways("Take in", f"{seen.cones} cones", seen.cones, seen.bad_rows, "No cone.")


@pytest.fixture
def card(qtbot):
    card = Cones()
    qtbot.addWidget(card)
    card.show()
    card.open(Path("note.csv"))
    return card


def test_what_is_lacking_is_asked_before_anything_is_shown(qtbot, card):
    card.show_seen(Understood(lacks=("batch",)))
    assert card.number.isHidden()
    assert (card.take_in.accessibleName(), card.take_in.isVisible()) == ("Look again", True)
    card.columns.fields["batch"].setText("A-203")
    with qtbot.waitSignal(card.look_wanted):
        card.done()
    assert card.said == Said({}, {"batch": "A-203"})
    card.show_seen(Understood())
    assert card.number.accessibleName() == "3 cones in all"
    assert card.notes.text() == "Two batches."
    with qtbot.waitSignal(card.complete) as heard:
        card.done()
    assert heard.args == [False]


def test_a_column_that_is_chosen_goes_before_what_was_written_for_all_rows(qtbot, card):
    card.show_seen(Understood(lacks=("batch",)))
    card.columns.given.emit("batch", "A-203")
    with qtbot.waitSignal(card.look_wanted):
        card.columns.keys["batch", "Gross"].click()
    assert card.said == Said({"batch": "Gross"}, {})


def test_what_is_written_last_is_heeded_and_then_taken_in_at_once(qtbot, card):
    card.show_seen(Understood())
    card.columns.given.emit("arrived", "6 Apr")
    with qtbot.waitSignal(card.look_wanted), qtbot.assertNotEmitted(card.complete):
        card.done()
    with qtbot.waitSignal(card.complete):
        card.show_seen(Understood())


def test_bad_rows_stay_out_only_where_that_is_said(qtbot, card):
    card.show_seen(Understood(bad_rows=1))
    assert not card.take_in.isEnabled()
    assert card.leave_out.accessibleName() == "Take in 3, leave 1 row out"
    with qtbot.assertNotEmitted(card.complete):
        card.done()
    with qtbot.waitSignal(card.complete) as heard:
        card.leave_out.click()
    assert heard.args == [True]
    card.show_seen(Understood(cones=0, bad_rows=2))
    assert card.take_in.accessibleDescription() == "key Enter · No cone."
    assert card.leave_out.isHidden()


def test_where_nothing_can_be_written_for_all_rows_there_is_nothing_to_look_at_again(card):
    card.show_seen(Understood(SHOP, lacks=("count",)))
    assert card.take_in.isHidden()


def test_what_cannot_be_read_at_all_says_why(card):
    card.show_seen(Understood())
    card.show_problem(BadInput("The file is empty.", "Save it once more."))
    assert card.wrong.text().startswith("The file is empty.")
    assert card.number.isHidden()
    assert card.take_in.isHidden()
