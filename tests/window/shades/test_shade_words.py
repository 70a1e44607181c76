from app.calculations.cards import compared
from app.calculations.shade_difference import difference
from app.window.shades.shade_words import (
    card_words,
    fine_words,
    group_words,
    lab_words,
    lamps_words,
    left_out_words,
    map_words,
    number,
    pair_words,
    runs,
    step_words,
    zone_words,
)
from tests.calculations.shades import DRY, SHOP, TEAL, colour
from tests.window.shades.maps import a_map, crowded

WEAK, GOOD = colour(50.0, -34.9, 5.9), colour(48.2, -36.6, 3.3)


def test_a_pair_is_told_with_its_error_and_what_may_be_done():
    assert pair_words(difference(GOOD, WEAK)) == "2.6 ± 0.5 apart: only as a second colour"
    assert fine_words(difference(GOOD, WEAK)).startswith("CIEDE2000 2.57, CMC(2:1) ")
    near = difference(TEAL["P"], TEAL["Q"])
    assert pair_words(near) == ("0.5 ± 0.5 apart: looks the same; as the readings may err, "
                                "alternate two rows for 6–8 cm")


def test_a_card_says_how_it_was_read():
    assert lab_words(colour(25.1, 8, -20.5)) == "L* 25.1, a* 8.0, b* −20.5"
    assert card_words(colour(25.1, 8, -20.5, readings=1)).endswith("; D65, 2°, dry, 1 reading")
    assert (number(-0.04), number(-0.06)) == ("0.0", "−0.1")


def test_lamps_and_zones_are_named_where_there_are_several():
    plain = compared({(DRY, ""): GOOD}, {(DRY, ""): WEAK})
    assert (lamps_words(plain), zone_words(plain)) == ("", "")
    shop = colour(48.2, -36.6, 3.3, at=SHOP)
    both = compared({(DRY, ""): GOOD, (SHOP, ""): shop}, {(DRY, ""): WEAK, (SHOP, ""): shop})
    assert lamps_words(both) == "D65 2.6 ± 0.5, A 0.0 ± 0.5"
    zones = compared({(DRY, "A"): GOOD, (DRY, "B"): GOOD}, {(DRY, "A"): GOOD, (DRY, "B"): WEAK})
    assert zone_words(zones) == "zone B, the worst of 2"


def test_groups_are_told_by_codes_or_by_numbers_where_they_are_many():
    shades = a_map()
    assert map_words(shades) == ("8 lots in 4 groups of which every two are within 1.0; fewer "
                                 "would not do.")
    said = [group_words(shades, group) for group in shades.groups]
    codes = [step.code for step in shades.lots]
    assert said[0] == f"{codes[0]}, {codes[1]} and {codes[5]} go together, 0.77 apart at most."
    assert said[-1] == f"{codes[7]} goes with none of them."
    assert runs([0, 1, 2, 9, 10, 12]) == "1 to 3, 10, 11 and 13"
    many = crowded()
    assert any(group_words(many, one).startswith("Lots ") for one in many.groups)


def test_what_is_not_in_the_picture_is_said():
    from dataclasses import replace

    shades = replace(a_map(), older=1, not_read=("26·15·R6F", "26·15·YX1"))
    assert left_out_words(shades) == ("1 older lot was read and not shown. 26·15·R6F and "
                                      "26·15·YX1 were not read in this light.")
    assert left_out_words(a_map()) == ""
    assert step_words(replace(a_map(), left=(0,) * 8), 1) == (
        "L* 48.6, a* −36.2, b* 3.8, 0.5 ± 0.5 from the standard, 0.5 ± 0.5 from the last, "
        "none left")
