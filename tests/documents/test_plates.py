"""Sheets of discs and plates: any number, each read back, with the cautions for the wet room."""

import pytest

from app.calculations.codes import Kind, numbered
from app.documents import square_codes
from app.documents.plates import Plate, action_plates, plate_for, plate_sheets
from app.documents.proof import read_back
from app.documents.square_codes import Symbol
from app.problems import BadInput, Refused
from tests.documents.samples import text_of


def plate(kind: Kind, number: int, name: str = "", word: str = "") -> Plate:
    return plate_for(numbered(kind, number).text, name, word)


def mixed_room() -> list[Plate]:
    return [
        *(plate(Kind.DISC, number) for number in (31, 33, 44, 96, 1203)),
        plate(Kind.POT, 2, "20 L, 15 usable"),
        plate(Kind.RAIL, 3, "heater side"),
        plate(Kind.JAR, 17, "N1 navy"),
        plate(Kind.SHELF, 3, "window side"),
        plate(Kind.VESSEL, 2, "by the drain", "basin"),
        plate(Kind.STEAMER, 1),
        plate(Kind.REEL, 2, "six arms, 1.50 m"),
        plate(Kind.BOARD, 12),
        plate(Kind.BENCH, 1, "Pots & trays"),
    ]


def test_a_plate_says_what_it_is_by_its_code() -> None:
    assert plate(Kind.POT, 2, "20 L").word == "POT"
    assert plate(Kind.VESSEL, 2, word="basin").word == "BASIN"
    assert plate(Kind.DISC, 31).number == "031"
    assert plate(Kind.BENCH, 1, "Winding").word == "WINDING"
    assert plate(Kind.ACTION, 4).word == "HOLD"


def test_there_are_eighteen_action_plates_of_the_grammar() -> None:
    plates = action_plates()
    assert [one.word for one in plates[:8]] == [
        "DONE", "UNDO LAST", "MIXED", "HOLD", "SPLIT", "SECONDS", "SEEN GOOD", "FAULT",
    ]  # fmt: skip
    assert [one.number for one in plates[8:]] == [str(count) for count in range(1, 11)]
    assert plates[0].code == numbered(Kind.ACTION, 1).text
    assert plates[-1].code == numbered(Kind.ACTION, 20).text


@pytest.mark.parametrize("dpi", [150, 203, 300, 600])
def test_every_plate_is_read_back_and_discs_on_both_faces(dpi: int) -> None:
    plates = [*mixed_room(), *action_plates()]
    pdf = plate_sheets(plates)
    read = sorted(code.code for page in read_back(pdf, dpi) for code in page)
    faces = [one.code for one in plates for _ in range(2 if one.kind is Kind.DISC else 1)]
    assert read == sorted(faces)


def test_any_number_of_plates_takes_as_many_pages_as_it_needs() -> None:
    discs = [plate(Kind.DISC, number) for number in range(1, 101)]
    pages = text_of(plate_sheets(discs))
    assert len(pages) == 9  # 24 faces a page
    assert "page 9 of 9" in pages[-1]


def test_every_page_says_what_may_not_go_into_the_wet_room() -> None:
    for page in text_of(plate_sheets(action_plates())):
        for word in ("paper", "nylon", "direct-thermal", "100 %"):
            assert word in page


def test_the_same_plates_make_the_same_bytes() -> None:
    assert plate_sheets(mixed_room()) == plate_sheets(mixed_room())


def test_what_wears_no_plate_is_refused() -> None:
    with pytest.raises(Refused, match="is no plate"):
        plate(Kind.KIT, 31)
    with pytest.raises(Refused, match="No action"):
        plate(Kind.ACTION, 99)
    with pytest.raises(BadInput):
        plate_for("P002F")


def test_no_plates_at_all_are_refused() -> None:
    with pytest.raises(Refused, match="no plate to print"):
        plate_sheets([])


def test_a_name_too_long_for_its_plate_is_refused_with_its_words() -> None:
    name = "the third pot from the left under the long window"
    with pytest.raises(Refused, match=name):
        plate_sheets([plate(Kind.POT, 2, name)])


def test_a_fault_in_drawing_is_caught_before_plates_are_handed_out(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    another = square_codes.matrix("D0010", Symbol.DATA_MATRIX)
    monkeypatch.setattr(square_codes, "matrix", lambda text, symbol: another)
    with pytest.raises(Refused, match="D0010 is read where"):
        plate_sheets([plate(Kind.POT, 2)])
