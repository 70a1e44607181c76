"""Both ends of a thread, in sentences that never say more than the book knows."""

import pytest

from app.exchange.tracing import Traced, sentences, traced
from app.lookups.tagging import piles_waiting
from app.lookups.things import Found, by_code, lot_found
from app.store.journal import verify
from app.work.holding import hold, lift_hold
from app.work.matching import find, is_one_of
from app.work.mixing import mix
from app.work.tagging import apply_tag
from tests.deeds import send
from tests.makers import EACH_MG, LONG_MM, Studio


def trace(studio: Studio, found: Found | None) -> Traced:
    assert found is not None
    return studio.book.ask(traced, found, studio.clock.now)


def said(studio: Studio, found: Found | None) -> dict[str, str]:
    return dict(sentences(trace(studio, found)))


def cone_of(studio: Studio, code: str) -> Found | None:
    return studio.book.ask(by_code, code)


@pytest.fixture
def mixed(studio: Studio) -> Studio:
    """6 of C0001 and 6 of C0002 in one pot, their cords cut; 4 more of C0001 in a lot of its own.
    """
    one, other = studio.cones(2)
    rows = [studio.wind(one, 6), studio.wind(other, 6)]
    studio.dye(*rows)
    pool = studio.do(mix, rows)
    studio.finish(pool, red=12)
    alone = studio.wind(one, 4)
    studio.dye(alone)
    (own,) = studio.finish(alone, red=4)
    studio.tag(own, 4)
    return studio


def test_a_cone_that_was_not_wound_says_only_where_it_came_from(studio: Studio) -> None:
    studio.cone()
    words = said(studio, cone_of(studio, "C00017"))
    assert set(words) == {"Came"}
    assert words["Came"].startswith("6 Apr 2026 from Aske Mill, note 2241, batch A-203, 1456 g net")


def test_of_a_cone_in_a_pool_it_says_how_many_and_never_which(mixed: Studio) -> None:
    one = trace(mixed, cone_of(mixed, "C00017"))
    words = dict(sentences(one))
    assert words["Became"].startswith("10 skeins have yarn of it: 6 in dye lot 26·15·")
    assert words["Now"] == "6 of 12 counted and not tagged, 4 on the table."
    assert words["How sure"] == "4 surely come from it, and 6 of 12 others."
    assert "From" not in words
    assert one.together is not None
    assert sum(now.count for now in one.now) == one.together.count == 16
    assert sum(now.mg for now in one.now) == one.together.mg


def test_a_lot_says_of_how_many_skeins_the_cone_is_known(mixed: Studio) -> None:
    words = said(mixed, mixed.book.ask(lot_found, 1))
    assert words["From"] == "6 of 12 from cone C·0001·7; 6 of 12 from cone C·0002·K."
    assert words["Became"] == "12 skeins went into its bath."
    assert words["How sure"] == "the cone is known of none of the 12."
    assert said(mixed, mixed.book.ask(lot_found, 2))["How sure"] == "the cone is known of all 4."


def test_a_tagged_skein_of_a_pool_is_one_of_two_cones(mixed: Studio) -> None:
    (tag,) = mixed.print(mixed.book.ask(piles_waiting)[0].id, 1)
    skein = mixed.do(apply_tag, tag)
    found = Found("skein", skein, "mark", "")
    words = said(mixed, found)
    assert words["From"].startswith(
        "cone C·0001·7, one of a pool: 0 to 1 of 1, 0.5 expected; cone C·0002·K, one of a pool")
    assert words["Now"] == "1 on the table."
    assert "How sure" not in words
    assert "Became" not in words


