"""The card at the pot: lots large, bundles, water, steps, room to write."""

from dataclasses import replace

from pypdfium2 import PdfDocument

from app.documents.bath_card import BathCard, CardLot, bath_card_pdf
from app.documents.proof import read_back
from app.documents.sheet import SheetFoot, SheetHead
from tests.documents.samples import text_of

CARD = BathCard(
    head=SheetHead("Bath card", "Sluice Keeper’s Glove", "pot 5"), foot=SheetFoot("Quernlow"),
    lots=(CardLot("2615R6F", "Tarnfield 4-ply", "12 skeins"),),
    bundles=(("disc 044", "6 skeins"), ("disc 045", "6 skeins")),
    water=("23.5 L", "of water to add"), steps=("heat up, 85 °C",), additions=(),
    first_caution="The makers’ sheets come first.", cautions=("Acid into water.",),
)


def test_lots_bundles_water_and_steps_are_there_and_the_code_reads() -> None:
    words = " ".join(text_of(bath_card_pdf(CARD))).replace("\u00a0", " ")
    for part in ("26·15·R6F", "Tarnfield 4-ply, 12 skeins", "disc 044: 6 skeins", "23.5 L",
                 "heat up, 85 °C", "Nothing so far", "pH", "Acid into water."):
        assert part in words
    assert [code.code for code in read_back(bath_card_pdf(CARD), 203)[0]] == ["2615R6F"]


def test_the_lot_is_read_at_a_metre() -> None:
    """Digits of 12 mm: 1 mm a metre is the least an eye tells; common practice, no source."""
    document = PdfDocument(bath_card_pdf(CARD))
    page = document[0].get_textpage()
    start = page.get_text_range().index("26·15")
    _, bottom, _, top = page.get_charbox(start)
    document.close()
    assert (top - bottom) / 72 * 25.4 > 12


def test_forty_bundles_and_many_lots_go_on_to_the_next_page() -> None:
    codes = ("2615R6F", "2615K02")
    lots = tuple(CardLot(code, "A base with a long, long name " * 4, "2 skeins") for code in codes)
    card = replace(CARD, lots=lots, bundles=tuple(
        (f"disc {n:03}", "6 skeins Tarnfield 4-ply") for n in range(40)))
    pages = text_of(bath_card_pdf(card))
    assert len(pages) > 1
    assert all(f"disc {n:03}" in " ".join(pages) for n in range(40))


def test_a_lot_without_a_code_says_so_and_wears_none() -> None:
    pdf = bath_card_pdf(replace(CARD, lots=(CardLot("", "Tarnfield", "2 skeins"),)))
    assert "no code yet" in text_of(pdf)[0]
    assert read_back(pdf, 203) == ((),)


def test_the_same_rows_make_the_same_bytes() -> None:
    assert bath_card_pdf(CARD) == bath_card_pdf(CARD)
