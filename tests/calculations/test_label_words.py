"""A whole tag in the words of a market."""

from app.calculations.label_words import LabelWords, TagFacts, label_words
from app.calculations.markets import market


def words(at: str, language: str, **more: str) -> LabelWords:
    facts = {"colourway": "Coal Hatch", "base": "Downholm Sock",
             "fibre": "80 % wool, 20 % polyamide", "net": "100 g   388.5 m",
             "ounces": "3.53 oz   425 yd", "care": "Hand wash 30 °C, dry flat.",
             "origin": "Spun in Norway, dyed by hand at Quernlow.", **more}
    return label_words(TagFacts(**facts), market(at), language)


def test_a_tag_for_germany_reads_german_throughout() -> None:
    tag = words("EU", "de")
    assert (tag.fibre, tag.net, tag.ounces, tag.care, tag.origin) == (
        "80 % Wolle, 20 % Polyamid", "100 g   388,5 m", "3,53 oz   425 yd",
        "Handwäsche 30 °C, liegend trocknen.",
        "Gesponnen: Norway. Handgefärbt: Quernlow.")
    assert (tag.refusals, tag.warnings) == ((), ())
    assert tag.law.startswith("Local law decides")


def test_ounces_and_origin_stand_by_law_in_the_states_alone() -> None:
    by_law = [words(at, "en").ounces_by_law for at in ("EU", "UK", "US", "Canada")]
    assert by_law == [False, False, True, False]
    assert [words(at, "en").origin_by_law for at in ("EU", "UK", "US", "Canada")] == by_law


def test_canada_has_its_fibres_in_both_languages_whichever_was_chosen() -> None:
    for language in ("en", "fr"):
        assert words("Canada", language).fibre == "80% wool/laine, 20% nylon"
    assert words("Canada", "fr").care == "Laver à la main 30 °C, sécher à plat."


def test_a_language_the_market_does_not_take_is_refused_with_those_it_takes() -> None:
    (said,) = words("Canada", "de").refusals
    assert said.what == "A tag for Canada is not printed in the language “de” here."
    assert said.next_step == "Choose English or French."


def test_all_that_is_wrong_is_told_at_once() -> None:
    tag = words("US", "en", fibre="60 % merino, 40 % silk", base="Pure Silk", origin="")
    assert [said.rule.key for said in tag.refusals] == ["names", "names", "origin"]
    assert ["merino" in tag.refusals[0].what, "Pure Silk" in tag.refusals[1].what] == [True, True]


def test_what_stands_as_written_is_told_with_its_language() -> None:
    (said,) = words("EU", "it", care="Hand wash 30 °C, sing to it.").warnings
    assert said.what == "“sing to it” has no words in Italian here and stands as written."
