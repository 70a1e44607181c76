"""Readings from a file: matched to lots by their codes, all of them as one deed or none."""

from pathlib import Path

import pytest

from app.exchange.shades_in import ShadeList, see_shades, take_shades_in
from app.exchange.taking_in import Said
from app.lookups.shades import newest, read_of_lots
from app.problems import BadInput, Refused
from tests.calculations.shades import DRY, WET
from tests.exchange.files import workbook
from tests.lookups.cards import dyed
from tests.makers import Studio

HEADS = "Lot;L*;a*;b*;Lamp;Observer;State;Readings\n"


def seen(
    studio: Studio, folder: Path, data: str | bytes, said: Said | None = None
) -> ShadeList:
    path = folder / "cards.txt"
    path.write_bytes(data.encode() if isinstance(data, str) else data)
    return studio.book.ask(see_shades, path, said or Said())


def code(studio: Studio, lot: int) -> str:
    bare = studio.code(lot) or ""
    return f"{bare[:2]}·{bare[2:4]}·{bare[4:]}"


def test_means_and_single_readings_become_cards_of_their_lots(
    studio: Studio, tmp_path: Path
) -> None:
    one, other = dyed(studio), dyed(studio)
    rows = (f"{code(studio, one)};48,3;-36,6;3.3;D65/2°;2;dry;4\n"
            + f"{studio.code(other)};48.0;−36.0;3.0;d65;2 deg;;\n"
            + f"{studio.code(other)};48.4;-36.4;3.4;D65;2;;\n")
    found = seen(studio, tmp_path, HEADS + rows)
    assert found.troubles == ()
    done = studio.done(take_shades_in, found)
    assert done.said == "read 2 cards of 2 things"
    assert [finding[-42:] for finding in done.findings] == [
        ": Only 2 readings: read the card at 4 places."[-42:]]
    read = studio.book.ask(read_of_lots, [one, other])
    assert newest(read[one])[DRY, ""].lab == (48.3, -36.6, 3.3)
    assert newest(read[other])[DRY, ""].lab == pytest.approx((48.2, -36.2, 3.2))
    assert read[other][0].colour.readings == 2
    assert {one.came for cards in read.values() for one in cards} == {"csv"}
    studio.check()


def test_cgats_text_and_a_workbook_are_read_alike(studio: Studio, tmp_path: Path) -> None:
    lot = dyed(studio)
    text = ("CGATS.17\nWEIGHTING_FUNCTION \"ILLUMINANT, D65\"\nWEIGHTING_FUNCTION \"OBSERVER, 2\"\n"
            "BEGIN_DATA_FORMAT\nSAMPLE_NAME LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\nBEGIN_DATA\n"
            f'"{code(studio, lot)}" 48.3 -36.6 3.3\nEND_DATA\n')
    (card,) = seen(studio, tmp_path, text.replace("ILLUMINANT, D65", "Illuminant=D65")
                   .replace("OBSERVER, 2", "Observer=2")).cards
    assert (card.came, card.colour.lab, card.colour.viewing) == (
        "cgats", (48.3, -36.6, 3.3), DRY)
    said = Said(given={"lamp": "D65", "observer": "2", "state": "wet"})
    (card,) = seen(studio, tmp_path, workbook(("Lot", "L*", "a*", "b*"),
                                              (studio.code(lot), 48.3, -36.6, 3.3)), said).cards
    assert card.colour.viewing == WET


@pytest.mark.parametrize(("row", "why"), [
    ("2619K44;48;0;0;D65;2;;", "Row 3, Lot: no lot of the book has this code."),
    ("CODE;148;0;0;D65;2;;", "Row 3, L*: it must be between 0 and 100."),
    ("CODE;48;=1+1;0;D65;2;;", "Row 3, a*: it is no number."),
    ("CODE;48;0;;D65;2;;", "Row 3, b*: nothing stands there."),
    ("CODE;48;0;Infinity;D65;2;;", "Row 3, b*: it must be between -200 and 200."),
    ("CODE;48;0;0;kitchen tube;2;;", "Row 3, Lamp: it is none of D65, D50"),
    ("CODE;48;0;0;D65;5;;", "Row 3, Observer: it is neither 2 nor 10"),
    ("CODE;48;0;0;D65;2;damp;", "Row 3, State: it is neither wet nor dry."),
    ("CODE;48;0;0;D65;2;;0", "Row 3, Readings: it is no number from 1 to 100."),
])
def test_a_row_in_trouble_hides_no_good_one_and_nothing_half_is_saved(
    studio: Studio, tmp_path: Path, row: str, why: str
) -> None:
    lot = dyed(studio)
    own = studio.code(lot) or ""
    found = seen(studio, tmp_path, f"{HEADS}{own};48;-36;3;D65;2;;4\n{row.replace('CODE', own)}\n")
    assert [trouble.sentence.startswith(why) for trouble in found.troubles] == [True]
    before = studio.last()
    with pytest.raises(Refused, match="1 row of this list cannot be taken in"):
        studio.do(take_shades_in, found)
    assert studio.last() == before
    assert studio.done(take_shades_in, found, True).said.endswith("; 1 row left out")
    assert len(studio.book.ask(read_of_lots, [lot])[lot]) == 1


def test_columns_are_matched_once_and_the_lamp_may_be_said_once(
    studio: Studio, tmp_path: Path
) -> None:
    text = f"What;Bright;Red;Yellow\n{studio.code(dyed(studio))};48;-36;3\n"
    said = Said({"lot": "What", "l": "Bright", "a": "Red", "b": "Yellow"},
                {"lamp": "D65", "observer": "10"})
    assert seen(studio, tmp_path, text, Said(said.columns)).lacks == ("lamp", "observer")
    studio.do(take_shades_in, seen(studio, tmp_path, text, said))
    again = seen(studio, tmp_path, text, Said(given=said.given))
    assert again.match.remembered
    assert len(again.cards) == 1


def test_a_list_of_which_nothing_can_be_taken_says_so(studio: Studio, tmp_path: Path) -> None:
    found = seen(studio, tmp_path, f"{HEADS}2619K44;48;0;0;D65;2;;4\n")
    with pytest.raises(Refused, match="Nothing of this list can be taken in; nothing was saved"):
        studio.do(take_shades_in, found, True)
    with pytest.raises(BadInput, match="looks like headings of a list of shade readings"):
        seen(studio, tmp_path, "x;y\n1;2\n")
