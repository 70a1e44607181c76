"""More of the same lot: the offers in their order, each with its words and its number."""

from datetime import timedelta
from decimal import Decimal

import pytest

from app.lookups.reorder import Asked, Reorder, reorder
from app.problems import BadInput
from app.work.holding import hold
from app.work.kits import make_kit
from app.work.moving import put_by
from tests.calculations.shades import TEAL
from tests.lookups.cards import read_lot
from tests.lookups.shop import shelved
from tests.makers import Studio

D = Decimal
GLOVE, BEFORE = (48.3, -36.6, 3.3), (48.2, -36.6, 3.3)


def asked(studio: Studio, lot: int, **more: object) -> Reorder:
    return studio.book.ask(reorder, Asked(lot=lot, **more), studio.clock.now)  # type: ignore[arg-type]


def short(studio: Studio) -> tuple[int, list[int], int]:
    """Three of a lot: one free, one put by, one in a kit that is not sold; four of another lot."""
    (lot, skeins), (before, _) = shelved(studio, 3, 4)
    read_lot(studio, lot, GLOVE)
    read_lot(studio, before, BEFORE)
    studio.do(put_by, skeins[:1], None, studio.clock.now + timedelta(days=2))
    studio.do(make_kit, "Stair-Rail Cowl", skeins[1:2])
    return lot, skeins, before


def test_a_short_reorder_offers_the_kit_and_the_old_lot_a_tenth_away(studio: Studio) -> None:
    lot, _, before = short(studio)
    found = asked(studio, lot, used=D(3), done=D("0.62"), allowance=D("0.08"))
    assert (found.wanted, found.free, found.enough, found.only_just) == (2, 1, False, True)
    assert found.need
    assert f"{found.need.exact:.2f}" == "1.99"
    first = [(way.way, way.skeins) for way in found.ways[:5]]
    assert first == [("same lot", 1), ("same lot", 1), ("same lot", 1), ("sister lot", 4),
                     ("blend", 4)]
    assert found.ways[0].words == "1 free: 1 on shelf 003"
    assert any("in kit Stair-Rail Cowl, not sold: open it" in way.words for way in found.ways)
    assert any("put by, and that ends on" in way.words for way in found.ways)
    near = found.ways[3]
    assert (near.lot, near.certainty) == (before, "measured")
    assert near.difference
    assert f"{near.difference.ciede2000:.2f}" == "0.10"
    assert "0.1 ± 0.5, looks the same" in near.words
    assert found.fewest
    assert found.fewest.free == 4
    assert found.fewest.worst
    assert f"{found.fewest.worst.ciede2000:.2f}" == "0.10"


def test_the_ways_come_in_the_order_in_which_they_are_offered(studio: Studio) -> None:
    lot, _, _ = short(studio)
    ways = list(dict.fromkeys(way.way for way in asked(studio, lot, skeins=9).ways))
    assert ways == ["same lot", "sister lot", "blend", "other design", "redye", "all new"]
    assert asked(studio, lot, skeins=9).ways[-1].words.startswith(
        "All 9 from one new lot: none has so many now")


def test_what_no_lot_can_fill_names_the_fewest_lots_and_the_worst_pair(studio: Studio) -> None:
    found = shelved(studio, 2, 3, 3, 4)
    for (lot, _), name in zip(found, "PQVU", strict=True):
        read_lot(studio, lot, TEAL[name].lab)
    said = asked(studio, found[0][0], skeins=6)
    assert said.fewest
    assert (len(said.fewest.lots), said.fewest.free) == (2, 6)  # P and U, 0.30 apart
    assert said.fewest.worst
    assert f"{said.fewest.worst.ciede2000:.2f}" == "0.30"
    assert asked(studio, found[0][0], skeins=2).fewest is None
    assert asked(studio, found[0][0], skeins=99).fewest is None


def test_held_yarn_is_offered_in_no_way(studio: Studio) -> None:
    lot, skeins, before = short(studio)
    studio.do(hold, "lot", before, "stain")
    for skein in skeins:
        studio.do(hold, "yarn", skein, "stain")
    found = asked(studio, lot, skeins=1)
    assert {way.way for way in found.ways} == {"other design", "redye", "all new"}
    assert all(way.lot is None for way in found.ways)


def test_without_a_card_a_lot_is_offered_as_made_alike_and_without_a_number(
    studio: Studio,
) -> None:
    (lot, _), (other, _) = shelved(studio, 1, 2)
    (way,) = [way for way in asked(studio, lot, skeins=2).ways if way.lot == other
              and way.way != "all new"]
    assert way.difference is None
    assert way.certainty == "made alike, not measured"


def test_metres_are_reckoned_into_skeins_of_the_put_up(studio: Studio) -> None:
    ((lot, _),) = shelved(studio, 1)
    assert asked(studio, lot, metres=D(1640)).wanted == 5
    assert asked(studio, lot, metres=D(1640), put_up="mini").wanted == 23
    for nothing in ({}, {"skeins": 0}, {"metres": D(100), "put_up": "hank"}, {"used": D(3)}):
        with pytest.raises(BadInput, match="nothing was"):
            asked(studio, lot, **nothing)

