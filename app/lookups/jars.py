"""Dye jars as they are: what is in them, how much, of which makers' lots, and what they went into.
"""

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction
from typing import Any

from sqlalchemy import Connection, Row, bindparam, select

from app.calculations.codes import shown
from app.lookups.fills import shares_of
from app.records import (
    Bath,
    BottleSet,
    DeedRow,
    DyeLot,
    Fill,
    FillPart,
    FillReading,
    Jar,
    OnBoard,
    Supplier,
    SupplierLot,
    WeighLine,
)
from app.store.dialect import among, listed

NEARLY_EMPTY = Fraction(1, 10)  # of the fill; common practice, no source
NEAR_BUYING = Fraction(5, 4)  # of the weight at which to buy; common practice, no source


@dataclass(frozen=True, slots=True)
class MakersLot:
    """A maker's lot in a fill; no words on its label means not stated."""

    supplier_lot: int
    supplier: str
    said: str | None
    share: Fraction


@dataclass(frozen=True, slots=True)
class Use:
    """Milligrams that left a fill by one line (negative: tipped back), or into the next fill."""

    line: int | None
    mg: int
    at: datetime
    into: str
    """'weigh-out 12', 'bath 7', 'the next fill'."""


@dataclass(frozen=True, slots=True)
class JarCount:
    """A fill between two weighings: what it weighed before, what left it since, what it weighs."""

    fill: int
    before_mg: int
    uses: tuple[Use, ...]
    weighed_mg: int
    at: datetime

    @property
    def expected_mg(self) -> int:
        """What should be in the jar."""
        return self.before_mg - sum(use.mg for use in self.uses)

    @property
    def gap_mg(self) -> int:
        """Weighed less expected: negative where powder is missing."""
        return self.weighed_mg - self.expected_mg


@dataclass(frozen=True, slots=True)
class JarNow:
    """A jar with its newest fill."""

    jar: int
    code: str
    dye: str
    fill: int
    number: int
    filled: datetime
    filled_mg: int
    used_mg: int
    """All that its lines took out, less what they tipped back."""
    reorder_mg: int | None
    strength_permille: int | None
    """As it was last told; none is not known."""
    expires: datetime | None
    parts: tuple[MakersLot, ...]
    count: JarCount | None
    """Its last weighing, where it was ever weighed."""
    since_mg: int
    """What left it after that weighing."""

    @property
    def shown(self) -> str:
        """The number on its plate."""
        return str(int(self.code[1:-1]))

    @property
    def booked_mg(self) -> int:
        """What is left by the lines of this fill alone."""
        return self.filled_mg - self.used_mg

    @property
    def left_mg(self) -> int:
        """What is left: by the last weighing and the lines since, else by the lines."""
        return self.booked_mg if self.count is None else self.count.weighed_mg - self.since_mg

    @property
    def nearly_empty(self) -> bool:
        """Less than a tenth of the fill is left."""
        return self.left_mg < self.filled_mg * NEARLY_EMPTY

    @property
    def to_buy(self) -> bool:
        """Below the weight at which more is bought."""
        return self.reorder_mg is not None and self.left_mg < self.reorder_mg

    @property
    def soon_to_buy(self) -> bool:
        """Not below that weight yet, but no more than a quarter above it."""
        return (self.reorder_mg is not None and not self.to_buy
                and self.left_mg < self.reorder_mg * NEAR_BUYING)


_JARS = (
    select(Jar.id, Jar.code, Jar.dye, Jar.reorder_mg, Fill.id.label("fill"), Fill.number, Fill.mg,
           Fill.strength_permille, Fill.expires, DeedRow.happened)
    .join(Fill, Fill.jar == Jar.id).join(DeedRow, DeedRow.seq == Fill.deed)
    .where(Jar.struck.is_(None), Fill.struck.is_(None)).order_by(Jar.code, Fill.number)
)
_JAR = _JARS.where(Jar.id == bindparam("jar"))
_CODE = _JARS.where(Jar.code == bindparam("code"))
_FILL = _JARS.where(Fill.id == bindparam("fill"))
_LINES = (
    select(WeighLine.id, WeighLine.mg, WeighLine.weighing, WeighLine.bath, DeedRow.happened)
    .join(DeedRow, DeedRow.seq == WeighLine.taken)
    .where(WeighLine.fill == bindparam("fill"), WeighLine.struck.is_(None),
           WeighLine.mg.is_not(None))
)
_PASSED_ON = select(FillPart.mg, DeedRow.happened).join(
    DeedRow, DeedRow.seq == FillPart.deed).where(
        FillPart.from_fill == bindparam("fill"), FillPart.struck.is_(None))
_READ = (
    select(FillReading.kind, FillReading.value, DeedRow.happened)
    .join(DeedRow, DeedRow.seq == FillReading.deed)
    .where(FillReading.fill == bindparam("fill"), FillReading.struck.is_(None))
    .order_by(DeedRow.happened, FillReading.id)
)
_MAKERS = select(SupplierLot.id, SupplierLot.said, Supplier.name).join(
    Supplier, Supplier.id == SupplierLot.supplier).where(
        among(SupplierLot.id, "ids")).order_by(SupplierLot.id)


