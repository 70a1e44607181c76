"""The door: what cannot be is refused, what looks off is said and taken in."""

from typing import Any

import pytest
from sqlalchemy import select

from app.lookups.cones import cone_facts
from app.problems import Refused
from app.records import Cone, Reading, Supplier, SupplierLot
from app.store.book import Done
from app.work.receiving import ConeIn, DeliveryIn, receive
from tests.makers import Studio


def came(**changes: Any) -> ConeIn:
    return ConeIn(**{"gross_mg": 1_462_000, "tare_mg": 64_000, "batch": "A-203", **changes})


def take_in(studio: Studio, *cones: ConeIn, **changes: Any) -> Done[list[int]]:
    delivery = {"supplier": "Aske Mill", "note_no": "2241", "base": "Tarnfield 4-ply",
                "arrived": studio.clock.now, "cones": cones, **changes}
    return studio.done(receive, DeliveryIn(**delivery))


def codes(studio: Studio) -> list[str]:
    return [code[:5] for (code,) in studio.book.ask(
        lambda c: c.execute(select(Cone.code).order_by(Cone.id)).all())]


def test_each_cone_gets_the_next_number_and_all_is_said(studio: Studio) -> None:
    done = take_in(studio, *[came()] * 3)
    assert done.said == "took in 3 cones of Tarnfield 4-ply, note 2241"
    assert done.findings == ()
    assert codes(studio) == ["C0001", "C0002", "C0003"]
    assert take_in(studio, came()).said == "took in 1 cone of Tarnfield 4-ply, note 2241"


def test_a_number_from_its_card_is_kept_and_the_others_go_on_from_the_highest(
    studio: Studio,
) -> None:
    take_in(studio, came(number=114), came(), came(number=7))
    assert codes(studio) == ["C0114", "C0115", "C0007"]


def test_numbers_go_on_past_four_digits(studio: Studio) -> None:
    take_in(studio, came(number=9_999), came())
    take_in(studio, came())
    assert [code[:7] for (code,) in studio.book.ask(lambda c: c.execute(
        select(Cone.code).order_by(Cone.id)).all())][1:] == ["C010000", "C010001"]


def test_a_number_that_is_taken_is_refused_and_nothing_of_the_delivery_is_saved(
    studio: Studio,
) -> None:
    take_in(studio, came(number=114))
    with pytest.raises(Refused, match=r"C·0114·F is another cone; nothing was taken in\."):
        take_in(studio, came(), came(number=114))
    with pytest.raises(Refused, match="C·0005·. stands twice in this delivery"):
        take_in(studio, came(number=5), came(number=5))
    assert codes(studio) == ["C0114"]


def test_a_base_that_is_not_described_is_refused_with_those_that_are(studio: Studio) -> None:
    with pytest.raises(Refused, match="Gossamer Lamb is not described in the book") as raised:
        take_in(studio, came(), base="Gossamer Lamb")
    assert raised.value.next_step == "Describe it first, or choose one of: Tarnfield 4-ply."
    with pytest.raises(Refused, match="No base is not described"):
        take_in(studio, came(), base="")


@pytest.mark.parametrize(("gross", "tare"), [(64_000, 64_000), (60_000, 64_000), (1, -1)])
def test_a_weight_that_cannot_be_is_refused(studio: Studio, gross: int, tare: int) -> None:
    with pytest.raises(Refused, match=r"Cone 2: .* cannot be; nothing was taken in"):
        take_in(studio, came(), came(gross_mg=gross, tare_mg=tare))
    assert codes(studio) == []


def test_a_delivery_without_cones_is_none(studio: Studio) -> None:
    with pytest.raises(Refused, match="A delivery needs at least one cone"):
        take_in(studio)


OFF = {
    "C·0001·7 holds 636 g: a cone has 700 to 2,200 g as a rule. Weigh it again.":
        {"gross_mg": 700_000},
    "C·0001·7 holds 2,336 g: a cone has 700 to 2,200 g as a rule. Weigh it again.":
        {"gross_mg": 2_400_000},
    "C·0001·7: 100 m weigh 26 g, 4.0 % over the base's count. Wrap a second cone.":
        {"wrap_mg": 26_000},
    "C·0001·7: 100 m weigh 24.2 g, 3.2 % under the base's count. Wrap a second cone.":
        {"wrap_mg": 24_200},
    "C·0001·7 differs from the kept cone by 2.34 undyed: keep it for deep shades.":
        {"ecru_off": 234},
}


@pytest.mark.parametrize("sentence", OFF)
def test_what_looks_off_is_said_and_taken_in(studio: Studio, sentence: str) -> None:
    done = take_in(studio, came(**OFF[sentence]))
    assert done.findings == (sentence,)
    assert codes(studio) == ["C0001"]


@pytest.mark.parametrize("changes", [
    {"gross_mg": 764_000}, {"gross_mg": 2_264_000}, {"wrap_mg": 25_750}, {"wrap_mg": 24_250},
    {"ecru_off": 150},
])
def test_what_is_just_within_is_not_warned_of(studio: Studio, changes: dict[str, int]) -> None:
    assert take_in(studio, came(**changes)).findings == ()


def test_a_part_cone_of_the_opening_stock_may_hold_little_but_not_too_much(studio: Studio) -> None:
    done = take_in(studio, came(gross_mg=382_000), came(gross_mg=2_400_000), opening_stock=True)
    assert done.findings == (
        "C·0002·K holds 2,336 g: a cone has 700 to 2,200 g as a rule. Weigh it again.",)


def test_two_batches_in_one_delivery_are_warned_of(studio: Studio) -> None:
    assert take_in(studio, came(), came(batch="A-204")).findings == (
        "2 batches in one delivery: wind and dye them apart.",)
    assert take_in(studio, came(), came(batch=" A-203 ")).findings == ()


def test_a_batch_that_is_not_stated_is_taken_in_as_not_stated(studio: Studio) -> None:
    take_in(studio, came(batch=None), came(batch="  "))
    said = studio.book.ask(lambda c: c.execute(select(SupplierLot.said)).scalars().all())
    assert said == [None]


def test_a_supplier_is_one_however_often_he_delivers(studio: Studio) -> None:
    for _ in range(2):
        take_in(studio, came(), supplier=" Aske Mill ")
    take_in(studio, came(), supplier="")
    assert studio.book.ask(lambda c: c.execute(select(Supplier.name)).scalars().all()) == [
        "Aske Mill", "not stated"]


def test_what_was_read_off_is_kept_with_its_cone(studio: Studio) -> None:
    (cone,) = take_in(studio, came(wrap_mg=25_000, moisture_permille=130, ecru_off=20)).answer
    rows = studio.book.ask(lambda c: c.execute(
        select(Reading.kind, Reading.value).where(Reading.cone == cone)).all())
    assert {tuple(row) for row in rows} == {
        ("wrap mg", 25_000), ("moisture permille", 130), ("ecru centi-delta", 20)}


def test_a_number_that_was_taken_back_is_free_again(studio: Studio) -> None:
    first = studio.done(receive, DeliveryIn("Aske Mill", "1", "Tarnfield 4-ply", studio.clock.now,
                                            (ConeIn(1_520_000, 64_000, "A", 114),)))
    studio.book.undo(first.seq, by=studio.by)
    again = studio.cones(1, number=114)
    assert studio.book.ask(cone_facts, again[0]).code == "C0114F"
