"""The shipped words of caution, by step and substance, each with its source.

They remind; the makers' safety data sheets and the local rules come first, as `first_of_all` says.
"""

import tomllib
from collections.abc import Collection
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from typing import Any

from app.paths import resource


class Step(StrEnum):
    """Where in the work a caution is shown."""

    WEIGH = "weigh"
    STOCK = "stock"
    REFILL = "refill"
    POT = "pot"
    PAINT = "paint"
    STEAM = "steam"
    RINSE = "rinse"
    DRAIN = "drain"


@dataclass(frozen=True, slots=True)
class Caution:
    """One reminder; without substances it is for everyone at its steps."""

    key: str
    steps: frozenset[Step]
    substances: frozenset[str]
    words: str
    source: str


@cache
def all_cautions() -> tuple[Caution, ...]:
    """Every caution that is shipped, in the order to show them."""
    return tuple(
        Caution(
            key=one["key"],
            steps=frozenset(map(Step, one["steps"])),
            substances=frozenset(one.get("substances", ())),
            words=one["words"],
            source=one["source"],
        )
        for one in _shipped()["caution"]
    )


def first_of_all() -> str:
    """The sentence that stands before all others: whose words count more."""
    return str(_shipped()["first"])


def cautions_for(step: Step, substances: Collection[str] = ()) -> tuple[Caution, ...]:
    """What to say at a step where these substances are used.

    They are named as in the file: `acid dye`, `reactive dye`, `acid` and so on.
    """
    return tuple(
        one
        for one in all_cautions()
        if step in one.steps and (not one.substances or one.substances.intersection(substances))
    )


@cache
def _shipped() -> dict[str, Any]:
    return tomllib.loads(resource("cautions/cautions.toml").read_text(encoding="utf-8"))
