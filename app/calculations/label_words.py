"""The words of a tag for one market in one language, with what is refused and what to look at."""

from dataclasses import dataclass

from app.calculations.label_claims import doubtful_claims, refused_claims
from app.calculations.label_composition import composition_for
from app.calculations.label_phrases import care_in, in_figures, language_name, origin_in
from app.calculations.markets import Market, Said, local_law_decides


@dataclass(frozen=True, slots=True)
class TagFacts:
    """What a tag would say of a yarn as it was described, before any market is asked.

    `bled` says how the lot's water looked, like 'bleeds strongly'; nothing if it was clear or
    never looked at.
    """

    colourway: str
    base: str
    fibre: str
    net: str
    ounces: str
    care: str = ""
    origin: str = ""
    bled: str = ""


@dataclass(frozen=True, slots=True)
class LabelWords:
    """A tag's words as a market reads them. With a refusal, nothing is printed."""

    fibre: str
    net: str
    ounces: str
    care: str
    origin: str
    ounces_by_law: bool
    origin_by_law: bool
    refusals: tuple[Said, ...]
    warnings: tuple[Said, ...]
    law: str


def label_words(facts: TagFacts, market: Market, language: str) -> LabelWords:
    """What the tag says there. A language that is none of the market's is refused."""
    spoken = language if language in market.languages else market.languages[0]
    made_of = composition_for(facts.fibre, market, spoken)
    care = care_in(facts.care, spoken)
    origin = origin_in(facts.origin, spoken, market.key == "US")
    said = {"The base": facts.base, "The colourway": facts.colourway, "The care": facts.care,
            "The origin": origin.words}
    return LabelWords(
        made_of.line, in_figures(facts.net, spoken), in_figures(facts.ounces, spoken), care.words,
        origin.words, market.ounces_by_law, market.origin_by_law,
        refusals=(*_wrong_language(market, language), *made_of.refusals,
                  *refused_claims(said, made_of.shares, market), *_no_origin(origin.words, market)),
        warnings=(*made_of.warnings,
                  *doubtful_claims(said, made_of.shares, market, facts.bled),
                  *_as_written((*care.as_written, *origin.as_written), market, spoken)),
        law=local_law_decides(),
    )


def _wrong_language(market: Market, language: str) -> list[Said]:
    if language in market.languages:
        return []
    return [Said(market.rule("language"),
                 f"A tag for {market.title} is not printed in the language “{language}” here.",
                 f"Choose {' or '.join(map(language_name, market.languages))}.")]


def _no_origin(origin: str, market: Market) -> list[Said]:
    if origin.strip() or not market.origin_by_law:
        return []
    return [Said(market.rule("origin"), "The tag says no country where it was made or dyed.",
                 "Write the origin into the base or the studio's own words.")]


def _as_written(parts: tuple[str, ...], market: Market, language: str) -> list[Said]:
    return [Said(market.rule("other-language"),
                 f"“{part}” has no words in {language_name(language)} here and stands as written.",
                 "Write it in that language in the base, if buyers must read it.")
            for part in parts]
