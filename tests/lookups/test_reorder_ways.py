"""The words of what may be offered."""

from datetime import UTC, datetime
from decimal import Decimal

from app.calculations.reorder import Fabric, blending
from app.calculations.shade_difference import difference
from app.calculations.shade_words import judge
from app.lookups.lot_lines import LotLine
from app.lookups.redyes import RedyeHistory
from app.lookups.reorder_ways import (
    Other,
    StandIn,
    all_new,
    blend,
    other_design,
    other_lot,
    redye,
    substitute,
    working_days_after,
)
from tests.calculations.shades import TEAL

D = Decimal
FRIDAY = datetime(2026, 5, 15, 9, tzinfo=UTC)
LINE = LotLine(7, "2606H3W", "Sluice Keeper's Glove", "Tarnfield 4-ply", None, None)


def other(name: str, free: int = 4, made: str = "") -> Other:
    found = difference(TEAL["P"], TEAL[name])
    return Other(LINE, free, made, found, judge(found))


def test_a_near_lot_is_offered_with_its_number_and_what_the_readings_may_hide() -> None:
    way = other_lot(other("Q"))
    assert way.words == (
        "26·06·H3W, Sluice Keeper's Glove, 4 free: 0.5 ± 0.5, looks the same; as the readings "
        "may err, alternate two rows for 6–8 cm")
    assert (way.way, way.certainty, way.skeins) == ("nearest lot", "measured", 4)
    assert other_lot(other("P")).words.endswith("0.0 ± 0.5, looks the same")


def test_a_sister_that_was_not_read_is_offered_as_made_alike_and_no_more() -> None:
    way = other_lot(Other(LINE, 2, "sister"))
    assert (way.way, way.certainty, way.difference) == (
        "sister lot", "made alike, not measured", None)
    assert "hold them side by side" in way.words


def test_blending_says_the_rows_and_what_to_keep_back() -> None:
    zone = blending(Fabric(D(27), D(36), D("1.30")), D(120), D(8))
    (way,) = blend([other("S")], zone)
    assert "over 29 rows; 61 m of each lot must be left" in way.words
    (way,) = blend([other("S")], None)
    assert "with the gauge and the width of the piece" in way.words
    assert blend([other("V")], zone) == blend([], zone) == ()


def test_a_lot_too_far_to_blend_may_make_a_stripe() -> None:
    assert "2.8 ± 0.5, plainly another" in other_design([other("Q"), other("V")]).words
    assert other_design([other("Q")]).certainty == "a matter of taste"


def test_a_kits_substitute_a_redye_and_all_new_say_what_they_rest_on() -> None:
    assert substitute(StandIn("Stair-Rail Cowl", LINE, 4)).words == (
        "Sluice Keeper's Glove, 26·06·H3W, 4 free: kit Stair-Rail Cowl allows it")
    way = redye(RedyeHistory(4, 11), FRIDAY)
    assert way.words == ("Dye at least 3 to match, ready by 29 May 2026: 4 of 11 lots came within "
                         "1.0; reckoned 38 % in one try, 60 % in two; never promised")
    assert way.certainty == "a chance, never promised"
    assert all_new(5, [(LINE, 4), (LINE, 6)]).skeins == 6
    assert all_new(9, [(LINE, 4)]).lot is None


def test_working_days_leave_out_the_weekend() -> None:
    assert working_days_after(FRIDAY, 1).day == 18
    assert working_days_after(FRIDAY, 0) == FRIDAY
