"""The suspects of a fault as the owner gets them: word, next look, and what can itself be seen."""

from datetime import UTC

from app.calculations.suspect_words import headline, look_at
from app.lookups.suspects import Suspects, suspects
from tests.calculations.suspect_cases import EARLIER, FINAL
from tests.lookups.suspected import ThirtyTwo
from tests.makers import Studio


def asked(studio: Studio) -> Suspects:
    found = studio.book.ask(suspects, "streak", UTC)
    assert found is not None
    return found


def test_undecided_it_says_which_skeins_to_look_at(studio: Studio) -> None:
    case = ThirtyTwo(studio)
    case.found(EARLIER)
    found = asked(studio)
    assert headline(found.ranking).startswith("Not decided")
    said = look_at(found.looks[0])
    lot = f"lot {studio.code(case.lots['L2'])[:2]}"  # type: ignore[index]
    assert said.startswith("Look at 3 of the 4 skeins of " + lot)
    assert "wash load 2" in said


def test_decided_it_names_the_cone_whose_rest_can_be_looked_at(studio: Studio) -> None:
    case = ThirtyTwo(studio)
    case.found(FINAL)
    found = asked(studio)
    assert headline(found.ranking).startswith("Likely cone")
    assert found.asked.thing[found.ranking.to_look_at[0]] == ("cone", case.a)
    assert found.tested[0].chance < 1


def test_a_fault_nobody_found_has_no_suspects(studio: Studio) -> None:
    assert studio.book.ask(suspects, "streak", UTC) is None
