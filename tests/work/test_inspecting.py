"""The shade check: recorded as it happened, and marked where it is less sure than it looks."""

import pytest

from app.calculations.grey_scales import Step
from app.calculations.shade import Colour
from app.lookups.holds import live_holds
from app.lookups.lot_shade import verdict_of
from app.problems import NotFound, Refused
from app.work.holding import lift_hold
from app.work.inspecting import (
    ShadeIn,
    VerdictIn,
    choose_swatch,
    decide,
    grey_step,
    read_shade,
    read_shades,
)
from tests.calculations.shades import DRY, TEAL, WET, colour
from tests.lookups.cards import dyed, read_lot, read_standard
from tests.makers import Studio

GLOVE = TEAL["P"]


def test_a_card_is_kept_and_said_with_how_it_was_read(studio: Studio) -> None:
    lot = dyed(studio)
    done = studio.done(read_shade, ShadeIn(GLOVE, lot=lot))
    assert done.said.endswith(": 48.3 -36.6 3.3, D65, 2°, dry, 4 readings")
    assert done.findings == ()
    studio.done(read_shade, ShadeIn(GLOVE, standard=(1, 1)))
    said = studio.done(read_shade, ShadeIn(colour(89.6, -2.0, 10.8, 1), cone=1)).said
    assert said.startswith("read cone C·")
    assert said.endswith(", 1 reading")
    studio.check()


def test_few_readings_and_uneven_ones_are_kept_and_marked(studio: Studio) -> None:
    lot = dyed(studio)
    done = studio.done(read_shade, ShadeIn(Colour(48.3, -36.6, 3.3, DRY, 2, 0.9), lot=lot))
    assert done.findings == ("Only 2 readings: read the card at 4 places.",
                             "The readings are 0.9 apart: is the card wound evenly?")


def test_a_wet_card_is_kept_and_compared_with_nothing_dry(studio: Studio) -> None:
    lot = dyed(studio)
    read_standard(studio, GLOVE.lab)
    (finding,) = studio.done(read_shade, ShadeIn(colour(41, -30, 3, at=WET), lot=lot)).findings
    assert finding.startswith("One was read wet and one dry")


def test_a_card_is_of_one_thing_that_is_in_the_book(studio: Studio) -> None:
    lot = dyed(studio)
    for card in (ShadeIn(GLOVE), ShadeIn(GLOVE, lot=lot, cone=1)):
        with pytest.raises(Refused, match="of one thing"):
            studio.do(read_shade, card)
    for card in (ShadeIn(GLOVE, lot=99), ShadeIn(GLOVE, cone=99), ShadeIn(GLOVE, standard=(9, 1))):
        with pytest.raises(NotFound, match="not in the book"):
            studio.do(read_shade, card)
    with pytest.raises(Refused, match="No card was read"):
        studio.do(read_shades, [])


def test_several_cards_are_one_deed_or_none(studio: Studio) -> None:
    lot = dyed(studio)
    before = studio.last()
    with pytest.raises(NotFound):
        studio.do(read_shades, [ShadeIn(GLOVE, lot=lot), ShadeIn(GLOVE, lot=99)])
    assert studio.last() == before
    done = studio.done(read_shades, [ShadeIn(GLOVE, lot=lot), ShadeIn(GLOVE, lot=dyed(studio))])
    assert done.said == "read 2 cards of 2 things"


def test_the_eye_says_a_step_against_the_standard_or_another_lot(studio: Studio) -> None:
    lot, other = dyed(studio), dyed(studio)
    assert studio.done(grey_step, lot, Step.FOUR_FIVE).said.endswith(
        "against the standard: 4-5 on the grey scale for change")
    studio.do(grey_step, lot, Step.THREE, other, "staining")
    with pytest.raises(Refused, match="against itself"):
        studio.do(grey_step, lot, Step.FIVE, lot)
    with pytest.raises(Refused, match="no grey scale for blue wool"):
        studio.do(grey_step, lot, Step.FIVE, scale="blue wool")


def test_a_swatch_is_a_colour_and_no_measurement(studio: Studio) -> None:
    lot = dyed(studio)
    assert studio.done(choose_swatch, lot, "#1b856e").said.endswith("swatch #1B856E chosen by eye")
    with pytest.raises(Refused, match="no colour for a swatch"):
        studio.do(choose_swatch, lot, "teal")


@pytest.mark.parametrize(("said", "why"), [
    (VerdictIn("fine"), "is no verdict"), (VerdictIn("one-off", " "), "needs a name"),
    (VerdictIn("seconds"), "Seconds need the reason"), (VerdictIn("hold"), "A hold needs the"),
])
def test_a_verdict_says_what_it_must(studio: Studio, said: VerdictIn, why: str) -> None:
    lot = dyed(studio)
    with pytest.raises(Refused, match=why):
        studio.do(decide, lot, said)


def test_a_verdict_of_hold_holds_and_another_verdict_does_not_lift_it(studio: Studio) -> None:
    lot = dyed(studio)
    studio.do(decide, lot, VerdictIn("hold", why="pink cast"))
    (held,) = studio.book.ask(live_holds)
    assert (held.source, held.why, held.person) == (("lot", lot), "pink cast", "OW")
    done = studio.done(decide, lot, VerdictIn("standard"))
    assert "stays on HOLD until somebody lifts it and says why" in done.findings[0]
    with pytest.raises(Refused, match="needs its reason"):
        studio.do(lift_hold, held.id, " ")
    studio.do(lift_hold, held.id, "read again dry, it is right")
    assert studio.done(decide, lot, VerdictIn("standard")).findings == ()
    found = studio.book.ask(verdict_of, lot)
    assert found
    assert found.verdict == "standard"
    studio.check()


def test_taking_a_hold_verdict_back_takes_its_hold_back(studio: Studio) -> None:
    lot = dyed(studio)
    studio.do(decide, lot, VerdictIn("hold", why="pink cast"))
    studio.undo()
    assert studio.book.ask(live_holds) == ()
    assert studio.book.ask(verdict_of, lot) is None


def test_passing_a_lot_that_drifted_is_marked(studio: Studio) -> None:
    read_standard(studio, GLOVE.lab)
    for name in "PQRS":
        lot = dyed(studio)
        read_lot(studio, lot, TEAL[name].lab)
    (finding,) = studio.done(decide, lot, VerdictIn("standard")).findings
    assert finding.startswith("It drifts: only 0.7 ± 0.5 from the last lot")
    assert studio.done(decide, lot, VerdictIn("one-off", "Late Frost")).findings == ()
