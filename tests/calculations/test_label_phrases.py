"""Care, origin and figures in the languages of the markets."""

import tomllib
from decimal import Decimal

import pytest

from app.calculations.label_phrases import (
    care_in,
    figures,
    in_figures,
    names_the_states,
    origin_in,
    origin_words,
    phrase,
    says_machine_wash,
)
from app.calculations.markets import MARKETS, market
from app.documents.typesetting import strangers
from app.paths import resource

CARE = "Hand wash 30 °C, dry flat,|do not tumble."
LANGUAGES = {language for key in MARKETS for language in market(key).languages}


def test_every_phrase_is_in_every_language_and_can_be_printed() -> None:
    words = tomllib.loads(resource("markets/words.toml").read_text(encoding="utf-8"))
    phrases = [words[key] for key in ("names", "other", "origin", "dyed")]
    for one in (*phrases, *words["care"].values()):
        assert set(one) == LANGUAGES
        assert not any(strangers(said) for said in one.values())
    assert set(words["decimal_comma"]) == LANGUAGES - {"en"}


@pytest.mark.parametrize(("language", "said"), [
    ("en", CARE), ("de", "Handwäsche 30 °C, liegend trocknen, nicht in den Trockner."),
    ("fr", "Laver à la main 30 °C, sécher à plat, pas de sèche-linge."),
    ("sv", "Handtvätt 30 °C, planttorkas, ej torktumling.")])
def test_care_is_told_in_the_language(language: str, said: str) -> None:
    assert care_in(CARE, language).words == said
    assert care_in(CARE, language).as_written == ()


def test_care_that_has_no_words_stands_as_written_and_is_told() -> None:
    told = care_in("Hand wash at 30 °C. Sing to it.", "de")
    assert told.words == "Handwäsche 30 °C, Sing to it."
    assert told.as_written == ("Sing to it",)
    assert care_in("", "de").words == ""


def test_a_machine_is_promised_only_where_it_is() -> None:
    assert says_machine_wash("Machine wash 30 °C, wool cycle.")
    assert says_machine_wash("Machine washable.")
    assert says_machine_wash("Laver en machine 30 °C.")
    assert not says_machine_wash(CARE)
    assert not says_machine_wash("Do not machine wash.")


def test_the_origin_is_told_in_the_language_with_the_places_as_they_are() -> None:
    told = origin_in("Spun in the Aske valley,|dyed by hand at Quernlow.", "fr")
    assert told.words == "Filé : Aske valley. Teint à la main : Quernlow."
    assert origin_in("Hand-dyed in Quernlow", "de").words == "Handgefärbt: Quernlow."
    assert origin_words("", "Quernlow", "en") == "Dyed by hand in Quernlow."
    assert origin_words("Norway", "Quernlow", "en") == "Spun in Norway, dyed by hand in Quernlow."


def test_an_origin_in_other_words_stands_as_written() -> None:
    assert origin_in("From our hill.", "de").as_written == ("From our hill.",)
    assert origin_in("From our hill.", "en").as_written == ()


def test_yarn_from_abroad_dyed_in_the_states_is_called_imported() -> None:
    assert origin_in("Spun in Norway, dyed by hand in Ohio, USA.", "en", states=True).words == (
        "Dyed by hand in Ohio, USA of imported yarn, spun in Norway.")
    home = "Spun in Maine, USA, dyed by hand in Ohio, USA."
    assert origin_in(home, "en", states=True).words == home
    assert names_the_states("Made in the United States")
    assert not names_the_states("Made in Quernlow")


def test_figures_have_the_point_of_the_language() -> None:
    assert (figures(Decimal("100.0"), "de"), figures(Decimal("2.50"), "de")) == ("100", "2,5")
    assert in_figures("3.53 oz   424 yd.", "fr") == "3,53 oz   424 yd."
    assert in_figures("3.53 oz", "en") == "3.53 oz"
    assert phrase("other", "nl") == "overige vezels"
