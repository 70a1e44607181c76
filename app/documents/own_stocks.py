"""The studio's own stocks, and its layouts for all stocks, as they are kept in its settings."""

import json
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from typing import Any, get_args

from app.documents.stocks import LayoutName, Stock, stocks
from app.documents.tag_choices import PLAIN, Choices
from app.problems import NotFound, Refused

LAYOUT_NAMES: tuple[LayoutName, ...] = get_args(LayoutName)
_LONGEST_TITLE = 60
_PAIRS = ("page", "tag", "first", "step")


@dataclass(frozen=True, slots=True)
class Layout:
    """How the tags of one stock are laid out."""

    layout: LayoutName
    choices: Choices = PLAIN


@dataclass(frozen=True, slots=True)
class StudioStocks:
    """Every stock as the studio lays it out: those in use, and those it has put away.

    What was put away is still known: sheets that were printed on it stay what they are.
    """

    in_use: tuple[Stock, ...]
    away: tuple[Stock, ...]

    @property
    def every(self) -> tuple[Stock, ...]:
        """All that are known."""
        return self.in_use + self.away

    def named(self, name: str) -> Stock:
        """The stock of this name; raises NotFound."""
        for one in self.every:
            if one.name == name:
                return one
        raise NotFound(f"No stock is called {name}.", "Choose one of the list, or describe it.")


def studio_stocks(own: str, layouts: str, away: str) -> StudioStocks:
    """Ours and the studio's own, from its three settings."""
    laid_out, hidden = told_layouts(layouts), set(json.loads(away))
    every = [_laid_out(one, laid_out) for one in (*stocks(), *told_stocks(own))]
    return StudioStocks(tuple(one for one in every if one.name not in hidden),
                        tuple(one for one in every if one.name in hidden))


def told_stocks(told: str) -> tuple[Stock, ...]:
    """The studio's own stocks as they were written."""
    return tuple(_stock(one) for one in json.loads(told))


def written_stocks(own: Sequence[Stock]) -> str:
    """The studio's own stocks as they are written; their choices stand with the layouts."""
    return json.dumps([{key: value for key, value in asdict(one).items() if key != "choices"}
                       for one in own], ensure_ascii=False)


def told_layouts(told: str) -> dict[str, Layout]:
    """{name of the stock: how its tags are laid out} where the studio chose."""
    return {name: Layout(one["layout"], Choices(**{
        **one["choices"], "leaves_out": tuple(one["choices"]["leaves_out"])}))
        for name, one in json.loads(told).items()}


def written_layouts(layouts: Mapping[str, Layout]) -> str:
    """The layouts as they are written."""
    return json.dumps({name: asdict(one) for name, one in layouts.items()})


def next_name(own: Sequence[Stock]) -> str:
    """A name that no stock had before: those described stay known for ever."""
    return f"own-{len(own) + 1}"


def check_title(title: str, known: Sequence[Stock]) -> None:
    """Refuses a stock without a title, with one too long for a list, or with another's."""
    if not title.strip():
        raise Refused("The stock has no name; nothing was kept.", "Say what it is called.")
    if len(title.strip()) > _LONGEST_TITLE:
        raise Refused(f"A name of {len(title.strip())} letters fits no list; nothing was kept.",
                      f"Call it something of {_LONGEST_TITLE} letters at most.")
    if any(one.title.casefold() == title.strip().casefold() for one in known):
        raise Refused(f"A stock is called {title.strip()} already; nothing was kept.",
                      "Give this one another name.")


def _stock(told: dict[str, Any]) -> Stock:
    return Stock(**told | {key: tuple(map(float, told[key])) for key in _PAIRS})


def _laid_out(one: Stock, layouts: Mapping[str, Layout]) -> Stock:
    chosen = layouts.get(one.name)
    if chosen is None:
        return one
    return replace(one, layout=chosen.layout, choices=chosen.choices)
