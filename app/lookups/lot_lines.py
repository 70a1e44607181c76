"""Lots as lines of a list: what each is, when it was dyed, and how many are left to sell."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from datetime import datetime

from sqlalchemy import ColumnElement, Connection, and_, or_, select

from app.calculations.codes import bare_characters, shown
from app.lookups.left_to_sell import Left, left_of
from app.lookups.pots import relatives
from app.records import Base, Bath, Colourway, DeedRow, DyeLot
from app.store.dialect import among, listed

LOOKED_AT = 60
"""Newest lots of a name that are looked at: those with some left may be old."""


@dataclass(frozen=True, slots=True)
class LotLine:
    """One lot; no day of dyeing where it is from before the book."""

    lot: int
    code: str | None
    colourway: str
    base: str
    swatch: str | None
    dyed: datetime | None
    left: Left = field(default=Left(()))

    @property
    def shown(self) -> str:
        """The code as people read it."""
        return shown(self.code) if self.code else "no code yet"


_LINES = (
    select(DyeLot.id, DyeLot.code, Colourway.name, Base.name.label("base"), Colourway.swatch,
           DeedRow.happened)
    .join(Colourway, Colourway.id == DyeLot.colourway).join(Base, Base.id == DyeLot.base)
    .outerjoin(Bath, Bath.id == DyeLot.bath).outerjoin(DeedRow, DeedRow.seq == Bath.deed)
    .where(among(DyeLot.id, "ids"), DyeLot.struck.is_(None))
)


def lot_lines(connection: Connection, lots: Iterable[int]) -> tuple[LotLine, ...]:
    """These lots, those with something left first, the newest of them first."""
    rows = connection.execute(_LINES, {"ids": listed(lots)}).all()
    left = left_of(connection, [row.id for row in rows])
    lines = [LotLine(row.id, row.code, row.name, row.base, row.swatch, row.happened, left[row.id])
             for row in rows]
    return tuple(sorted(lines, key=lambda one: (one.left.count == 0, -one.lot)))


def lot_line(connection: Connection, lot: int) -> LotLine:
    """One lot, without what is left of it."""
    row = connection.execute(_LINES, {"ids": listed([lot])}).one()
    return LotLine(row.id, row.code, row.name, row.base, row.swatch, row.happened)


def lots_named(
    connection: Connection, words: str, limit: int = LOOKED_AT, before: str = ""
) -> tuple[int, ...]:
    """The newest lots in whose colourway and base all these words stand; none for no words.

    `before` is a year and week as codes begin with: only lots with a code below it.
    """
    asked = words.casefold().split()
    named = _named(connection, asked) if asked else None
    if named is None:
        return ()
    question = select(DyeLot.id).where(named, DyeLot.struck.is_(None))
    if before:
        question = question.where(or_(DyeLot.code < before, DyeLot.bath.is_(None)))
    return tuple(connection.execute(question.order_by(DyeLot.id.desc()).limit(limit)).scalars())


@dataclass(frozen=True, slots=True)
class NextLook:
    """A lot of the same base, dyed on the same day by the same recipe version in another pot."""

    line: LotLine
    fills_known: bool
    """Whether it is known that it was dyed of the same fills."""


def sisters_left(connection: Connection, lot: int) -> tuple[NextLook, ...]:
    """Sister lots of the same base with some left, and then those that may be sisters.

    Nothing is said of their shade: they are where one looks next.
    """
    near = relatives(connection, lot)
    known = {bare_characters(code) for code in near.sisters}
    codes = [*known, *map(bare_characters, near.fills_not_known)]
    base = select(DyeLot.base).where(DyeLot.id == lot).scalar_subquery()
    ids = connection.execute(
        select(DyeLot.id).where(DyeLot.code.in_(codes), DyeLot.base == base)).scalars().all()
    looks = [NextLook(one, one.code in known)
             for one in lot_lines(connection, ids) if one.left.count]
    return tuple(sorted(looks, key=lambda look: not look.fills_known))


def _named(connection: Connection, asked: Sequence[str]) -> ColumnElement[bool] | None:
    """Lots of colourways with some of the words, on bases with the others."""
    bases = connection.execute(select(Base.id, Base.name)).all()
    by_rest: dict[tuple[str, ...], list[int]] = {}
    for colourway, name in connection.execute(select(Colourway.id, Colourway.name)).all():
        rest = tuple(word for word in asked if word not in name.casefold())
        by_rest.setdefault(rest, []).append(colourway)
    either: list[ColumnElement[bool]] = []
    for rest, colourways in by_rest.items():
        of_colourway = DyeLot.colourway.in_(colourways)
        fit = [base for base, name in bases if all(word in name.casefold() for word in rest)]
        if not rest:
            either.append(of_colourway)
        elif fit:
            either.append(and_(of_colourway, DyeLot.base.in_(fit)))
    return or_(*either) if either else None


def base_names(connection: Connection) -> tuple[tuple[int, str], ...]:
    """Every base with its name, by name."""
    rows = connection.execute(
        select(Base.id, Base.name).where(Base.struck.is_(None)).order_by(Base.name))
    return tuple((row.id, row.name) for row in rows)
