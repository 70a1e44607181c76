"""The words on a tag, and which of them give way where room is short."""

from collections.abc import Iterator
from dataclasses import dataclass, fields, replace
from typing import Any

from app.documents.typesetting import named, strangers
from app.problems import Refused

_GIVES_WAY = {  # in this order: what stands first is given up first
    "knit": "needles and gauge are left out",
    "ounces": "ounces and yards are left out",
    "differ": "the line that lots differ is left out",
    "origin": "where it was spun and dyed is left out",
    "base": "the base's name takes two lines",
}
_MAY_BREAK = ("knit", "care", "origin")
_NEEDED = {
    "studio": "the maker",
    "address": "the maker's address",
    "colourway": "the colourway",
    "base": "the base",
    "fibre": "the fibre content",
    "net": "the net contents",
    "lot": "the dye lot",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class TagWords:
    """What a tag says, as it is printed: the words of the base version at the time.

    Nothing else goes on a tag: no recipe, cone, customer or member of staff. `ounces_by_law`
    says that the market asks for ounces and yards, so that they never give way; `origin_by_law` the
    same of the origin, also where no market was asked. A `|` in knit, care or origin is where the
    sentence breaks best.
    """

    studio: str
    address: str
    colourway: str
    base: str
    fibre: str
    net: str
    lot: str
    ounces: str = ""
    knit: str = ""
    care: str = ""
    origin: str = ""
    differ: str = ""
    ounces_by_law: bool = False
    origin_by_law: bool = True


@dataclass(frozen=True, slots=True)
class Shortened:
    """A tag's words after some have given way, and what gave way, in words."""

    words: TagWords
    left_out: tuple[str, ...]


def check_words(words: TagWords) -> None:
    """Refuses a tag that lacks what every tag must say."""
    lacking = [name for field, name in _NEEDED.items() if not getattr(words, field).strip()]
    if lacking:
        raise Refused(
            f"The tag lacks {', '.join(lacking)}; nothing was printed.",
            "Write it into the base or the studio's own words, then print again.",
        )
    for field in fields(words):
        if isinstance(said := getattr(words, field.name), str):
            _check_signs(field.name, said)


def _check_signs(field: str, said: str) -> None:
    """What cannot be set is refused before anything gives way, so that it is never left out."""
    if unknown := strangers(said):
        raise Refused(
            f"“{named(said)}” has signs that no bundled type has: "
            f"{' '.join(map(named, unknown))}; nothing was printed.",
            "Write these words without them.",
        )
    if "|" in said and field not in _MAY_BREAK:
        raise Refused(
            f"“{said}” holds the sign |, which ends a line on a tag; nothing was printed.",
            "Write these words without it.",
        )


def ways_to_shorten(words: TagWords) -> Iterator[Shortened]:
    """The words as they are, then with less and less, so that the least is given up."""
    fields = [field for field in _GIVES_WAY if _can_give_way(words, field)]
    for choice in range(2 ** len(fields)):
        given = [field for n, field in enumerate(fields) if choice >> n & 1]
        changes: dict[str, Any] = {
            field: _two_lines(words.base) if field == "base" else "" for field in given
        }
        yield Shortened(replace(words, **changes), tuple(_GIVES_WAY[field] for field in given))


def _can_give_way(words: TagWords, field: str) -> bool:
    if (field == "ounces" and words.ounces_by_law) or (field == "origin" and words.origin_by_law):
        return False
    if field == "base":
        return " " in words.base
    return bool(getattr(words, field))


def _two_lines(name: str) -> str:
    """The name with a break at the space nearest its middle."""
    spaces = [place for place, letter in enumerate(name) if letter == " "]
    at = min(spaces, key=lambda place: abs(place - len(name) / 2))
    return f"{name[:at]}|{name[at + 1 :]}"
