"""The pot: a code for each base in each bath, born when the yarn meets it; warned of, recorded."""

from datetime import UTC, datetime, timedelta

import pytest

from app.problems import NotFound, Refused
from app.work.bases import describe_base
from app.work.dyeing import (
    Bathed,
    BathIn,
    into_bath,
    lift,
    name_colourway,
    name_lot,
)
from app.work.holding import hold
from app.work.weigh_lines import LineIn, begin_line
from tests.dyehouse import Dyehouse
from tests.makers import Studio, tarnfield


def bathe(studio: Studio, *yarn: int, pot: int | None = None) -> tuple[Bathed, tuple[str, ...]]:
    done = studio.done(into_bath, BathIn(yarn, studio.recipe, pot), studio.random)
    return done.answer, done.findings


def test_a_lot_code_is_the_week_it_happened_in_and_not_of_the_plan(studio: Studio) -> None:
    assert (studio.code(studio.dye(studio.wind(studio.cone(), 2))) or "")[:4] == "2615"
    monday = datetime(2026, 4, 13, 0, 5, tzinfo=UTC)
    studio.clock.now = monday
    assert (studio.code(studio.dye(studio.wind(studio.cone(), 2))) or "")[:4] == "2616"
    group = studio.wind(studio.cone(), 2)
    late = studio.do(into_bath, BathIn((group,), studio.recipe), studio.random,
                     happened=monday + timedelta(minutes=2))
    studio.clock.now = datetime(2027, 1, 2, tzinfo=UTC)  # a Saturday of week 53 of the year before
    code = studio.code(studio.dye(studio.wind(studio.cone(), 2)))
    assert (late["codes"][0][:4], (code or "")[:4]) == ("2616", "2653")


def test_two_pots_are_two_codes(studio: Studio) -> None:
    left, right = studio.split(studio.wind(studio.cone(), 14), 7, 7)
    codes = [studio.code(studio.dye(row, pot=pot))
             for row, pot in ((left, studio.pot), (right, studio.pot2))]
    assert len(set(codes)) == 2


def test_two_bases_in_one_bath_are_companion_lots_and_that_is_said(studio: Studio) -> None:
    studio.do(describe_base, tarnfield(name="Gossamer Lamb", millitex=125_000))
    lace = studio.cones(1, "Gossamer Lamb")[0]
    bathed, findings = bathe(studio, studio.wind(studio.cone(), 4), studio.wind(lace, 3, "blue"))
    assert len(set(bathed["lots"])) == len(set(bathed["codes"])) == 2
    assert findings == ("2 bases in one bath: companion lots, each with its own code.",)


def test_bundles_of_one_base_in_one_bath_are_one_lot(studio: Studio) -> None:
    for other in ("Gossamer Lamb", "Kettle Chunky"):  # which are not in it
        studio.do(describe_base, tarnfield(name=other))
    bathed, findings = bathe(studio, studio.wind(studio.cone(), 4),
                             studio.wind(studio.cone(), 3, "blue"))
    assert (len(bathed["lots"]), findings) == (1, ())


def test_two_cones_with_one_tie_colour_are_warned_of_and_bathed(studio: Studio) -> None:
    bathed, findings = bathe(studio, studio.wind(studio.cone(), 4), studio.wind(studio.cone(), 3))
    assert findings == ("2 cones with red ties in one pot: keep their cords closed, "
                        "else each skein is one of them.",)
    assert bathed["codes"][0]


def test_yarn_on_hold_goes_on_marked(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 4)
    studio.do(hold, "cone", 1, "oil")
    bathed, findings = bathe(studio, group)
    assert findings == (
        "HOLD lies on yarn in this pot: it goes on, marked. Ask who placed the hold.",)
    assert bathed["codes"][0]


