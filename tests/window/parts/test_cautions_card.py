"""Each published caution stands on the screens where it is needed, below what decides."""

import pytest

from app.calculations.cautions import all_cautions, first_of_all
from app.calculations.codes import Kind, numbered
from app.window.parts.cautions_card import CautionsCard
from app.work.bundling import make_plates
from tests.published.test_safety import OURS
from tests.window.benches.at_work import begin_work

POTS, WASHING, WEIGHING = 4, 5, 3
BOARD, STEAMER = (numbered(kind, 1).text for kind in (Kind.BOARD, Kind.STEAMER))
SCREENS = {
    "breathing": {"balance"}, "pouring-powder": {"balance", "jars"}, "acid-dyes": {"balance"},
    "kitchen": {"balance", "pot", "board"}, "gloves": {"balance", "pot", "board", "wash"},
    "skin": {"balance", "pot", "board", "wash"}, "reactive-asthma": {"balance", "board"},
    "skin-allergy": {"balance", "board"}, "as-little-as-possible": {"balance", "board"},
    "dithionite": {"pot"}, "acid-into-water": {"balance", "pot"}, "mild-acid": {"balance", "pot"},
    "metal-complex": {"pot", "wash"}, "steam": {"pot", "steamer"}, "drain": {"wash"},
}
"""The key of a caution, and every screen that shows it."""


def shown(at_work):
    """The words of caution on the bench; the makers' sheets stand before them."""
    cards = [card for card in at_work.bench.findChildren(CautionsCard) if card.isVisible()]
    assert len(cards) == 1
    assert first_of_all() in {words.text() for words in cards[0].findChildren(type(cards[0].said))}
    return cards[0].said.text()


@pytest.fixture
def wet(qtbot, settings, studio):
    """At the wash, with a board and a steamer in the house."""
    studio.do(make_plates, Kind.BOARD, [1])
    studio.do(make_plates, Kind.STEAMER, [1])
    yield from begin_work(qtbot, settings, studio, WASHING)


@pytest.fixture
def dry(qtbot, settings, studio):
    """At the balance."""
    yield from begin_work(qtbot, settings, studio, WEIGHING)


def here(words, screens):
    """{(caution, screen)} of those that these screens should show, and of those they do."""
    should = {(key, one) for key, some in SCREENS.items() for one in some & screens}
    does = {(one.key, screen) for one in all_cautions() for screen in screens
            if one.words in words[screen]}
    return should, does


def test_every_caution_has_a_screen():
    assert set(SCREENS) == {one.key for one in all_cautions()} >= set(OURS.values())


def test_at_pots_trays_steamer_and_wash_each_caution_stands_where_it_is_needed(wet):
    words = {"wash": shown(wet)}
    wet.enter(POTS)
    words["pot"] = shown(wet)
    wet.scan(BOARD)
    words["board"] = shown(wet)
    wet.press("F8")
    wet.scan(STEAMER)
    words["steamer"] = shown(wet)
    should, does = here(words, set(words))
    assert does == should


def test_at_the_balance_and_the_jars_too(dry):
    words = {"balance": shown(dry)}
    dry.press("F4")
    words["jars"] = shown(dry)
    should, does = here(words, set(words))
    assert does == should
