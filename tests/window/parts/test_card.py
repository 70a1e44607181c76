import pytest
from PySide6.QtWidgets import QLabel

from app.window.look.look import Gap
from app.window.parts.card import Actions, Card, SideBySide, stacked
from app.window.parts.key_button import KeyButton
from app.window.parts.words import Words


def test_what_is_added_stands_at_the_top_in_order(qtbot):
    card = Card("In hand")
    first, second, last = Words("first"), Words("second"), Words("last")
    card.add(first, second)
    card.add_last(last)
    qtbot.addWidget(card)
    card.resize(300, 400)
    card.show()
    assert first.y() < second.y() < 120
    assert last.y() > 300
    assert card.accessibleName() == "In hand"


@pytest.mark.parametrize("factor", [1.0, 2.0])
def test_cards_lie_side_by_side_only_while_both_are_comfortable(qtbot, dressed, factor):
    dressed(factor)
    one, other = Card("She needs"), Card("Who has the others")
    both = SideBySide(one, other)
    qtbot.addWidget(both)
    both.resize(1000, 400)
    both.show()
    qtbot.waitUntil(lambda: (one.y() == other.y()) is (factor == 1.0))
    assert (one.x() == other.x()) is (factor == 2.0)


def test_shares_decide_who_is_wider(qtbot):
    one, other = Card("A"), Card("B")
    both = SideBySide(one, other, shares=(2, 1))
    qtbot.addWidget(both)
    both.resize(1000, 200)
    both.show()
    assert one.width() > 1.8 * other.width()


@pytest.mark.parametrize("room", [900, 300, 120])
def test_actions_go_on_in_the_next_line(qtbot, room):
    keys = [KeyButton("Bundle done", "F5"), KeyButton("Cone finished", "F6"), KeyButton("Fault")]
    actions = Actions(*keys)
    qtbot.addWidget(actions)
    actions.resize(room, actions.heightForWidth(room))
    actions.show()
    assert all(actions.rect().contains(key.geometry()) for key in keys)
    boxes = [key.geometry() for key in keys]
    assert not any(a.intersects(b) for a in boxes for b in boxes if a is not b)


def test_a_hidden_action_leaves_no_gap(qtbot):
    first, hidden, last = KeyButton("One"), KeyButton("Two"), KeyButton("Three")
    hidden.hide()
    actions = Actions(first, hidden, last)
    qtbot.addWidget(actions)
    actions.resize(actions.sizeHint())
    actions.show()
    assert last.x() == first.width() + Gap.LINE
    hidden.show()
    qtbot.waitUntil(lambda: hidden.x() == first.width() + Gap.LINE)


def test_a_card_shows_all_of_its_actions(qtbot):
    card = Card()
    keys = [KeyButton(f"a long action number {n}", f"F{n}") for n in range(5, 9)]
    card.add(Words("What next?"), Actions(*keys), QLabel("below"))
    qtbot.addWidget(card)
    card.resize(360, card.heightForWidth(360))
    card.show()
    for key in keys:
        corner = key.mapTo(card, key.rect().bottomRight())
        assert card.rect().contains(corner)


def test_stacked_things_stand_at_the_top_one_below_the_other(qtbot):
    one, other = Words("one"), Words("other")
    stack = stacked(one, other)
    qtbot.addWidget(stack)
    stack.resize(200, 400)
    stack.show()
    assert one.y() == 0
    assert one.geometry().bottom() < other.y() < 100