def test_a_skein_over_a_join_has_both_cones_with_their_shares(studio: Studio) -> None:
    one, other = studio.cones(2)
    row = studio.join([(one, LONG_MM * 62 // 100), (other, LONG_MM - LONG_MM * 62 // 100)])
    studio.dye(row)
    (pile,) = studio.finish(row, **{"red and yellow": 1})
    (skein,) = studio.tag(pile, 1)
    words = said(studio, Found("skein", skein, "mark", ""))
    assert "cone C·0001·7, partly: 62 % of the metres" in words["From"]
    assert said(studio, cone_of(studio, "C00017"))["How sure"] == "partly: 62 % of the metres."


def test_holds_that_reach_it_are_told_with_whom_to_ask_until_they_are_lifted(
    mixed: Studio
) -> None:
    placed = mixed.do(hold, "cone", 2, "oil")
    for found in (cone_of(mixed, "C0002K"), mixed.book.ask(lot_found, 1)):
        assert said(mixed, found)["HOLD"] == (
            "cone C·0002·K since 6 Apr 2026: oil. Ask OW, Osk Wray.")
    assert "HOLD" not in said(mixed, mixed.book.ask(lot_found, 2))
    mixed.do(lift_hold, placed, "clean")
    assert "HOLD" not in said(mixed, cone_of(mixed, "C0002K"))


def test_a_hold_on_a_cone_that_was_not_wound_is_told_too(studio: Studio) -> None:
    studio.do(hold, "cone", studio.cone(), "oil")
    assert "oil" in said(studio, cone_of(studio, "C00017"))["HOLD"]


def test_a_disc_says_what_hangs_on_it_now(studio: Studio) -> None:
    studio.wind(studio.cone(), 6, disc=studio.discs[0])
    found = Found("disc", studio.discs[0], "D031", "")
    words = said(studio, found)
    assert words["Became"] == "6 skeins hang on it now."
    assert words["From"] == "cone C·0001·7."
    assert words["Now"] == "6 in work."


def test_a_pot_has_no_thread(studio: Studio) -> None:
    one = trace(studio, Found("pot", studio.pot, "P001", ""))
    assert sentences(one) == ()
    assert (one.origins, one.now, one.together, one.stops) == ((), (), None, ())


def test_the_journals_head_of_that_moment_comes_along(mixed: Studio) -> None:
    one = trace(mixed, cone_of(mixed, "C00017"))
    verdict = mixed.book.ask(verify)
    assert (one.entry, one.journal_head) == (verdict.entries, verdict.head)


def test_a_find_that_is_one_of_those_sent_is_counted_once_and_none_is_said_to_be_it(
    studio: Studio,
) -> None:
    lot, skeins = studio.tagged(studio.cone(), 4)
    studio.do(send, skeins[:3])
    studio.do(is_one_of, studio.do(find, 1, EACH_MG), skeins[:3])
    one = trace(studio, cone_of(studio, "C00017"))
    assert one.together is not None
    assert (one.together.count, one.together.mg) == (4, 4 * EACH_MG)
    assert {now.words: now.count for now in one.now} == {
        "on the table": 2, "sent, buyer not known": 2}
    assert dict(sentences(one))["How sure"] == "known: all 4 come from it."
    assert said(studio, studio.book.ask(lot_found, lot))["How sure"] == (
        "the cone is known of all 4.")
    assert said(studio, Found("skein", skeins[0], "mark", ""))["Now"] == (
        "1 sent, buyer not known.")


def test_what_was_told_to_be_of_another_cone_is_not_of_this_one(studio: Studio) -> None:
    """3 and 3 in one pot, told apart by their ties at the count."""
    rows = [studio.wind(cone, 3, tie) for cone, tie in zip(
        studio.cones(2), ("red", "blue"), strict=True)]
    studio.dye(*rows)
    red, _ = studio.finish(studio.mix(*rows), red=3, blue=3)
    studio.tag(red, 3)
    words = said(studio, cone_of(studio, "C00017"))
    assert (words["Now"], words["How sure"]) == ("3 on the table.", "known: all 3 come from it.")
    assert said(studio, studio.book.ask(lot_found, 1))["Now"] == (
        "3 counted and not tagged, 3 on the table.")
