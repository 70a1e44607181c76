"""The shipped cautions: each with words, a place and a source."""

from app.calculations.cautions import Step, all_cautions, cautions_for, first_of_all


def test_every_caution_has_words_a_step_and_a_source() -> None:
    assert len(all_cautions()) >= 15
    for one in all_cautions():
        assert one.words.endswith(".")
        assert one.steps
        assert one.source


def test_no_two_cautions_have_one_key() -> None:
    keys = [one.key for one in all_cautions()]
    assert len(set(keys)) == len(keys)


def test_the_makers_sheets_and_the_local_rules_come_first() -> None:
    assert "safety data sheet" in first_of_all()
    assert "local rules" in first_of_all()


def test_every_step_has_something_to_mind() -> None:
    anything = {substance for one in all_cautions() for substance in one.substances}
    assert [step for step in Step if not cautions_for(step, anything)] == []


def test_powder_calls_for_a_mask_whatever_the_dye() -> None:
    assert "breathing" in {one.key for one in cautions_for(Step.WEIGH)}


def test_reactive_dye_brings_its_own_warning_and_acid_dye_does_not() -> None:
    reactive = {one.key for one in cautions_for(Step.WEIGH, ["reactive dye"])}
    acid = {one.key for one in cautions_for(Step.WEIGH, ["acid dye"])}
    assert "reactive-asthma" in reactive
    assert "reactive-asthma" not in acid
    assert "acid-dyes" in acid


def test_acid_goes_into_water_at_the_pot() -> None:
    said = [one.words for one in cautions_for(Step.POT, ["acid"])]
    assert "Acid into water, never water into acid." in said
