"""Fibres by the names that markets allow, in their languages, and words that are no such name."""

import csv
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from app.calculations.markets import Market
from app.paths import resource

OTHER = "other fibres"
_NOT_A_LANGUAGE = ("fibre", "group", "us_wool", "also")
_PURPOSE = re.compile(r"^(.*?)\s*\(for ([^)]+)\)$")
_OTHERS = ("other fibre", "other fibres", "other fiber", "other fibers")


@dataclass(frozen=True, slots=True)
class Fibre:
    """One fibre; `us_wool` where the law of the United States takes it for wool.

    `names` are by the column of the table: a language, `US`, `Canada en` or `Canada fr`.
    """

    key: str
    group: str
    us_wool: bool
    also: tuple[str, ...]
    names: Mapping[str, str]

    def called(self, market: Market, language: str) -> str | None:
        """Its name on a label of that market; none where no name is known here."""
        column = {"US": "US", "Canada": f"Canada {language}"}.get(market.key, language)
        return self.names[column] or None

    @property
    def spellings(self) -> tuple[str, ...]:
        """Every word that means this fibre, in any language."""
        words = (self.key, *self.also, *self.names.values())
        return tuple(dict.fromkeys(word.casefold() for word in words if word))


@dataclass(frozen=True, slots=True)
class NotAName:
    """A word that no composition may use: what to write, the rule's key, and why."""

    word: str
    write: str
    rule: str
    because: str


@dataclass(frozen=True, slots=True)
class Written:
    """What a person wrote for a fibre: the fibre or the word that is none, and its function.

    `other` where the words were “other fibres”.
    """

    words: str
    fibre: Fibre | None = None
    wrong: NotAName | None = None
    purpose: str = ""
    other: bool = False


@cache
def fibres() -> tuple[Fibre, ...]:
    """Every fibre that has a name here."""
    return tuple(
        Fibre(row["fibre"], row["group"], row["us_wool"] == "yes",
              tuple(filter(None, row["also"].split("|"))),
              {column: name for column, name in row.items() if column not in _NOT_A_LANGUAGE})
        for row in _rows("fibres/names.csv"))


@cache
def not_names() -> tuple[NotAName, ...]:
    """Every word that is known not to be a fibre's name."""
    return tuple(NotAName(row["word"], row["write"], row["rule"], row["because"])
                 for row in _rows("fibres/not_names.csv"))


def fibre_written(words: str) -> Written:
    """What these words of a composition name: `elastane (for stretch)` has a function."""
    split = _PURPOSE.match(words.strip())
    name, purpose = (split[1], split[2]) if split else (words.strip(), "")
    bare = " ".join(name.casefold().split())
    if bare in _OTHERS:
        return Written(name, other=True)
    wrong = next((one for one in not_names() if one.word == bare), None)
    return Written(name, _by_spelling().get(bare), wrong, purpose)


@cache
def _by_spelling() -> Mapping[str, Fibre]:
    return {word: fibre for fibre in fibres() for word in fibre.spellings}


def _rows(name: str) -> list[dict[str, str]]:
    with resource(name).open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))
