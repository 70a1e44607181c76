"""What the finishing table expects by tie colour."""

from app.lookups.finishing import NO_TIE, Expected, expected_by_tie
from app.work.finishing import finish
from app.work.mixing import recognise
from app.work.opening_stock import OldLot, open_lot
from app.work.tagging import apply_tag
from app.work.winding import Drawn, Wound, wind
from tests.makers import Studio


def expected(studio: Studio, *rows: int) -> tuple[Expected, ...]:
    return studio.book.ask(expected_by_tie, rows)


def told(studio: Studio, *rows: int) -> dict[str, tuple[int, int]]:
    return {one.tie: (one.count, one.most) for one in expected(studio, *rows)}


def test_whole_groups_are_counted_by_their_ties(studio: Studio) -> None:
    a, b = studio.wind(studio.cone(), 8, "red"), studio.wind(studio.cone(), 6, "yellow")
    assert expected(studio, a, b) == (
        Expected("red", 8, 8, (a,), (), "red"), Expected("yellow", 6, 6, (b,), (), "yellow"))


def test_two_groups_of_one_colour_are_counted_together(studio: Studio) -> None:
    a, b = studio.wind(studio.cone(), 4), studio.wind(studio.cone(), 3)
    (red,) = expected(studio, a, b)
    assert (red.tie, red.count, red.rows, red.told) == ("red", 7, (a, b), ())


def test_in_a_mixed_row_a_tie_tells_its_one_origin(studio: Studio) -> None:
    a, b, c = (studio.wind(studio.cone(), n, tie)
               for n, tie in ((4, "red"), (3, "blue"), (2, "red")))
    pool = studio.mix(a, b, c)
    assert expected(studio, pool) == (
        Expected("red", 6, 6, (pool,), (), "red"),
        Expected("blue", 3, 3, (pool,), ((pool, b),), "blue"))


def test_of_a_mixed_row_that_was_split_the_range_is_told(studio: Studio) -> None:
    a, b = studio.wind(studio.cone(), 7, "red"), studio.wind(studio.cone(), 5, "blue")
    pool = studio.mix(a, b)
    eight, four = studio.split(pool, 8, 4)
    assert told(studio, eight) == {"red": (3, 7), "blue": (1, 5)}
    assert told(studio, four) == {"red": (0, 4), "blue": (0, 4)}
    assert [one.told for one in expected(studio, eight)] == [((pool, a),), ((pool, b),)]
    assert told(studio, eight, four) == {"red": (3, 11), "blue": (1, 9)}


def test_in_a_mixed_row_of_a_mixed_row_a_tie_tells_each_step(studio: Studio) -> None:
    a, b, c = (studio.wind(studio.cone(), n, tie)
               for n, tie in ((4, "red"), (3, "blue"), (2, "green")))
    inner = studio.mix(a, b)
    pool = studio.mix(inner, c)
    assert [(one.tie, one.count, one.told) for one in expected(studio, pool)] == [
        ("red", 4, ((pool, inner), (inner, a))), ("blue", 3, ((pool, inner), (inner, b))),
        ("green", 2, ((pool, c),))]


def test_what_was_recognised_is_told_already(studio: Studio) -> None:
    a, b = studio.wind(studio.cone(), 3, "red"), studio.wind(studio.cone(), 2, "blue")
    pool = studio.mix(a, b)
    one, rest = studio.split(pool, 1, 4)
    studio.do(recognise, one, pool, a)
    assert told(studio, one) == {"red": (1, 1)}
    assert told(studio, rest) == {"red": (2, 2), "blue": (2, 2)}


def test_put_ups_with_one_tie_on_one_cord_are_counted_apart(studio: Studio) -> None:
    cone = studio.cone()
    skeins, minis = studio.do(wind, [Wound((Drawn(cone, 4 * 412_500),), 4, "skein", "red"),
                                     Wound((Drawn(cone, 3 * 82_500),), 3, "mini", "red")])
    assert told(studio, skeins, minis) == {"red skein": (4, 4), "red mini": (3, 3)}
    piles = studio.do(finish, [skeins, minis], {"red skein": 4, "red mini": 3})
    assert len(piles) == 2
    assert {key: amount.count for key, amount in studio.present().items()} == {
        ("piled", "skein"): 4, ("piled", "mini"): 3}
    studio.check()


def test_what_wears_no_tie_is_counted_too(studio: Studio) -> None:
    pile = studio.do(open_lot, OldLot("OLD-77", studio.version, 1, 4), 100_000)
    assert told(studio, pile) == {NO_TIE: (4, 4)}


def test_only_what_is_left_of_a_pile_is_expected_when_it_is_counted_again(
    studio: Studio,
) -> None:
    group = studio.wind(studio.cone(), 4)
    studio.dye(group)
    (pile,) = studio.finish(group, red=4)
    studio.do(apply_tag, studio.print(pile, 4)[0])
    assert told(studio, pile) == {"red": (3, 3)}
    assert studio.done(finish, [pile], {"red": 3}).findings == ()
    studio.check()
