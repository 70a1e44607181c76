"""What the words of an order name: a colourway, a base and a put-up of the studio, or none."""

import unicodedata
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache

from sqlalchemy import Connection, select

from app.calculations.listing import listing
from app.records import Base, Colourway, PutUp


@dataclass(frozen=True, slots=True)
class StudioNames:
    """{name: number} of colourways and bases, and the names of all put-ups."""

    colourways: Mapping[str, int]
    bases: Mapping[str, int]
    put_ups: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ReadAs:
    """What was read; `doubt` says in a sentence why the words are kept as they are."""

    colourway: int | None = None
    base: int | None = None
    put_up: str | None = None
    doubt: str = ""


def studio_names(connection: Connection) -> StudioNames:
    """All that the words of an order may name."""
    colourways = connection.execute(
        select(Colourway.name, Colourway.id).where(Colourway.struck.is_(None))).all()
    bases = connection.execute(select(Base.name, Base.id).where(Base.struck.is_(None))).all()
    put_ups = connection.execute(
        select(PutUp.name).distinct().where(PutUp.struck.is_(None)).order_by(PutUp.name))
    return StudioNames({row.name: row.id for row in colourways},
                       {row.name: row.id for row in bases}, tuple(put_ups.scalars()))


def read_words(words: str, names: StudioNames) -> ReadAs:
    """A name is read where exactly one of its kind stands in the words; nothing is guessed."""
    colourways, bases = _in(words, names.colourways), _in(words, names.bases)
    put_ups = [name for name in names.put_ups if _in(words, (name, f"{name}s"))]
    return ReadAs(
        names.colourways[colourways[0]] if len(colourways) == 1 else None,
        names.bases[bases[0]] if len(bases) == 1 else None,
        put_ups[0] if len(put_ups) == 1 else None,
        _doubt(words, colourways, bases))


def _doubt(words: str, colourways: list[str], bases: list[str]) -> str:
    for found, kind in ((colourways, "colourways"), (bases, "bases")):
        if len(found) > 1:
            return f"“{words}” names {len(found)} {kind}: {listing(found)}."
    return "" if colourways else f"“{words}” names no colourway of the studio."


def _in(words: str, names: Iterable[str]) -> list[str]:
    """The names that stand in the words; one within another's only where it stands alone too."""
    left, found = f" {_plain(words)} ", []
    for name in sorted(names, key=lambda name: (-len(_plain(name)), name)):
        plain = _plain(name)
        if plain and f" {plain} " in left:
            found.append(name)
            left = left.replace(f" {plain} ", " | ")
    return found


@lru_cache(maxsize=4_096)
def _plain(words: str) -> str:
    """Without case, accents and signs: “Sluice Keeper’s Glove” is “sluice keepers glove”."""
    apart = unicodedata.normalize("NFKD", words.casefold())
    kept = (c if c.isalnum() else " " for c in apart
            if not unicodedata.combining(c) and c not in "'’‘`´")
    return " ".join("".join(kept).split())
