"""A colourway's lots as a map: the newest, in groups, with what is left of each."""

import pytest

from app.lookups.shade_map import colourway_of, shade_map
from app.work.inspecting import ShadeIn, read_shades
from tests.calculations.shades import SHOP, TEAL, colour
from tests.lookups.cards import dyed, read_lot, read_standard
from tests.lookups.shop import shelved
from tests.makers import Studio


def test_eight_teal_lots_lie_in_four_groups_whether_any_is_left_or_not(studio: Studio) -> None:
    (first, _), = shelved(studio, 3)
    lots = [first, *(dyed(studio, 1) for _ in range(7))]
    read_standard(studio, TEAL["P"].lab)
    for lot, name in zip(lots, TEAL, strict=True):
        read_lot(studio, lot, TEAL[name].lab)
    found = studio.book.ask(shade_map, lots[3], 1.0)
    assert [step.lot for step in found.lots] == lots
    names = "PQRSTUVW"
    assert sorted("".join(names[place] for place in group.lots) for group in found.groups) == [
        "PQU", "RS", "TV", "W"]
    assert found.fewest
    assert found.left == (3, 0, 0, 0, 0, 0, 0, 0)
    assert (found.lot, found.colourway, found.limit) == (lots[3], "Sluice Keeper's Glove", 1.0)
    assert found.standard is not None
    assert found.standard.lab == TEAL["P"].lab
    assert found.group_of(0) == found.group_of(1) != found.group_of(7)


def test_a_lot_not_read_in_this_light_is_named_if_some_is_left(studio: Studio) -> None:
    (one, _), (other, _), (_third, _) = shelved(studio, 1, 1, 1)
    nothing = studio.book.ask(shade_map, one)
    assert (nothing.lots, nothing.groups, nothing.viewing, nothing.standard) == ((), (), None, None)
    assert len(nothing.not_read) == 3
    read_lot(studio, one, TEAL["P"].lab)
    read_lot(studio, other, TEAL["P"].lab, SHOP)
    read_lot(studio, other, TEAL["Q"].lab)
    found = studio.book.ask(shade_map, one)
    assert len(found.lots) == 2
    assert len(found.not_read) == 1


def test_only_the_newest_are_shown_and_the_others_counted(
    studio: Studio, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("app.lookups.shade_map.SHOWN", 3)
    lots = [dyed(studio, 1) for _ in range(5)]
    studio.do(read_shades, [ShadeIn(colour(48 + n / 20, -36, 3), lot=lot)
                            for n, lot in enumerate(lots)])
    found = studio.book.ask(shade_map, lots[0])
    assert (len(found.lots), found.older) == (3, 2)
    assert found.lots[-1].lot == lots[-1]


def test_a_lot_is_of_a_colourway_and_a_base(studio: Studio) -> None:
    assert studio.book.ask(colourway_of, dyed(studio)) == (1, 1)
