"""What was seen since: a skein of a pool is recognised, and what is gone is put down as lost."""

import pytest

from app.lookups.skeins import now_of
from app.work.bundling import tie_on
from tests.window.benches.at_work import disc
from tests.window.benches.desk_hands import open_desk


@pytest.fixture
def desk(qtbot, settings, studio):
    yield from open_desk(qtbot, settings, studio)


def mark_of(studio, skein):
    return studio.book.ask(now_of, skein).mark


def mixed(studio):
    """12 tagged skeins of two cones, 7 and 5, of which nobody can say which is which."""
    a, b = studio.cones(2)
    pool = studio.mix(studio.wind(a, 7), studio.wind(b, 5))
    studio.dye(pool)
    (pile,) = studio.finish(pool, red=12)
    return a, studio.tag(pile, 12)


def test_a_skein_out_of_a_pool_is_recognised_with_its_evidence(desk):
    studio = desk.studio
    cone, skeins = mixed(studio)
    desk.scan(mark_of(studio, skeins[0]))
    card = desk.hand.page.evidence
    assert card.isVisible()
    assert [key.accessibleName() for key in card.keys] == [
        "It is of cone C·0001·7, red ties: 7 skeins not told yet",
        "It is of cone C·0002·K, red ties: 5 skeins not told yet"]
    desk.click(card.keys[0])
    desk.type("by its tie")
    desk.press("Enter")
    assert desk.said == "recognised 1 skein"
    assert [(link.thing, link.word) for link in studio.origins(skeins[0])] == [(cone, "known")]
    assert card.keys == []
    desk.scan(mark_of(studio, skeins[1]))
    assert card.keys[0].accessibleName().endswith("6 skeins not told yet")
    studio.check()


def test_a_skein_of_one_cone_has_nothing_to_be_recognised_but_can_be_lost(desk):
    studio = desk.studio
    _, skeins = studio.tagged(studio.cone(), 2)
    desk.scan(mark_of(studio, skeins[0]))
    card = desk.hand.page.evidence
    assert card.keys == []
    assert not card.count.isVisible()
    desk.click(card.lost_key)
    desk.type("not there")
    desk.press("Enter")
    assert studio.book.ask(now_of, skeins[0]).state == "lost"
    assert not card.isVisible()
    desk.press("F2")
    assert studio.book.ask(now_of, skeins[0]).state == "table"
    assert card.isVisible()


def test_some_of_a_cord_are_lost(desk):
    studio = desk.studio
    studio.do(tie_on, studio.discs[0], [studio.wind(studio.cone(), 7)])
    desk.scan(disc(31))
    card = desk.hand.page.evidence
    desk.click(card.lost_key)
    assert card.count.wrong.isVisible()
    card.count.line.setText("2")
    desk.click(card.lost_key)
    desk.type("felted")
    desk.press("Enter")
    assert desk.said == "lost 2 skeins"
    assert {key[0]: amount.count for key, amount in studio.present().items()} == {
        "in work": 5, "lost": 2}
    studio.check()


def test_a_lot_or_a_cone_has_no_such_card(desk):
    studio = desk.studio
    lot, _ = studio.tagged(studio.cone(), 2)
    desk.scan(studio.code(lot))
    assert not desk.hand.page.evidence.isVisible()
