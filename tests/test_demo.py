"""The invented studio: what is planted in it answers today as it should, and its totals add up."""

import tomllib
from collections import Counter
from typing import Any

import pytest
from sqlalchemy import func, select

from app import paths
from app.exchange.tracing import sentences, traced
from app.lookups.book_totals import book_totals
from app.lookups.left_to_sell import left_to_sell
from app.lookups.now import NOW
from app.lookups.tagging import piles_waiting
from app.lookups.things import by_code
from app.records import Draw, Part, Tag, TagOn, Waste, Whereabouts, Yarn
from app.scanning.resolve import resolve
from app.store.book import Book
from tests.sums import adds_up

PLANTED = {
    "2614T26": ("Plum Stone in a Pocket", {"sent": 3, "table": 2, "shelf": 3}, 0),
    "2614Y51": ("Lamp Room Receipt", {"sent": 7, "shelf": 5}, 0),
    "2614W0Y": ("Lamp Room Receipt", {"sent": 2, "shelf": 4}, 4),
    "2615T9R": ("Plum Stone in a Pocket", {"sent": 3, "shelf": 3}, 3),
    "2606H3W": ("Sluice Keeper’s Glove", {"sent": 3, "shelf": 4}, 4),
    "2608XKM": ("Sluice Keeper’s Glove", {"sent": 6, "shelf": 4}, 4),
    "2612F5F": ("Sluice Keeper’s Glove", {"sent": 1, "shelf": 6}, 6),
    "2613Y8T": ("Sluice Keeper’s Glove", {"sent": 2, "shelf": 5}, 5),
    "2615R6F": ("Sluice Keeper’s Glove", {"sent": 4, "kit": 1, "put by": 1, "shelf": 1}, 1),
    "2613F03": ("Nettle Cellar", {"shelf": 7}, 7),
    "2610F81": ("Seventh Buoy", {"sent": 3, "shelf": 4}, 4),
    "2610W76": ("Moth at the Window", {"sent": 2, "shelf": 6}, 6),
    "2609M2M": ("Moth at the Window", {"sent": 2, "shelf": 6}, 6),
    "2610X4K": ("Whey Blue", {"sent": 4, "shelf": 4}, 4),
    "2611T01": ("Paper Ticket", {"sent": 3, "shelf": 5}, 5),
    "2614H7W": ("Ferry Ledger", {"shelf": 6}, 6),
    "2614K14": ("Ferry Ledger", {"sent": 3, "shelf": 4}, 4),
    "2614M32": ("Ferry Ledger", {"sent": 3, "shelf": 4}, 4),
    "2617M9K": ("Night Ticket", {"sent": 4, "shelf": 2}, 2),
    "2618F49": ("Wet Thatch Tuesday", {"sent": 5, "shelf": 5}, 5),
    "2616HX8": ("Brickyard Cat", {"shelf": 7}, 7),
}
"""{lot: colourway, its tagged skeins by state, left to sell}."""


def told(book: Book, code: str) -> dict[str, str]:
    found = book.ask(resolve, code, False).found
    assert found is not None
    return dict(sentences(book.ask(traced, found, NOW)))


def states_of(book: Book, lot: int) -> dict[str, int]:
    with book.reading() as connection:
        return dict(Counter(connection.execute(
            select(Whereabouts.state).join(TagOn, TagOn.yarn == Whereabouts.yarn)
            .join(Tag, Tag.id == TagOn.tag)
            .where(Tag.lot == lot, TagOn.until.is_(None), Whereabouts.until.is_(None))).scalars()))


@pytest.mark.parametrize("code", PLANTED)
def test_each_planted_lot_is_there_and_answers_as_it_should(demo_book: Book, code: str) -> None:
    colourway, states, left = PLANTED[code]
    found = demo_book.ask(by_code, code)
    assert found is not None
    assert found.words.startswith(colourway)
    assert states_of(demo_book, found.id) == states
    assert demo_book.ask(left_to_sell, found.id).count == left


def test_the_oily_cone_went_into_eight_surely_and_six_of_twelve_others(demo_book: Book) -> None:
    said = told(demo_book, "C0114F")
    assert said["How sure"] == "8 surely come from it, and 6 of 12 others."
    assert said["Became"].startswith("14 skeins have yarn of it: 8 in dye lot 26·14·T26")
    assert "317 m are left on it" in said["Came"]
    assert "oil in the yarn, seen under the lamp" in said["HOLD"]


