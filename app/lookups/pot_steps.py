"""How far each bath is: the step of its recipe it is at, until when, and what was read of it."""

from collections import defaultdict
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from sqlalchemy import Connection, select

from app.calculations.pot_words import CLEARNESS
from app.lookups.pots import PotNow, pots_now
from app.lookups.recipes import RecipeThen, StepThen, recipe_then
from app.records import Bath, BathReading, DeedRow, Load, Plate
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class PotReading:
    """What was read of a bath, in words, and when."""

    words: str
    at: datetime


@dataclass(frozen=True, slots=True)
class StepsNow:
    """The steps of a recipe in one bath; the first that was not done is the one it is at."""

    steps: tuple[StepThen, ...]
    done: frozenset[int]
    began: datetime
    """When the step it is at began: the one before was done, or the bath was begun."""
    read: tuple[PotReading, ...]
    """The newest reading of each kind."""

    @property
    def now(self) -> StepThen | None:
        """The step it is at; none when all are done or none is written."""
        return next((step for step in self.steps if step.id not in self.done), None)

    @property
    def next(self) -> StepThen | None:
        """The step after it."""
        left = [step for step in self.steps if step.id not in self.done]
        return left[1] if len(left) > 1 else None

    @property
    def due(self) -> datetime | None:
        """When the step it is at is over; none where its recipe does not say how long."""
        step = self.now
        return None if step is None or step.minutes is None else (
            self.began + timedelta(minutes=step.minutes))

    def minutes_left(self, at: datetime) -> int | None:
        """Whole minutes to the next step, below 0 when it is over; none where not known."""
        return None if self.due is None else -((at - self.due) // timedelta(minutes=1))


@dataclass(frozen=True, slots=True)
class PotAtWork:
    """A bath that was not lifted, with its steps; `steamer` is where a painted lot is."""

    pot: PotNow
    recipe: RecipeThen | None
    steps: StepsNow
    steamer: int | None

    @property
    def steams(self) -> bool:
        """Painted, and in the steamer: its minutes are counted upwards."""
        return self.steamer is not None


_VERSIONS = select(Bath.id, Bath.recipe_version).where(among(Bath.id, "ids"))
_READ = (
    select(BathReading.bath, BathReading.kind, BathReading.value, DeedRow.happened)
    .join(DeedRow, DeedRow.seq == BathReading.deed)
    .where(among(BathReading.bath, "ids"), BathReading.struck.is_(None))
    .order_by(DeedRow.happened, BathReading.id)
)
_STEAMED = (
    select(Bath.id, Plate.code).join(Load, Load.deed == Bath.deed)
    .outerjoin(Plate, Plate.id == Load.plate)
    .where(among(Bath.id, "ids"), Bath.plate.is_(None), Load.step == "steamer",
           Load.struck.is_(None))
)


def pots_at_work(connection: Connection) -> tuple[PotAtWork, ...]:
    """All baths that were not lifted, the oldest first."""
    pots = pots_now(connection)
    versions = dict(connection.execute(
        _VERSIONS, {"ids": listed([pot.bath for pot in pots])}).all())
    recipes = {bath: recipe_then(connection, version) for bath, version in versions.items()}
    steps = _steps(connection, pots, recipes)
    steamed = dict(connection.execute(
        _STEAMED, {"ids": listed([pot.bath for pot in pots])}).all())
    return tuple(
        PotAtWork(pot, recipes[pot.bath], steps[pot.bath], (
            int(steamed[pot.bath][1:-1]) if steamed[pot.bath] else 0)
            if pot.bath in steamed else None)
        for pot in pots)


def _steps(
    connection: Connection, pots: Sequence[PotNow], recipes: Mapping[int, RecipeThen | None]
) -> Mapping[int, StepsNow]:
    ids = {"ids": listed([pot.bath for pot in pots])}
    read: dict[int, list[tuple[str, int, datetime]]] = defaultdict(list)
    for row in connection.execute(_READ, ids):
        read[row.bath].append((row.kind, row.value, row.happened))
    found = {}
    for pot in pots:
        recipe = recipes[pot.bath]
        readings = read[pot.bath]
        done = {value: at for kind, value, at in readings if kind == "step done"}
        found[pot.bath] = StepsNow(
            recipe.steps if recipe else (), frozenset(done),
            max(done.values(), default=pot.since), _newest(readings))
    return found


def _newest(readings: Collection[tuple[str, int, datetime]]) -> tuple[PotReading, ...]:
    newest = {kind: (value, at) for kind, value, at in readings if kind != "step done"}
    return tuple(PotReading(_words(kind, value), at) for kind, (value, at) in newest.items())


def _words(kind: str, value: int) -> str:
    if kind == "pH centi":
        return f"pH {value / 100:g}"
    if kind == "decidegrees":
        return f"{value / 10:g} °C"
    if kind == "water ml":
        return f"{value / 1000:g} L of water added"
    return CLEARNESS[value]
