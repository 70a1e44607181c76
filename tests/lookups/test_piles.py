"""Piles on the tables, and what to look for in yarn that is in hand."""

from app.calculations.codes import shown
from app.lookups.cones import cone_facts
from app.lookups.piles import counted_last, look_for, piles_on
from app.work.finishing import finish
from app.work.holding import hold
from app.work.winding import Drawn, Wound, wind
from tests.makers import LONG_MM


def cord_of_two(studio):
    """8 red and 6 yellow on disc 031, dyed."""
    one, other = studio.cones(2)
    groups = studio.do(
        wind,
        [
            Wound((Drawn(one, 8 * LONG_MM),), 8, "skein", "red"),
            Wound((Drawn(other, 6 * LONG_MM),), 6, "skein", "yellow"),
        ],
        studio.discs[0],
    )
    return groups, studio.dye(*groups)


def test_both_piles_of_a_cord_have_its_disc_as_their_card(studio):
    groups, lot = cord_of_two(studio)
    studio.do(finish, groups, {"red": 8, "yellow": 6})
    code = shown(studio.code(lot))
    assert [
        (pile.count, pile.ties, pile.lot, pile.disc)
        for pile in studio.book.ask(piles_on, studio.discs[0])
    ] == [(8, "red", code, "031"), (6, "yellow", code, "031")]


def test_the_pile_counted_last_comes_first(studio):
    groups, _ = cord_of_two(studio)
    studio.do(finish, groups, {"red": 8, "yellow": 6})
    last = studio.book.ask(counted_last)
    assert [pile.count for pile in last] == [6, 8]
    assert [pile.count for pile in studio.book.ask(counted_last, 1)] == [6]


def test_ties_are_told_though_the_cords_were_mixed_before_the_count(studio):
    groups, _ = cord_of_two(studio)
    studio.do(finish, [studio.mix(*groups)], {"red": 8, "yellow": 6})
    assert [(pile.count, pile.ties) for pile in studio.book.ask(piles_on, studio.discs[0])] == [
        (8, "red"),
        (6, "yellow"),
    ]


def test_strange_ties_stand_apart_with_no_lot(studio):
    group = studio.wind(studio.cone(), 4, "red", studio.discs[0])
    studio.dye(group)
    studio.finish(group, red=4, blue=1)
    assert [(pile.ties, pile.lot) for pile in studio.book.ask(counted_last, 1)] == [("blue", None)]


def test_a_join_is_looked_for_with_its_shares(studio):
    one, other = studio.cones(2)
    skein = studio.join([(one, 255_200), (other, 157_300)])
    codes = [shown(studio.book.ask(cone_facts, cone).code) for cone in (one, other)]
    assert studio.book.ask(look_for, [skein, studio.wind(one, 3)]) == (
        f"1 skein with red and yellow ties spans a join: {codes[0]} 62 %, {codes[1]} 38 %.",
    )


def test_a_join_is_still_looked_for_after_cords_were_mixed(studio):
    one, other = studio.cones(2)
    pool = studio.mix(studio.join([(one, 255_200), (other, 157_300)]), studio.wind(one, 3))
    assert len(studio.book.ask(look_for, [pool])) == 1


def test_a_hold_above_the_yarn_is_said(studio):
    cone = studio.cone()
    group = studio.wind(cone, 3)
    studio.do(hold, "cone", cone, "oil stain")
    assert studio.book.ask(look_for, [group]) == ("HOLD lies on this yarn: it goes on, marked.",)
    assert studio.book.ask(look_for, [studio.wind(studio.cone(), 3)]) == ()
