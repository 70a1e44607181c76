"""How a lot looks: measured, by eye or not; how far from the standard, and what is doubtful."""

from app.calculations.grey_scales import Step
from app.calculations.shade_words import Word
from app.lookups.lot_shade import lot_shade, verdict_of
from app.work.inspecting import VerdictIn, choose_swatch, decide, grey_step
from tests.calculations.shades import SHOP, TEAL, WET
from tests.lookups.cards import dyed, read_lot, read_standard
from tests.makers import Studio

GLOVE = (48.3, -36.6, 3.3)


def test_a_lot_that_nobody_read_says_so(studio: Studio) -> None:
    lot = dyed(studio)
    read_standard(studio, GLOVE)
    found = studio.book.ask(lot_shade, lot)
    assert (found.basis, found.from_standard, found.verdict) == ("not measured", None, None)
    assert found.standard_why_not.startswith("One of the two was not read")
    assert found.findings == ()


def test_a_lot_is_told_with_its_error_in_words_and_by_whom(studio: Studio) -> None:
    lot = dyed(studio)
    read_standard(studio, GLOVE)
    read_lot(studio, lot, TEAL["Q"].lab)
    studio.do(decide, lot, VerdictIn("standard"))
    found = studio.book.ask(lot_shade, lot)
    assert found.from_standard
    assert str(found.from_standard.decisive) == "0.5 ± 0.5"
    assert found.from_standard.judged().shown is Word.SAME
    assert found.basis == "measured"
    assert found.verdict
    assert (found.verdict.verdict, found.verdict.person) == ("standard", "OW")


def test_by_eye_the_newest_step_of_each_scale_counts(studio: Studio) -> None:
    lot, other = dyed(studio), dyed(studio)
    studio.do(choose_swatch, lot, "#1b856e")
    for step in (Step.FOUR, Step.FOUR_FIVE):
        studio.do(grey_step, lot, step)
    studio.do(grey_step, lot, Step.THREE, other, "staining", "D65")
    found = studio.book.ask(lot_shade, lot)
    assert [(one.step, one.scale, one.against is None) for one in found.by_eye] == [
        (Step.THREE, "staining", False), (Step.FOUR_FIVE, "change", True)]
    assert (found.basis, found.swatch) == ("by eye", "#1B856E")


def test_drift_that_each_step_hides_is_told(studio: Studio) -> None:
    """P, Q, R, S, T are each 0.5 to 0.7 from the last; T is 2.4 from the standard."""
    read_standard(studio, GLOVE)
    told = {}
    for name in "PQRST":
        lot = dyed(studio)
        read_lot(studio, lot, TEAL[name].lab)
        told[name] = studio.book.ask(lot_shade, lot)
    assert [name for name, one in told.items() if any(
        "It drifts" in finding for finding in one.findings)] == ["S", "T"]
    last = told["T"]
    assert last.from_last
    assert f"{last.from_last.compared.decisive.ciede2000:.2f}" == "0.70"
    assert last.from_standard
    assert f"{last.from_standard.decisive.ciede2000:.1f}" == "2.4"
    assert "only 0.7 ± 0.5 from the last lot" in last.findings[0]


def test_wet_against_dry_is_refused_and_two_lamps_are_told(studio: Studio) -> None:
    lot, other = dyed(studio), dyed(studio)
    read_lot(studio, lot, GLOVE)
    read_lot(studio, other, (40.3, -36.6, 3.3), WET)
    read_standard(studio, GLOVE)
    found = studio.book.ask(lot_shade, other)
    assert found.from_standard is None
    assert "read wet and one dry" in found.standard_why_not
    assert any("wet" in one for one in found.findings)
    read_standard(studio, GLOVE, at=SHOP)
    read_lot(studio, lot, (49.5, -35.5, 5.0), SHOP)
    assert any("differs by lamp" in one for one in studio.book.ask(lot_shade, lot).findings)


def test_the_newest_verdict_counts_until_it_is_taken_back(studio: Studio) -> None:
    lot = dyed(studio)
    studio.do(decide, lot, VerdictIn("one-off", "Late Frost"))
    studio.do(decide, lot, VerdictIn("seconds", why="a pale end"))
    found = studio.book.ask(verdict_of, lot)
    assert found
    assert (found.verdict, found.why) == ("seconds", "a pale end")
    studio.undo()
    found = studio.book.ask(verdict_of, lot)
    assert found
    assert (found.verdict, found.name) == ("one-off", "Late Frost")
