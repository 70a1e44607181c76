"""The composition on a tag: `80 % wool, 20 % polyamide`, read from a person and printed for one."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal

from app.problems import BadInput

_ONE_FIBRE = re.compile(r"(\d+(?:[.,]\d+)?)\s*%\s*([^\d\W][^\d%,;/+]*?)\s*(?:[,;/+]\s*|$)")


@dataclass(frozen=True, slots=True)
class FibreShare:
    """One fibre of a yarn and its percent of the mass."""

    fibre: str
    percent: Decimal


def read_composition(text: str) -> tuple[FibreShare, ...]:
    """The fibres a text names, the greatest first; raises BadInput unless they make 100 %."""
    shares, place = [], 0
    written = text.strip()
    while place < len(written):
        found = _ONE_FIBRE.match(written, place)
        if found is None:
            raise BadInput(
                f"The composition cannot be read from “{written[place:]}” on.",
                "Write each fibre with its percent, like 80 % wool, 20 % polyamide.",
            )
        shares.append(FibreShare(found[2], Decimal(found[1].replace(",", "."))))
        place = found.end()
    _check(shares)
    return tuple(sorted(shares, key=lambda share: -share.percent))


def composition_text(shares: Iterable[FibreShare]) -> str:
    """The composition as printed, the greatest share first."""
    greatest_first = sorted(shares, key=lambda share: -share.percent)
    return ", ".join(f"{_plain(share.percent)} % {share.fibre}" for share in greatest_first)


def _plain(percent: Decimal) -> str:
    written = f"{percent:f}"
    return written.rstrip("0").rstrip(".") if "." in written else written


def _check(shares: list[FibreShare]) -> None:
    names = [share.fibre.casefold() for share in shares]
    total = sum(share.percent for share in shares)
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice:
        raise BadInput(f"The composition names {twice} twice.", "Add the two shares together.")
    if any(share.percent == 0 for share in shares):
        raise BadInput("A fibre of 0 % is no part of a yarn.", "Leave it out.")
    if total != 100:
        raise BadInput(
            f"The fibres make {_plain(Decimal(total))} %, not 100 %.", "Put the shares right."
        )
