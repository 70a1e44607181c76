"""The reel: what was wound is booked, whatever the cone should have held."""

import pytest
from sqlalchemy import select

from app.lookups.discs import yarn_on_disc
from app.problems import Refused
from app.records import Draw, Yarn
from app.work.bases import describe_base
from app.work.finishing import finish
from app.work.winding import Drawn, Wound, end_cone, wind
from tests.makers import EACH_MG, LONG_MM, Studio, tarnfield


def skeins(cone: int, count: int, tie: str = "red") -> Wound:
    return Wound((Drawn(cone, count * LONG_MM),), count, "skein", tie)


def join(first: int, second: int, count: int = 1) -> Wound:
    return Wound((Drawn(first, 255_200), Drawn(second, 157_300)), count, "skein", "red and yellow")


def test_a_group_weighs_what_its_metres_weigh(studio: Studio) -> None:
    done = studio.done(wind, [skeins(studio.cone(), 6)], studio.discs[0])
    assert done.said == "wound 6 skeins of C·0001·7, red ties, on disc 031"
    group = studio.book.ask(lambda c: c.execute(select(Yarn)).one())
    assert (group.count, group.mg, group.kind, group.tie) == (6, 6 * EACH_MG, "group", "red")


def test_several_cones_on_one_reel_are_a_group_each_on_one_cord(studio: Studio) -> None:
    one, two = studio.cones(2)
    done = studio.done(wind, [skeins(one, 4), skeins(two, 3, "yellow")], studio.discs[0])
    assert studio.book.ask(yarn_on_disc, studio.discs[0], studio.clock.now) == done.answer
    assert [studio.origins(group)[0].thing for group in done.answer] == [one, two]
    assert done.findings == ()


def test_a_skein_over_a_join_is_62_and_38_per_cent(studio: Studio) -> None:
    done = studio.done(wind, [join(*studio.cones(2))])
    assert done.said == "wound 1 skein of C·0001·7 and C·0002·K, red and yellow ties"
    assert done.findings == ()
    draws = studio.book.ask(lambda c: c.execute(select(Draw.mg, Draw.mm)).all())
    assert [tuple(draw) for draw in draws] == [(63_800, 255_200), (39_325, 157_300)]
    assert [round(k.share * 100) for k in studio.origins(done.answer[0])] == [62, 38]


def test_a_cone_that_gives_more_than_it_holds_has_given_it(studio: Studio) -> None:
    cone = studio.cone()
    assert studio.done(wind, [skeins(cone, 14)]).findings == ()  # 1,444 g of 1,427: within 3 %
    done = studio.done(wind, [skeins(cone, 1)])
    assert done.findings == (
        "C·0001·7 gave 1547 g, and held 1427 g at standard moisture: count again, or another "
        "cone was on the reel.",)
    assert done.answer


def test_a_tie_colour_of_another_open_cone_is_warned_of(studio: Studio) -> None:
    one, two = studio.cones(2)
    group = studio.do(wind, [skeins(one, 2)])[0]
    done = studio.done(wind, [skeins(two, 2)])
    assert done.findings == ("Red ties are worn by another open cone of Tarnfield 4-ply: "
                             "take another colour, or keep the two out of one pot.",)
    studio.do(finish, [group], {"red": 2})
    studio.do(finish, [done.answer[0]], {"red": 2})
    assert studio.done(wind, [skeins(one, 2)]).findings == ()


def test_a_disc_on_a_live_bundle_is_refused_and_nothing_is_wound(studio: Studio) -> None:
    cone = studio.cone()
    studio.do(wind, [skeins(cone, 2)], studio.discs[0])
    with pytest.raises(Refused, match="Disc 031 hangs on a live bundle; nothing was saved"):
        studio.do(wind, [skeins(cone, 2)], studio.discs[0])
    assert sum(amount.count for amount in studio.present().values()) == 2


def test_what_cannot_be_one_winding_is_refused(studio: Studio) -> None:
    studio.do(describe_base, tarnfield(name="Gossamer Lamb"))
    one, two = studio.cone(), studio.cones(1, "Gossamer Lamb")[0]
    for reel, words in (([], "Nothing was wound"), ([skeins(one, 0)], "Nothing was wound"),
                        ([join(one, two, 2)], "Only one skein can span a join"),
                        ([join(one, two)], "Two bases cannot be one skein")):
        with pytest.raises(Refused, match=words):
            studio.do(wind, reel)
    assert studio.present() == {}


def test_a_cone_that_ends_even_is_ended_without_a_word(studio: Studio) -> None:
    cone = studio.cone()
    studio.do(wind, [skeins(cone, 13)])
    left = 1_426_880 - 13 * EACH_MG
    done = studio.done(end_cone, cone, left)
    assert (done.said, done.findings) == ("ended C·0001·7, 86.255 g waste", ())


@pytest.mark.parametrize(("wound", "waste", "sentence"), [
    (12, 86_255, "C·0001·7: 103 g are missing in its balance."),
    (14, 86_255, "C·0001·7: 103 g too much in its balance."),
])
def test_a_skein_not_booked_or_booked_twice_shows_in_the_balance(
    studio: Studio, wound: int, waste: int, sentence: str
) -> None:
    cone = studio.cone()
    studio.do(wind, [skeins(cone, wound)])
    done = studio.done(end_cone, cone, waste)
    assert done.findings == (
        f"{sentence} Look for a skein that was not booked, or booked twice.",)
    studio.check()


def test_the_end_of_a_cone_is_weighed_and_comes_once(studio: Studio) -> None:
    cone = studio.cone()
    with pytest.raises(Refused, match="The end of a cone weighs something"):
        studio.do(end_cone, cone, 0)
    studio.do(end_cone, cone, 1_000)
    with pytest.raises(Refused, match="C·0001·7 was ended before"):
        studio.do(end_cone, cone, 1_000)


def test_a_cone_that_was_ended_and_is_wound_all_the_same_is_booked(studio: Studio) -> None:
    cone = studio.cone()
    studio.do(end_cone, cone, 1_000)
    assert studio.do(wind, [skeins(cone, 2)])
