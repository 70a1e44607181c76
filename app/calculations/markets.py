"""The markets a tag is printed for: their rules, each with its clause and where it was read.

Not legal advice: local law decides, and what was not read in a rule's own text says so.
"""

import tomllib
from dataclasses import dataclass, replace
from decimal import Decimal
from functools import cache
from typing import Any

from app.paths import resource
from app.problems import NotFound

MARKETS = ("EU", "UK", "US", "Canada")


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule of a market: its clause, what it says, and where that was read."""

    key: str
    clause: str
    says: str
    verified: str

    @property
    def cited(self) -> str:
        """'Art. 9(1)', 'Art. 20, from memory', 'common practice, no source'."""
        if not self.clause:
            return self.verified
        return f"{self.clause}, from memory" if "from memory" in self.verified else self.clause


@dataclass(frozen=True, slots=True)
class Market:
    """What a market asks of a tag. `names_from` and `tolerance` are in percent of fibre mass."""

    key: str
    title: str
    languages: tuple[str, ...]
    percent: str
    """How a percent is written after its figure."""
    allowances: str
    """The table of agreed allowances that holds there; none is known where it is empty."""
    tolerance: Decimal
    ounces_by_law: bool
    origin_by_law: bool
    rules: tuple[Rule, ...]
    names_from: Decimal = Decimal(0)
    in_all_languages: bool = False

    def rule(self, key: str) -> Rule:
        """The rule of that name; where a market has one rule for all names, that one."""
        found = self.has(key) or self.has("names")
        if found is None:
            raise KeyError(f"{self.key} has no rule {key}")
        return found

    def has(self, key: str) -> Rule | None:
        """The rule of that name, if this market has it."""
        return next((rule for rule in self.rules if rule.key == key), None)


@dataclass(frozen=True, slots=True)
class Said:
    """A refusal or a warning about a tag's words, with the rule it comes from."""

    rule: Rule
    what: str
    next_step: str = ""

    @property
    def words(self) -> str:
        """The sentence with its clause: 'The base says “pure wool” of a blend (Art. 7(1)).'"""
        return f"{self.what.removesuffix('.')} ({self.rule.cited})."

    @property
    def told(self) -> str:
        """The sentence and what to do about it."""
        return f"{self.words} {self.next_step}".strip()


@cache
def market(key: str) -> Market:
    """One market; raises NotFound."""
    if key not in MARKETS:
        raise NotFound(f"There are no rules for the market “{key}” here.",
                       f"Choose one of {', '.join(MARKETS)}, or none.")
    given = _shipped(key.lower())
    return Market(
        key=key, title=given["title"], languages=tuple(given["languages"]),
        percent=given["percent"], allowances=given["allowances"],
        tolerance=Decimal(given["tolerance"]), ounces_by_law=given["ounces_by_law"],
        origin_by_law=given["origin_by_law"], names_from=Decimal(given.get("names_from", 0)),
        in_all_languages=given.get("in_all_languages", False),
        rules=(*_rules(given), *_taken_over(given), *_rules(_shipped("everywhere"))),
    )


@cache
def local_law_decides() -> str:
    """The sentence that goes with every answer about a market."""
    return str(_shipped("everywhere")["law"])


def _taken_over(given: dict[str, Any]) -> tuple[Rule, ...]:
    """The rules of another market that this one has kept as its own."""
    if "like" not in given:
        return ()
    own = {rule.key for rule in _rules(given)}
    return tuple(replace(rule, clause=f"retained {rule.clause}")
                 for rule in _rules(_shipped(given["like"].lower())) if rule.key not in own)


def _rules(given: dict[str, Any]) -> tuple[Rule, ...]:
    return tuple(Rule(one["key"], one["clause"], one["says"], one["verified"])
                 for one in given["rule"])


@cache
def _shipped(name: str) -> dict[str, Any]:
    return tomllib.loads(resource(f"markets/{name}.toml").read_text(encoding="utf-8"))
