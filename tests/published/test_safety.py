"""Every published caution is among ours, with its source as it was read."""

from app.calculations.cautions import all_cautions, first_of_all
from tests.published.published_values import rows_of

OURS = {
    "Dye powder is dangerous if breathed": "breathing",
    "No cooking utensils": "kitchen",
    "Rubber gloves": "gloves",
    "Wash skin": "skin",
    "Some reactive dyes are respiratory sensitisers": "reactive-asthma",
    "Certain reactive, vat and disperse dyes": "skin-allergy",
    "Keep exposure to dyes of all types": "as-little-as-possible",
    "Acid dyes": "acid-dyes",
    "Hand transfer of powder": "pouring-powder",
    "Sodium hydrosulphite": "dithionite",
    "Add acid to water": "acid-into-water",
    "Metal-complex": "metal-complex",
    "Vinegar or citric acid": "mild-acid",
}
"""How each published caution begins, and the key of ours."""

PUBLISHED = rows_of("safety")


def key_of(published: str) -> str:
    (key,) = (key for start, key in OURS.items() if published.startswith(start))
    return key


def test_each_published_caution_is_one_of_ours_with_its_source() -> None:
    ours = {one.key: one.source for one in all_cautions()}
    assert len(PUBLISHED) == len(OURS) == 13
    for row in PUBLISHED:
        assert ours[key_of(row["caution"])] == f"{row['source']}, {row['verified']}"


def test_what_we_add_is_marked_as_having_no_source() -> None:
    added = [one for one in all_cautions() if one.key not in OURS.values()]
    assert added
    assert {one.source for one in added} == {"common practice, no source"}


def test_ours_are_our_own_words() -> None:
    ours = {one.words.rstrip(".").casefold() for one in all_cautions()}
    assert ours.isdisjoint(row["caution"].casefold() for row in PUBLISHED)


def test_the_sheets_that_the_sources_send_us_to_come_first() -> None:
    """HSE Dyes and dyeing: read the safety data sheet of each."""
    assert any("read the safety data sheet" in row["caution"] for row in PUBLISHED)
    assert "safety data sheets" in first_of_all()
