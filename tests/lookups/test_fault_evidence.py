"""The evidence that the book gives: what each skein went through, pools by their exact counts."""

from datetime import UTC

import pytest

from app.calculations.evidence import Suspect, Tally
from app.calculations.suspects import rank
from app.lookups.fault_evidence import InQuestion, in_question
from tests.calculations.suspect_cases import EARLIER, FINAL, thirty_two
from tests.lookups.suspected import ThirtyTwo
from tests.makers import Studio


def asked(studio: Studio, fault: str = "streak") -> InQuestion:
    found = studio.book.ask(in_question, fault, UTC)
    assert found is not None
    return found


def chances(found: InQuestion) -> dict[tuple[str, int | None], int]:
    """Per cent by thing, without telling the fault's kind."""
    ranking = rank(found.evidence)
    return {found.thing[one.suspect]: round(100 * one.chance) for one in ranking.ranked
            if one.suspect in found.thing}


def test_the_worked_example_in_a_book_is_the_worked_example(studio: Studio) -> None:
    case = ThirtyTwo(studio)
    case.found(EARLIER)
    found = asked(studio)
    said = chances(found)
    assert (said["cone", case.a], said["load", case.washes["W1"]], said["lot", case.lots["L1"]],
            said["cone", case.b]) == (41, 26, 19, 7)
    by_hand = {str(one.suspect.kind): one.chance for one in rank(thirty_two(EARLIER)).ranked}
    assert by_hand.keys() >= {"cone", "lot", "wash load", "jar fill", "rail", "winder-day"}
    assert not rank(found.evidence).decided


def test_after_the_looks_it_is_the_cone(studio: Studio) -> None:
    case = ThirtyTwo(studio)
    case.found(FINAL)
    ranking = rank(asked(studio).evidence)
    assert [(round(1000 * one.chance)) for one in ranking.ranked[:3]] == [
        round(1000 * one.chance) for one in rank(thirty_two(FINAL)).ranked[:3]]
    assert ranking.decided
    assert ranking.ranked[0].suspect.kind == "cone"


def test_looks_at_three_that_share_the_cone_alone_decide(studio: Studio) -> None:
    case = ThirtyTwo(studio)
    case.found(EARLIER)
    case.looked_at("L2 W2", faulty=2, good=1)
    assert chances(asked(studio))["cone", case.a] == 96


def test_nothing_found_is_no_question(studio: Studio) -> None:
    ThirtyTwo(studio)
    assert studio.book.ask(in_question, "streak", UTC) is None


@pytest.mark.parametrize(("fault", "seen"), [("stain", Tally(faulty=1)), ("streak", None)])
def test_a_fault_of_another_kind_says_nothing_of_this_one(
    studio: Studio, fault: str, seen: Tally | None
) -> None:
    case = ThirtyTwo(studio)
    case.found({"L4": "fgssss"}, fault="stain")
    if seen is None:
        assert studio.book.ask(in_question, fault, UTC) is None
        return
    exposures = asked(studio, fault).evidence.exposures()
    (cone,) = (one for one in exposures if one.kind == "cone"
               and exposures[one].sure.faulty)
    assert exposures[cone].sure == Tally(faulty=1, good=1, silent=4)
    assert isinstance(cone, Suspect)