def test_a_pot_that_was_not_lifted_is_asked_about_and_used(studio: Studio) -> None:
    first, _ = bathe(studio, studio.wind(studio.cone(), 4), pot=studio.pot)
    _, findings = bathe(studio, studio.wind(studio.cone(), 4), pot=studio.pot)
    assert findings == (
        "The lot before was not lifted out of this pot: which bucket is it in?",)
    studio.do(lift, first["bath"])
    _, findings = bathe(studio, studio.wind(studio.cone(), 4), pot=studio.pot2)
    assert findings == ()


def test_what_is_said_names_lot_count_recipe_and_pot(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 4)
    done = studio.done(into_bath, BathIn((group,), studio.recipe, studio.pot), studio.random)
    code = done.answer["codes"][0]
    assert done.said == f"26·15·{code[4:]}: 4 skeins of Sluice Keeper's Glove in pot 1"


def test_the_same_disc_scanned_twice_is_one_bundle(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 4)
    bathe(studio, group, group)
    assert studio.origins(group, "lot")[0].of == 4
    studio.check()


def test_an_empty_bath_and_one_without_a_recipe_have_not_happened(studio: Studio) -> None:
    with pytest.raises(Refused, match="Nothing is in the pot yet"):
        bathe(studio)
    group = studio.wind(studio.cone(), 4)
    for unknown in (99, studio.do(name_colourway, "Ferry Ledger")):
        if unknown != 99:
            studio.undo()
        with pytest.raises(NotFound, match="This recipe is not in the book"):
            studio.do(into_bath, BathIn((group,), unknown), studio.random)


def test_what_was_divided_before_cannot_be_in_it(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 4)
    studio.split(group, 2, 2)
    with pytest.raises(Refused, match="Scan what it became"):
        bathe(studio, group)


def test_a_colourway_is_named_once(studio: Studio) -> None:
    with pytest.raises(Refused, match="is there already; nothing was saved"):
        studio.do(name_colourway, "Sluice Keeper's Glove")
    assert studio.done(name_colourway, "Ferry Ledger").said == "named Ferry Ledger"
    with pytest.raises(Refused, match="A colourway needs a name"):
        studio.do(name_colourway, "  ")


def test_a_pot_is_lifted_once(studio: Studio) -> None:
    bathed, _ = bathe(studio, studio.wind(studio.cone(), 4), pot=studio.pot)
    assert studio.done(lift, bathed["bath"]).said == "lifted pot 1"
    with pytest.raises(Refused, match="This bath was lifted already"):
        studio.do(lift, bathed["bath"])


def test_a_lot_that_has_its_code_gets_no_other(studio: Studio) -> None:
    lot = studio.dye(studio.wind(studio.cone(), 4))
    with pytest.raises(Refused, match="has its code already"):
        studio.do(name_lot, lot, studio.random)


def poured(studio: Studio, weighing: int, *yarn: int) -> tuple[str, ...]:
    return studio.done(into_bath, BathIn(yarn, 1, None, weighing), studio.random).findings


def test_what_was_weighed_for_this_yarn_is_poured_in_without_a_word(studio: Studio) -> None:
    house = Dyehouse(studio)
    group = studio.wind(1, 6)
    assert poured(studio, house.weighed(group), group) == ()
    studio.check()


def test_a_weigh_out_that_does_not_fit_is_marked_and_the_yarn_is_in(studio: Studio) -> None:
    house = Dyehouse(studio)
    first, other = studio.wind(1, 6), studio.wind(1, 4)
    weighing = house.begin(first)
    studio.do(begin_line, LineIn(weighing, fill=house.fills[1]))
    assert poured(studio, weighing, first) == (
        "A line of the weigh-out is still open: say what became of its cup.",)
    assert poured(studio, weighing, other)[1:] == (
        "This weigh-out was poured into another bath already: is it the right one?",
        "412 g of yarn is in it, and it was weighed out for 619 g.")
    with pytest.raises(NotFound, match="This weigh-out is not in the book"):
        poured(studio, 99, studio.wind(1, 1))