def jars_now(
    connection: Connection, dyes: Collection[str] | None = None
) -> tuple[JarNow, ...]:
    """All jars with their newest fill, or those with one of these dyes, by number."""
    wanted = None if dyes is None else {tuple(dye.casefold().split()) for dye in dyes}
    newest = {row.id: row for row in connection.execute(_JARS)}
    return tuple(_now(connection, row) for row in newest.values()
                 if wanted is None or tuple(row.dye.casefold().split()) in wanted)


def jar_now(connection: Connection, jar: int) -> JarNow | None:
    """One jar with its newest fill, or none."""
    rows = connection.execute(_JAR, {"jar": jar}).all()
    return _now(connection, rows[-1]) if rows else None


def jar_with(connection: Connection, code: str) -> JarNow | None:
    """The jar whose plate has this code, or none."""
    rows = connection.execute(_CODE, {"code": code}).all()
    return _now(connection, rows[-1]) if rows else None


def jar_of(connection: Connection, fill: int) -> JarNow | None:
    """The jar as it is or was with this fill, or none."""
    row = connection.execute(_FILL, {"fill": fill}).first()
    return None if row is None else _now(connection, row)


def uses(connection: Connection, fill: int) -> tuple[Use, ...]:
    """All that left a fill, in the order in which it happened."""
    found = [
        Use(row.id, row.mg, row.happened,
            f"weigh-out {row.weighing}" if row.bath is None else f"bath {row.bath}")
        for row in connection.execute(_LINES, {"fill": fill})
    ]
    found += [Use(None, row.mg, row.happened, "the next fill")
              for row in connection.execute(_PASSED_ON, {"fill": fill})]
    return tuple(sorted(found, key=lambda use: use.at))


def _read(connection: Connection, fill: int) -> Sequence[Row[*tuple[Any, ...]]]:
    return connection.execute(_READ, {"fill": fill}).all()


def _counts(
    fill: int, filled_mg: int, used: Iterable[Use], readings: Iterable[Row[*tuple[Any, ...]]]
) -> tuple[JarCount, ...]:
    left = list(used)
    before, found = filled_mg, []
    for read in readings:
        if read.kind == "weighed mg":
            earlier = [use for use in left if use.at <= read.happened and use.line is not None]
            left = [use for use in left if use not in earlier]
            found.append(JarCount(fill, before, tuple(earlier), read.value, read.happened))
            before = read.value
    return tuple(found)


def gaps(connection: Connection) -> tuple[JarCount, ...]:
    """The last weighing of every jar's newest fill that was ever weighed."""
    return tuple(jar.count for jar in jars_now(connection) if jar.count is not None)


def lots_by_line(connection: Connection, fill: int) -> Mapping[int, tuple[str, ...]]:
    """For each line out of a fill the codes of the lots it went into; none were dyed yet: none."""
    by_sets = (
        select(WeighLine.id, OnBoard.bath).join(BottleSet, BottleSet.weighing == WeighLine.weighing)
        .join(OnBoard, OnBoard.bottle_set == BottleSet.id)
        .where(OnBoard.bath.is_not(None), OnBoard.struck.is_(None), BottleSet.struck.is_(None)))
    by_weighing = (
        select(WeighLine.id, Bath.id).join(Bath, Bath.weighing == WeighLine.weighing)
        .where(Bath.struck.is_(None)))
    added = select(WeighLine.id, WeighLine.bath).where(WeighLine.bath.is_not(None))
    baths: dict[int, dict[int, None]] = defaultdict(dict)
    for question in (by_weighing, by_sets, added):
        for line, bath in connection.execute(
                question.where(WeighLine.fill == fill, WeighLine.struck.is_(None))):
            baths[line] |= {} if bath is None else {bath: None}
    codes: dict[int | None, list[str]] = defaultdict(list)
    for bath, code in connection.execute(
            select(DyeLot.bath, DyeLot.code).where(
                DyeLot.bath.in_({bath for some in baths.values() for bath in some}),
                DyeLot.struck.is_(None)).order_by(DyeLot.id)):
        codes[bath].append(shown(code or "no code yet"))
    return {line: tuple(code for bath in some for code in codes[bath])
            for line, some in baths.items()}


def _now(connection: Connection, row: Row[*tuple[Any, ...]]) -> JarNow:
    readings = _read(connection, row.fill)
    told = [read.value for read in readings if read.kind == "strength permille"]
    used = uses(connection, row.fill)
    counted = _counts(row.fill, row.mg, used, readings)
    last = counted[-1] if counted else None
    met = {use.line for count in counted for use in count.uses}
    since = [use for use in used if use.line is None or use.line not in met]
    return JarNow(
        jar=row.id, code=row.code, dye=row.dye, fill=row.fill, number=row.number,
        filled=row.happened, filled_mg=row.mg, used_mg=sum(use.mg for use in used),
        reorder_mg=row.reorder_mg,
        strength_permille=told[-1] if told else row.strength_permille, expires=row.expires,
        parts=_makers(connection, row.fill), count=last, since_mg=sum(use.mg for use in since))


def _makers(connection: Connection, fill: int) -> tuple[MakersLot, ...]:
    shares = {one.supplier_lot: one.share for one in shares_of(connection, fill)}
    rows = connection.execute(_MAKERS, {"ids": listed(shares)})
    return tuple(MakersLot(row.id, row.name, row.said, shares[row.id]) for row in rows)
