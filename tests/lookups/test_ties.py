"""Tie colours are handed out in rotation, and no two cones in work wear the same."""

from app.lookups.studio import tie_colours
from app.lookups.ties import open_ties, tie_of
from app.work.studio import choose
from tests.makers import Studio

COLOURS = ("red", "yellow", "blue", "green", "orange", "violet", "black", "white")


def next_tie(studio: Studio, cone: int) -> str:
    return studio.book.ask(tie_of, cone, 1)


def test_colours_are_handed_out_one_after_the_other_and_again_from_the_first(
    studio: Studio,
) -> None:
    given = []
    for cone in studio.cones(9):
        tie = next_tie(studio, cone)
        group = studio.wind(cone, 1, tie)
        studio.finish(group, **{tie: 1})
        given.append(tie)
    assert tuple(given) == (*COLOURS, "red")
    assert studio.book.ask(tie_colours) == COLOURS


def test_a_colour_in_work_is_passed_over(studio: Studio) -> None:
    first, second, third = studio.cones(3)
    studio.wind(first, 1, "yellow")
    studio.finish(studio.wind(second, 1, "red"), red=1)
    assert next_tie(studio, third) == "blue"  # after red comes yellow, which cone 1 wears


def test_a_cone_keeps_its_colour(studio: Studio) -> None:
    one, other = studio.cones(2)
    studio.wind(one, 1, "green")
    studio.wind(other, 1, "orange")
    assert next_tie(studio, one) == "green"


def test_the_two_colours_of_a_join_are_not_the_colour_of_the_second_cone(
    studio: Studio,
) -> None:
    one, other = studio.cones(2)
    studio.wind(one, 6, "red")
    studio.join([(one, 255_200), (other, 157_300)], "red and yellow")
    assert next_tie(studio, other) == "yellow"
    assert next_tie(studio, one) == "red"


def test_where_all_are_worn_the_one_after_the_last_is_taken(studio: Studio) -> None:
    cones = studio.cones(9)
    for cone, tie in zip(cones, COLOURS, strict=False):
        studio.wind(cone, 1, tie)
    assert next_tie(studio, cones[8]) == "red"


def test_ties_of_other_bases_do_not_matter(studio: Studio) -> None:
    cone = studio.cone()
    studio.wind(cone, 2, "red")
    assert studio.book.ask(open_ties, 2, 0) == {}
    assert studio.book.ask(open_ties, 1, 0) == {"red": cone}
    assert studio.book.ask(open_ties, 1, cone) == {}


def test_the_studio_chooses_its_own_colours(studio: Studio) -> None:
    studio.do(choose, {"tie colours": '["pink", "grey"]'})
    first, second = studio.cones(2)
    assert next_tie(studio, first) == "pink"
    studio.wind(first, 1, "pink")
    assert next_tie(studio, second) == "grey"
