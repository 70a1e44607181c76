"""The finishing count: before the scissors, by tie colour, and honest about what does not fit."""

import pytest

from app.lookups.discs import disc_of
from app.problems import Refused
from app.work.finishing import finish
from app.work.opening_stock import OldLot, open_lot
from tests.makers import EACH_MG, Studio

MISSING = "missing at the count: look in the basins, the machine and under the rack."
OVER = "too many: of no known cone. Look which other cord is short."


def count(studio: Studio, *rows: int, **ties: int) -> tuple[list[int], tuple[str, ...]]:
    done = studio.done(finish, list(rows), {tie.replace("_", " "): n for tie, n in ties.items()})
    return done.answer, done.findings


def test_a_pile_for_each_tie_colour_on_the_cord(studio: Studio) -> None:
    a, b = studio.wind(studio.cone(), 8, "red"), studio.wind(studio.cone(), 6, "yellow")
    done = studio.done(finish, [a, b], {"red": 8, "yellow": 6})
    assert done.said == "counted 14 skeins: 8 red, 6 yellow"
    assert done.findings == ()
    assert [studio.origins(pile)[0].of for pile in done.answer] == [8, 6]
    studio.check()


@pytest.mark.parametrize(("counted", "sentence"), [
    (7, f"1 skein with red ties {MISSING}"), (5, f"3 skeins with red ties {MISSING}"),
    (9, f"1 skein with red ties {OVER}"), (11, f"3 skeins with red ties {OVER}"),
])
def test_too_few_and_too_many_are_said_with_the_right_word(
    studio: Studio, counted: int, sentence: str
) -> None:
    _, findings = count(studio, studio.wind(studio.cone(), 8), red=counted)
    assert findings == (sentence,)
    studio.check()


def test_what_is_missing_stays_in_the_sum(studio: Studio) -> None:
    count(studio, studio.wind(studio.cone(), 8), red=6)
    assert {key[0]: amount.count for key, amount in studio.present().items()} == {
        "piled": 6, "missing at a count": 2}


def test_a_colour_that_nothing_on_the_cord_wears_stands_apart(studio: Studio) -> None:
    (reds, greens), findings = count(studio, studio.wind(studio.cone(), 8), red=8, green=1)
    assert findings == ("1 skein with green ties: nothing on this cord is like that. "
                        "They stand apart, their lot and cone not known.",)
    assert studio.origins(reds)[0].word == "known"
    assert [link.word for link in studio.origins(greens)] == ["not known"]
    studio.check()


def test_what_wears_no_tie_is_said_so(studio: Studio) -> None:
    pile = studio.do(open_lot, OldLot("OLD-77", studio.version, 1, 4), 100_000)
    _, findings = count(studio, pile, no_tie=3)
    assert findings == (f"1 skein without a tie {MISSING}",)
    _, findings = count(studio, studio.wind(studio.cone(), 2), red=2, no_tie=2)
    assert findings[0].startswith("2 skeins without a tie: nothing on this cord is like that.")
    studio.check()


def test_two_groups_of_one_colour_are_one_pool_from_here_on(studio: Studio) -> None:
    a, b = studio.wind(studio.cone(), 4), studio.wind(studio.cone(), 3)
    (pile,), findings = count(studio, a, b, red=6)
    assert findings == (f"1 skein with red ties {MISSING}",)
    assert [(link.least, link.most, link.of) for link in studio.origins(pile)] == [
        (3, 4, 6), (2, 3, 6)]
    studio.check()


def test_of_a_pool_the_ties_tell_each_origin(studio: Studio) -> None:
    pool = studio.mix(studio.wind(studio.cone(), 7, "red"), studio.wind(studio.cone(), 5, "blue"))
    (reds, blues), findings = count(studio, pool, red=6, blue=6)
    assert set(findings) == {f"1 skein with red ties {MISSING}", f"1 skein with blue ties {OVER}"}
    assert [link.word for link in studio.origins(reds)] == ["known"]
    assert [(link.thing, link.most) for link in studio.origins(blues)] == [(2, 5), (None, 1)]
    studio.check()


def test_of_a_pool_and_a_group_with_one_colour_nothing_is_counted_twice(studio: Studio) -> None:
    red, pool = studio.wind(studio.cone(), 4, "red"), studio.mix(
        studio.wind(studio.cone(), 7, "red"), studio.wind(studio.cone(), 5, "blue"))
    (reds, blues), findings = count(studio, red, pool, red=11, blue=5)
    assert findings == ()
    assert [(link.thing, link.least, link.most) for link in studio.origins(reds)] == [
        (2, 7, 7), (1, 4, 4)]
    assert studio.origins(blues)[0].word == "known"
    assert {key[0]: amount.count for key, amount in studio.present().items()} == {"piled": 16}
    studio.check()


@pytest.mark.parametrize(("red", "blue", "sentence"), [
    (5, 2, f"1 skein {MISSING}"), (5, 1, f"2 skeins {MISSING}"), (5, 4, f"1 skein {OVER}"),
    (8, 0, f"1 skein with red ties {OVER}"),
])
def test_of_a_mixed_row_that_was_split_only_the_sum_can_be_wrong(
    studio: Studio, red: int, blue: int, sentence: str
) -> None:
    pool = studio.mix(studio.wind(studio.cone(), 7, "red"), studio.wind(studio.cone(), 5, "blue"))
    eight, _ = studio.split(pool, 8, 4)
    _, findings = count(studio, eight, red=red, blue=blue)
    assert sentence in findings
    studio.check()


def test_the_disc_stays_on_the_pile_as_its_card(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 8, disc=studio.discs[0])
    (pile,), _ = count(studio, group, red=8)
    assert studio.book.ask(disc_of, pile) == "031"


def test_nothing_counted_is_no_count(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 8)
    for nothing in ({}, {"red": 0}, {"red": -1}):
        with pytest.raises(Refused, match="Nothing was counted; nothing was saved"):
            studio.do(finish, [group], nothing)
    with pytest.raises(Refused, match="Nothing was counted"):
        studio.do(finish, [], {"red": 1})


def test_a_row_is_counted_once(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 8)
    count(studio, group, red=8)
    with pytest.raises(Refused, match="Scan what it became"):
        count(studio, group, red=8)
    assert sum(a.mg for a in studio.present().values()) == 8 * EACH_MG
