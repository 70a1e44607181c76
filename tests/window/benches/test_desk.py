"""The desk: one thing in hand with both ends of its thread, and how sure each answer is."""

from decimal import Decimal

import pytest

from app.calculations.codes import shown
from app.lookups.things import of_lot
from app.window.look.yarn import Certainty
from app.window.parts.swatch import Swatch
from app.work.dyeing import BathIn, into_bath, name_colourway
from app.work.holding import hold
from app.work.opening_stock import OldLot, open_lot
from tests.makers import EACH_MG
from tests.window.benches.at_work import DONE, HOLD, plate
from tests.window.benches.desk_hands import open_desk


@pytest.fixture
def desk(qtbot, settings, studio):
    """The desk of a studio with two cones, A and B."""
    studio.a, studio.b = studio.cones(2)
    yield from open_desk(qtbot, settings, studio)


@pytest.fixture
def mixed(desk):
    """Seven of A and five of B met in a pot; four of the twelve wear tags."""
    studio = desk.studio
    pool = studio.mix(studio.wind(studio.a, 7), studio.wind(studio.b, 5))
    lot = studio.dye(pool, pot=studio.pot)
    (pile,) = studio.finish(pool, red=12)
    studio.tag(pile, 4)
    desk.lot = studio.code(lot)
    desk.marks = [tag.code for tag in studio.book.ask(of_lot, lot)]
    return desk


@pytest.fixture
def joined(desk):
    """One skein over a join: 255.75 m of A and 156.75 m of B."""
    studio = desk.studio
    skein = studio.join([(studio.a, 255_750), (studio.b, 156_750)])
    lot = studio.dye(skein)
    (pile,) = studio.finish(skein, **{"red and yellow": 1})
    studio.tag(pile, 1)
    desk.marks = [tag.code for tag in studio.book.ask(of_lot, lot)]
    return desk


def test_the_empty_desk_says_how_to_begin_and_offers_the_newest_lots(mixed):
    mixed.press("F3")
    assert "Scan anything, or type what you know of it." in mixed.words()
    assert [row.thing.code for row in mixed.hand.empty.newest.rows] == [mixed.lot]
    assert mixed.trail == []
    mixed.click(mixed.hand.empty.newest.rows[0])
    assert mixed.name.code.accessibleName() == shown(mixed.lot)


def test_a_skein_of_a_mixed_pot_is_one_of_a_pool_of_seven_and_five(mixed):
    mixed.scan(mixed.marks[0])
    assert mixed.origins[:2] == [
        ("C·0001·7", "one of a pool: 7 of 12"), ("C·0002·K", "one of a pool: 5 of 12")]
    assert ("one of a pool", "one of 2 cones, 7 + 5") in mixed.notes
    assert mixed.sums == [("1", "on the table", "103.125 g")]


def test_the_states_of_a_lot_add_up_in_skeins_and_in_grams(mixed):
    mixed.scan(mixed.lot)
    *states, together = mixed.sums
    assert together == ("12", "together", "1,237.5 g")
    assert sum(int(count) for count, _, _ in states) == 12
    grams = [Decimal(weight.removesuffix(" g").replace(",", "")) for _, _, weight in mixed.sums]
    assert sum(grams[:-1]) == grams[-1]
    assert {state for _, state, _ in states} == {"on the table", "counted and not tagged"}


def test_a_cone_says_how_many_of_each_state_are_its_own(mixed):
    mixed.scan("C00017")
    assert [count for count, _, _ in mixed.sums] == ["3 to 7 of 8", "0 to 4 of 4", "7 of 12"]
    table = mixed.hand.page.where_to.of_cone
    sure = {table.model.index(row, 2).data() for row in range(table.model.rowCount())}
    assert sure == {"one of a pool, 58 in 100", "one of a pool: 3 to 7 of 8, 4.67 expected"}


def test_a_skein_over_a_join_is_partly_of_both_cones(joined):
    joined.scan(joined.marks[0])
    assert joined.origins[:2] == [
        ("C·0001·7", "partly: 62 % of the metres"), ("C·0002·K", "partly: 38 % of the metres")]
    assert ("partly", "62 % / 38 %") in joined.notes


def test_a_lot_of_two_cones_with_two_ties_is_known_skein_by_skein(desk):
    studio = desk.studio
    lot = studio.dye(studio.wind(studio.a, 7, "blue"), studio.wind(studio.b, 4, "green"),
                     studio.join([(studio.a, 255_750), (studio.b, 156_750)], "blue and green"))
    desk.scan(studio.code(lot))
    assert desk.origins[:2] == [("C·0001·7", "known: 8 of 12, 1 of them partly"),
                                ("C·0002·K", "known: 5 of 12, 1 of them partly")]
    assert desk.hand.page.where_from.rows[0].certainty == Certainty.KNOWN


def test_a_hold_on_the_cone_hangs_there_and_below_it_in_outline(mixed):
    mixed.scan("C0002K")
    mixed.press("H")
    mixed.type("oil stain")
    mixed.press("Enter")
    assert mixed.said == "put a hold on cone C·0002·K: oil stain"
    assert mixed.held["cone"] == "here"
    assert set(mixed.held.values()) == {"here", "below"}
    assert mixed.held["dye lot"] == "below"
    (row,) = mixed.name.holds
    assert row.accessibleName() == "HOLD on cone C·0002·K: oil stain, ask OW, Osk Wray"