def test_the_overdye_comes_from_both_baths(demo_book: Book) -> None:
    said = told(demo_book, "2617M9K")
    assert "26·11·T01" in said["From"]
    assert said["Now"] == "4 sent, buyer known, 2 on a shelf."


def test_the_totals_are_these_and_every_skein_is_in_exactly_one_place(demo_book: Book) -> None:
    totals = demo_book.ask(book_totals)
    assert totals.there == totals.somewhere == 1_326
    assert (totals.deliveries, totals.cones, totals.cones_ended) == (12, 100, 63)
    assert (totals.lots, totals.old_lots, totals.opened) == (178, 3, 12)
    assert totals.wound == {"skein": 1_254, "mini": 53}
    assert (totals.found, totals.strangers, totals.cut, totals.made) == (1, 0, 3, 9)
    assert (totals.tags, totals.tags_void) == (1_301, 24)
    assert totals.orders == {"web": 62, "shop": 92, "fair": 2}
    assert (totals.orders_open, totals.customers, totals.kits) == (0, 23, 6)
    by_state = Counter[str]()
    for (state, _), amount in totals.states.items():
        by_state[state] += amount.count
    assert by_state == {
        "in work": 27, "piled": 21, "table": 3, "shelf": 508, "put by": 1, "kit": 2, "lost": 1,
        "found, not matched": 1, "sent, buyer known": 620, "sent, buyer not known": 142}


def test_every_milligram_is_somewhere_too(demo_book: Book) -> None:
    states = demo_book.ask(book_totals).states
    with demo_book.reading() as connection:
        def sum_of(mg: Any, *where: Any) -> int:
            return connection.execute(select(func.sum(mg)).where(*where)).scalar_one()

        matched = select(Part.child).where(Part.struck.is_(None))
        came = (sum_of(Draw.mg) + sum_of(Yarn.mg, Yarn.base_version.is_not(None))
                + sum_of(Yarn.mg, Yarn.kind == "find", Yarn.id.not_in(matched)))
        cut = sum_of(Waste.mg, Waste.yarn.is_not(None))
    assert came == sum(amount.mg for amount in states.values()) + cut


def test_every_skein_and_milligram_and_metre_adds_up(demo_book: Book) -> None:
    demo_book.ask(adds_up)


def test_no_pile_whose_skeins_all_wear_tags_waits_for_some(demo_book: Book) -> None:
    assert all(pile.left for pile in demo_book.ask(piles_waiting))


def test_no_planted_case_makes_the_weeks_look_planted(demo_book: Book) -> None:
    assert len(PLANTED) <= demo_book.ask(book_totals).lots * 0.2


def _in_srgb(lab: list[float]) -> str:
    """CIELAB for D65 and 2° as sRGB (IEC 61966-2-1; white and matrix from memory), cut off."""
    y = (lab[0] + 16) / 116
    xyz = [white * (t**3 if t > 6 / 29 else 3 * (6 / 29) ** 2 * (t - 4 / 29))
           for white, t in zip((0.95047, 1.0, 1.08883), (y + lab[1] / 500, y, y - lab[2] / 200),
                               strict=True)]
    matrix = ((3.2404542, -1.5371385, -0.4985314), (-0.9692660, 1.8760108, 0.0415560),
              (0.0556434, -0.2040259, 1.0572252))
    linear = [sum(a * b for a, b in zip(row, xyz, strict=True)) for row in matrix]
    shown = [12.92 * c if c <= 0.0031308 else 1.055 * c ** (1 / 2.4) - 0.055 for c in linear]
    return "#" + "".join(f"{round(255 * min(1.0, max(0.0, c))):02X}" for c in shown)


def test_every_swatch_is_the_colour_beside_it() -> None:
    studio = tomllib.loads((paths.DEMO_DATA / "studio.toml").read_text("utf-8"))
    assert len(studio["colourways"]) == 15
    for colourway in studio["colourways"]:
        assert colourway["swatch"] == _in_srgb(colourway["lab"])


def test_no_tag_promises_more_than_was_wound() -> None:
    studio = tomllib.loads((paths.DEMO_DATA / "studio.toml").read_text("utf-8"))
    for base in studio["bases"]:
        for put_up in base["put_ups"]:
            wound_m = put_up["turns"] * put_up["reel_m"]
            assert wound_m * base["tex"] / 1000 >= put_up["g"]
            assert wound_m * (1 - base["relax"] / 100) >= put_up["m"]
