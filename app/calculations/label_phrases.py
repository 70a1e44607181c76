"""The words of a tag that are the same for every yarn: care and origin in a market's languages."""

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from typing import Any

from app.paths import resource

_CARE = re.compile(r"\s*([^,.;|]+?)\s*(?:[,;.|]+|$)")
_DEGREES = re.compile(r"^(.*?)\s*((?:at\s+)?\d+\s*°\s*C)$", re.IGNORECASE)
_ORIGIN = re.compile(
    r"^Spun in (?P<spun>.+?), (?:hand[- ]dyed|dyed by hand) (?:in|at) (?P<dyed>.+?)\.?$",
    re.IGNORECASE)
_DYED = re.compile(r"^(?:hand[- ]dyed|dyed by hand) (?:in|at) (?P<dyed>.+?)\.?$", re.IGNORECASE)
_NOT = re.compile(r"\b(?:not|no|never|nicht|ne|pas|niet|non|ej|ikke)\b")
_THE_STATES = re.compile(r"\b(?:USA|U\.S\.A\.?|United States)(?!\w)", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Told:
    """Words in a language, and those parts that stand as they were written."""

    words: str
    as_written: tuple[str, ...] = ()


def language_name(language: str) -> str:
    """'German': a language as it is named to a person."""
    return str(_words()["names"][language])


def phrase(key: str, language: str) -> str:
    """A phrase that has a translation in every language here."""
    return str(_words()[key][language])


def figures(number: Decimal, language: str) -> str:
    """A figure as the language writes it, without zeros that say nothing."""
    return in_figures(f"{number.normalize():f}", language)


def in_figures(words: str, language: str) -> str:
    """Figures among words with the point the language uses."""
    if language not in _words()["decimal_comma"]:
        return words
    return re.sub(r"(?<=\d)\.(?=\d)", ",", words)


def care_in(care: str, language: str) -> Told:
    """Care in words, phrase by phrase; a phrase with no translation here stands as written.

    Drawn care symbols are protected marks in a number of countries and are never printed.
    """
    if language == "en" or not care.strip():
        return Told(care)
    said, left = [], []
    for part in (found[1] for found in _CARE.finditer(care)):
        known = _care_phrase(part, language)
        said.append(known or part)
        left += [] if known else [part]
    whole = ", ".join(said)
    return Told(f"{whole[:1].upper()}{whole[1:]}.", tuple(left))


def says_machine_wash(care: str) -> bool:
    """Whether any phrase of the care promises a machine, in any language here."""
    offers = [words for key, words in _words()["care"].items() if key.startswith("machine")]
    told = {words.casefold() for one in offers for words in one.values()} | {"machine wash"}
    parts = (found[1].casefold() for found in _CARE.finditer(care))
    return any(words in part for part in parts if not _NOT.search(part) for words in told)


def origin_words(spun: str, dyed: str, language: str) -> str:
    """Where it was spun and dyed; where it was spun may be unknown, and is then not said."""
    if language != "en":
        spun, dyed = (place.removeprefix("the ") for place in (spun, dyed))
    if not spun:
        return phrase("dyed", language).format(dyed=dyed)
    return phrase("origin", language).format(spun=spun, dyed=dyed)


def origin_in(origin: str, language: str, states: bool = False) -> Told:
    """The origin in a language; words in no known form stand as they were written.

    `states`: the market of the United States, where yarn from abroad that is dyed there is named
    in the form of 16 CFR 303.33, from memory.
    """
    bare = " ".join(origin.replace("|", " ").split())
    found = _ORIGIN.match(bare) or _DYED.match(bare)
    if found is None:
        return Told(origin, (bare,) if bare and language != "en" else ())
    spun, dyed = found.groupdict().get("spun", ""), found["dyed"]
    if states and _THE_STATES.search(dyed) and spun and not _THE_STATES.search(spun):
        return Told(f"Dyed by hand in {dyed} of imported yarn, spun in {spun}.")
    return Told(origin if language == "en" else origin_words(spun, dyed, language))


def names_the_states(origin: str) -> bool:
    """Whether the words say that it was made in the United States."""
    return "made in" in origin.casefold() and _THE_STATES.search(origin) is not None


def _care_phrase(part: str, language: str) -> str | None:
    heat = _DEGREES.match(part)
    bare, degrees = (heat[1], heat[2].removeprefix("at ")) if heat else (part, "")
    known = _care().get(" ".join(bare.casefold().split()))
    return f"{known[language]} {degrees}".strip() if known else None


@cache
def _care() -> Mapping[str, Mapping[str, str]]:
    """{a phrase in English: the same by language}."""
    return {one["en"]: one for one in _words()["care"].values()}


@cache
def _words() -> dict[str, Any]:
    return tomllib.loads(resource("markets/words.toml").read_text(encoding="utf-8"))