def test_one_skein_is_cleared_and_the_rest_stay_on_hold(mixed):
    mixed.studio.do(hold, "cone", mixed.studio.b, "oil stain")
    mixed.scan(mixed.marks[0])
    mixed.press("C")
    mixed.type("no stain under the lamp")
    mixed.press("Enter")
    assert mixed.name.holds == []
    mixed.scan(mixed.marks[1])
    assert len(mixed.name.holds) == 1


def test_a_hold_is_lifted_with_its_reason_and_undo_brings_it_back(mixed):
    mixed.studio.do(hold, "cone", mixed.studio.b, "oil stain")
    mixed.scan("C0002K")
    mixed.press("L")
    mixed.press("Enter")
    assert mixed.hand.page.why.field.wrong.text() == (
        "Say what was found: lifting needs its reason.")
    mixed.type("it was grease on the card")
    mixed.press("Enter")
    assert mixed.name.holds == []
    assert mixed.held == {}
    mixed.press("F2")
    assert mixed.said == (
        "taken back: lifted the hold on cone C·0002·K: it was grease on the card")
    assert len(mixed.name.holds) == 1


def test_a_hold_is_put_by_scanner_alone(mixed):
    mixed.scan(mixed.lot, HOLD, plate(2))
    assert mixed.said == f"put a hold on lot {shown(mixed.lot)}: shade is off"
    mixed.scan(mixed.lot, HOLD, DONE)
    assert mixed.hand.page.why.field.wrong.text().startswith("Say what was seen")


def test_hold_with_nothing_in_hand_asks_for_the_thing(desk):
    desk.scan(HOLD)
    assert desk.trouble == "Nothing is in hand to hold. Scan the thing first, then HOLD."


def test_a_question_is_left_with_escape_and_nothing_is_saved(mixed):
    mixed.scan(mixed.lot)
    before = mixed.studio.last()
    mixed.press("H")
    mixed.type("hm")
    mixed.press("Escape")
    assert mixed.hand.page.why is None
    assert mixed.studio.last() == before


def test_a_cone_of_which_nothing_was_wound_can_be_held_and_says_so(desk):
    desk.scan("C00017")
    assert "Nothing was wound from it yet." in desk.words()
    desk.press("H")
    desk.type("moths")
    desk.press("Enter")
    assert [row.hold.why for row in desk.name.holds] == ["moths"]


def test_a_disc_says_why_it_cannot_be_held(desk):
    desk.studio.wind(desk.studio.a, 6, "red", desk.studio.discs[0])
    desk.scan("D031W")
    assert not desk.name.hold_key.isEnabled()
    assert "Hold the lot or the cone" in desk.name.hold_key.accessibleDescription()
    assert desk.sums == [("6", "in work", "618.75 g")]


def test_the_story_tells_all_that_was_done_with_a_skein(mixed):
    mixed.scan(mixed.marks[0])
    table = mixed.hand.page.story.table
    said = [table.model.index(row, 3).data() for row in range(table.model.rowCount())]
    assert said[0] == f"tied {shown(mixed.marks[0])} on"
    assert any(sentence.startswith("mixed 12 skeins") for sentence in said)
    assert sum("wound" in sentence for sentence in said) == 2


def test_origins_and_skeins_are_one_tap_away(mixed):
    mixed.scan(mixed.marks[0])
    mixed.click(mixed.hand.page.where_from.rows[0])
    assert mixed.name.code.accessibleName() == "C·0001·7"
    table = mixed.hand.page.where_to.of_cone
    table.opened.emit(0)
    mixed.quiet()
    assert mixed.name.kind.text() == "Tagged skein"


def test_stations_of_the_trail_are_one_tap_away_and_those_without_a_code_do_nothing(mixed):
    mixed.scan(mixed.marks[0])
    stops = {tag.station.kind: tag for tag in mixed.window.floor.trail.tags}
    stops["pile"].click()
    mixed.quiet()
    assert mixed.trouble == ""
    stops = {tag.station.kind: tag for tag in mixed.window.floor.trail.tags}
    stops["dye lot"].click()
    mixed.quiet()
    assert mixed.name.kind.text() == "Dye lot"


def test_put_away_empties_the_hand_and_takes_the_yarn_down(mixed):
    mixed.scan(mixed.lot)
    assert mixed.trail
    mixed.press("F8")
    assert mixed.trail == []
    assert mixed.hand.empty.isVisible()


def test_a_lot_from_before_the_book_says_that_its_cone_is_not_known(desk):
    studio = desk.studio
    studio.do(open_lot, OldLot("OLD77", studio.version, 1, 4), EACH_MG)
    desk.scan("OLD77")
    assert desk.origins[0] == ("", "not known")
    assert "by eye, not measured" in desk.words()


def test_a_colourway_without_a_swatch_says_so(desk):
    studio = desk.studio
    plain = studio.do(name_colourway, "Wet Thatch Tuesday")
    lot = studio.do(into_bath, BathIn((studio.wind(studio.a, 6),), plain), studio.random)
    desk.scan(lot["codes"][0])
    assert "by eye, not measured" not in desk.words()
    (swatch,) = desk.name.findChildren(Swatch)
    assert swatch.accessibleName() == (
        "Wet Thatch Tuesday, Tarnfield 4-ply: no swatch chosen")


def test_the_trace_goes_on_paper_beside_the_book(mixed, monkeypatch, qtbot):
    opened = []
    monkeypatch.setattr("app.window.papers.open_paper", opened.append)
    mixed.scan(mixed.lot)
    mixed.press("P")
    qtbot.waitUntil(lambda: mixed.note.startswith("The trace is"))
    (paper,) = opened
    assert paper.read_bytes().startswith(b"%PDF")
    assert paper.parent == mixed.studio.book.path.with_name("studio traces")


