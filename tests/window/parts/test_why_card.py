"""A question why: answered by a figure, a plate or words, and once."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from app.window.parts.why_card import Why, WhyCard


@pytest.fixture
def card(qtbot):
    """A question with two answers at hand; `heard` are those that were given."""
    card = WhyCard(Why("Why?", "It matters.", "Do it", "Say why.", ("torn", "wet")))
    card.heard = []
    card.said.connect(card.heard.append)
    qtbot.addWidget(card)
    card.show()
    QTest.qWaitForWindowActive(card)
    return card


def test_a_number_stands_for_its_answer_also_where_it_is_typed(card):
    assert card.choose(2)
    card.field.line.setText("1")
    QTest.keyClick(card.field.line, Qt.Key.Key_Return)
    assert card.heard == ["wet", "torn"]
    assert not card.choose(3)


def test_own_words_answer_once_and_none_are_asked_for(card):
    card.save()
    assert card.field.wrong.text() == "Say why."
    card.field.line.setText("mice")
    card.save()
    card.save()
    assert card.heard == ["mice"]


def test_escape_leaves_it(card, qtbot):
    with qtbot.waitSignal(card.left):
        QTest.keyClick(card, Qt.Key.Key_Escape)
