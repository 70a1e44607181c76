"""All that the book says of one lot, for its batch record: from the cones to where it is now."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from app.lookups.cones import ConeFacts, cone_facts
from app.lookups.jars import JarNow, jar_of
from app.lookups.lot_bath import LotBath, lot_bath
from app.lookups.lot_holds import LotHold, Reach, lot_holds
from app.lookups.lot_loads import LotLoad, lot_loads
from app.lookups.lot_now import LotNow, lot_now
from app.lookups.lot_tags import LotTags, lot_tags
from app.lookups.lot_yield import Counted, Weighed, YieldAt, lot_counts, lot_weights, lot_yield
from app.lookups.origins import Origin, origins
from app.lookups.pots import Relatives, relatives
from app.lookups.recent import EntryRow, entries_that_wrote, head
from app.lookups.recipe_amounts import Amount, amounts, difference
from app.lookups.recipes import RecipeThen, recipe_then, versions
from app.lookups.studio import setting
from app.lookups.things import Found, lot_found
from app.lookups.trail import Stop, trail
from app.lookups.walks import above, below
from app.lookups.weighings import LotWeighed, weighed_with
from app.problems import NotFound
from app.records import (
    Base,
    BathReading,
    Clear,
    DeedRow,
    DyeLot,
    Hold,
    InBath,
    Tag,
    WeighLine,
    Yarn,
)
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class YarnIn:
    """A cone that the lot came from, and how sure that is."""

    cone: ConeFacts
    sure: str
    least: int
    most: int
    of: int


@dataclass(frozen=True, slots=True)
class RecipeUsed:
    """The recipe version as it was, and what the next one changed, where there is one."""

    recipe: RecipeThen
    amounts: tuple[Amount, ...]
    next_number: int | None
    next_reason: str
    changed: str


@dataclass(frozen=True, slots=True)
class BatchRecord:
    """One lot with its whole history; what is not in the book is none or empty."""

    found: Found
    colourway: str
    base: str
    at: datetime
    studio: str
    born: datetime
    born_by: str
    count: int
    mg: int
    relatives: Relatives
    stops: tuple[Stop, ...]
    yarn_in: tuple[YarnIn, ...]
    cones_known: bool
    recipe: RecipeUsed | None
    weighed: LotWeighed
    fills: tuple[JarNow, ...]
    bath: LotBath | None
    loads: tuple[LotLoad, ...]
    yields: tuple[YieldAt, ...]
    counts: tuple[Counted, ...]
    weights: tuple[Weighed, ...]
    tags: LotTags
    holds: tuple[LotHold, ...]
    now: LotNow
    marked: tuple[EntryRow, ...]
    """Entries about the lot that were taken back, corrected, or noted something."""
    people: tuple[str, ...]
    entry: int
    journal_head: str


def batch_record(connection: Connection, lot: int, at: datetime) -> BatchRecord:
    """The record of a lot as the book stands; raises NotFound."""
    row = connection.execute(
        select(DyeLot.bath, DyeLot.deed, Base.name, DeedRow.happened, DeedRow.person)
        .join(Base, Base.id == DyeLot.base).join(DeedRow, DeedRow.seq == DyeLot.deed)
        .where(DyeLot.id == lot, DyeLot.struck.is_(None))).first()
    if row is None:
        raise NotFound("This lot is not in the book.", "Scan one of its tags.")
    found = lot_found(connection, lot)
    members = {one.id: one for one in connection.execute(
        select(Yarn.id, Yarn.count.label("members"), Yarn.mg)
        .join(InBath, InBath.yarn == Yarn.id)
        .where(InBath.lot == lot, InBath.struck.is_(None)))}
    made = frozenset(below(connection, "lot", lot))
    scope = made | set(above(connection, members))
    met = origins(connection, {one.id: one.members for one in members.values()})
    bath = None if row.bath is None else lot_bath(connection, row.bath)
    weighed = weighed_with(connection, lot)
    loads = lot_loads(connection, scope)
    cones = [one for one in met if one.kind == "cone"]
    entry, journal_head = head(connection)
    marked, people = _entries(connection, lot, bath, scope, weighed)
    return BatchRecord(
        found, found.words.removesuffix(f", {row.name}"), row.name, at,
        setting(connection, "name"), row.happened, row.person,
        sum(one.members for one in members.values()), sum(one.mg for one in members.values()),
        relatives(connection, lot), trail(connection, found, at),
        _yarn_in(connection, cones), all(one.id is not None for one in cones),
        None if bath is None else _recipe(connection, bath.recipe_version), weighed,
        tuple(jar for fill in sorted(weighed.fills | {
            line.fill for line in weighed.lines if line.fill is not None})
            if (jar := jar_of(connection, fill))),
        bath, loads, lot_yield(connection, lot, scope, loads, bath), lot_counts(connection, made),
        lot_weights(connection, scope), lot_tags(connection, lot),
        lot_holds(connection, Reach(
            lot, row.bath, frozenset(scope), frozenset(one.id for one in cones if one.id),
            frozenset(load.load for load in loads), weighed.fills)),
        lot_now(connection, lot), marked, people, entry, journal_head)


def _yarn_in(connection: Connection, cones: Iterable[Origin]) -> tuple[YarnIn, ...]:
    return tuple(
        YarnIn(cone_facts(connection, one.id), one.sure, one.link.least, one.link.most,
               one.link.of) for one in cones if one.id is not None)


def _recipe(connection: Connection, version: int) -> RecipeUsed | None:
    recipe = recipe_then(connection, version)
    if recipe is None:
        return None
    later = [one for one in reversed(versions(connection, recipe.colourway))
             if one.number > recipe.number]
    following = later[0] if later else None
    return RecipeUsed(
        recipe, amounts(connection, version), following.number if following else None,
        following.reason if following else "",
        difference(connection, version, following.version) if following else "")


def _entries(
    connection: Connection, lot: int, bath: LotBath | None, scope: Collection[int],
    weighed: LotWeighed,
) -> tuple[tuple[EntryRow, ...], tuple[str, ...]]:
    """What was noted, corrected or taken back about the lot, and everyone who had it in hand.

    Rows that were struck are looked for too: an entry that was taken back is part of the record.
    """
    here = {"ids": listed(scope)}
    rows: dict[str, set[int]] = {
        DyeLot.__tablename__: {lot}, Yarn.__tablename__: set(scope),
        Tag.__tablename__: set(connection.execute(
            select(Tag.id).where(Tag.lot == lot)).scalars()),
        Hold.__tablename__: set(connection.execute(
            select(Hold.id).where((Hold.lot == lot) | among(Hold.yarn, "ids")), here).scalars()),
        Clear.__tablename__: set(connection.execute(
            select(Clear.id).where(among(Clear.yarn, "ids")), here).scalars()),
        WeighLine.__tablename__: {line.id for line in weighed.lines},
    }
    if bath is not None:
        lines = select(WeighLine.id).where(
            (WeighLine.bath == bath.bath) | (WeighLine.weighing == (bath.weighing or 0)))
        rows[WeighLine.__tablename__] |= set(connection.execute(lines).scalars())
        rows["bath"] = {bath.bath}
        rows[BathReading.__tablename__] = set(connection.execute(
            select(BathReading.id).where(BathReading.bath == bath.bath)).scalars())
    found = entries_that_wrote(connection, rows)
    return (tuple(one for one in found if one.findings or one.undone or one.reason),
            tuple(dict.fromkeys(one.person for one in found)))

