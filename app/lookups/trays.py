"""Trays: sets of bottles with their zones and age, boards with what lies on them, what steams."""

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from decimal import Decimal

from sqlalchemy import Connection, select

from app.calculations.zones import Fit, fit
from app.calculations.zones import Zone as Zoned
from app.lookups.discs import disc_of
from app.lookups.pots import Recipe, recipes
from app.lookups.recipes import recipe_then
from app.lookups.things import by_code
from app.records import BottleSet, DeedRow, OnBoard, Plate, Weighing, Yarn, Zone

HUNDRED_G_MG = 100_000
SPUN_TO_PAINT = Decimal("0.8")  # pick-up; common practice, no source
BOTTLES_KEEP = timedelta(hours=48)  # common practice, no source


@dataclass(frozen=True, slots=True)
class Poured:
    """A zone in its order of pouring: what goes on 100 g of skein, and of which colour it is."""

    letter: str
    name: str
    ml_per_100_g: int
    share_permille: int
    swatch: str | None

    def ml_on(self, mg: int) -> Decimal:
        """What is laid on so much yarn."""
        return Decimal(self.ml_per_100_g * mg) / HUNDRED_G_MG


@dataclass(frozen=True, slots=True)
class Bottles:
    """A set of bottles; the newest of its recipe is what is painted from."""

    id: int
    number: int
    recipe: Recipe
    zones: tuple[Poured, ...]
    filled: datetime
    refilled: str | None
    """The letter of the bottle that was filled again; none where all were new."""
    known: bool
    """Whether it was weighed for; else what is in it is not known."""

    @property
    def ml_per_100_g(self) -> int:
        """All that is poured on 100 g of skein."""
        return sum(zone.ml_per_100_g for zone in self.zones)

    @property
    def fits(self) -> Fit:
        """Whether 100 g of skein, spun as for painting, take what is poured."""
        zones = [Zoned(zone.letter, Decimal(zone.ml_per_100_g), Decimal(1))
                 for zone in self.zones if zone.ml_per_100_g]
        return fit(zones, Decimal(100), SPUN_TO_PAINT)


@dataclass(frozen=True, slots=True)
class Laid:
    """Yarn that lies on a board: its disc, how much, and the set it was painted from."""

    yarn: int
    disc: str | None
    count: int
    mg: int
    bottles: int


@dataclass(frozen=True, slots=True)
class BoardNow:
    """A board by its plate, with what lies on it and is not in the steamer."""

    id: int
    number: int
    laid: tuple[Laid, ...]

    @property
    def count(self) -> int:
        """The skeins on it."""
        return sum(one.count for one in self.laid)


@dataclass(frozen=True, slots=True)
class TraysNow:
    """Recipes with zones, the newest set of each that was filled, and the boards that wait."""

    recipes: tuple[Recipe, ...]
    bottles: tuple[Bottles, ...]
    boards: tuple[BoardNow, ...]
    weighed: Mapping[int, int]
    """{recipe version: its newest weigh-out for bottles that no set was filled from}."""


def trays_now(connection: Connection) -> TraysNow:
    """All that is at the trays."""
    zoned = set(connection.execute(
        select(Zone.recipe_version).where(Zone.struck.is_(None)).distinct()).scalars())
    written = {one.version: one for one in recipes(connection) if one.version in zoned}
    return TraysNow(tuple(written.values()), _bottles(connection),
                    _boards(connection), _weighed(connection))


def board_with(connection: Connection, code: str) -> BoardNow | None:
    """The board whose plate has this code, or none."""
    found = by_code(connection, code)
    if found is None or found.kind != "board":
        return None
    lies = next((one for one in _boards(connection) if one.id == found.id), None)
    return lies or BoardNow(found.id, int(code[1:-1]), ())


def _bottles(connection: Connection) -> tuple[Bottles, ...]:
    """The newest set of each version, the one that was filled last first."""
    newest: dict[int, Bottles] = {}
    for row in connection.execute(
            select(BottleSet.id, BottleSet.number, BottleSet.recipe_version, BottleSet.weighing,
                   DeedRow.happened, Zone.letter)
            .join(DeedRow, DeedRow.seq == BottleSet.deed)
            .outerjoin(Zone, Zone.id == BottleSet.refilled)
            .where(BottleSet.struck.is_(None)).order_by(BottleSet.id)):
        then = recipe_then(connection, row.recipe_version)
        if then is None:
            continue
        order = list(dict.fromkeys(one.zone for one in then.components if one.zone))
        zones = sorted(then.zones, key=lambda zone: (
            order.index(zone.letter) if zone.letter in order else len(order), zone.letter))
        newest[row.recipe_version] = Bottles(
            row.id, row.number,
            Recipe(then.version, then.number, then.name, then.swatch, then.reason),
            tuple(Poured(z.letter, z.name, z.ml_per_100_g, z.share_permille, z.swatch)
                  for z in zones), row.happened, row.letter, row.weighing is not None)
    return tuple(sorted(newest.values(), key=lambda one: -one.id))


def _boards(connection: Connection) -> tuple[BoardNow, ...]:
    laid: dict[tuple[int, str], list[Laid]] = defaultdict(list)
    for row in connection.execute(
            select(OnBoard.yarn, OnBoard.bottle_set, Yarn.count.label("members"), Yarn.mg, Plate.id,
                   Plate.code)
            .join(Yarn, Yarn.id == OnBoard.yarn).join(Plate, Plate.id == OnBoard.board)
            .where(OnBoard.bath.is_(None), OnBoard.struck.is_(None), Yarn.closed.is_(None))
            .order_by(Plate.code, OnBoard.id)):
        laid[row.id, row.code].append(Laid(row.yarn, disc_of(connection, row.yarn), row.members,
                                           row.mg, row.bottle_set))
    return tuple(BoardNow(plate, int(code[1:-1]), tuple(some))
                 for (plate, code), some in laid.items())


def _weighed(connection: Connection) -> Mapping[int, int]:
    used = select(BottleSet.weighing).where(BottleSet.weighing.is_not(None),
                                            BottleSet.struck.is_(None))
    rows = connection.execute(
        select(Weighing.recipe_version, Weighing.id)
        .where(Weighing.purpose == "bottles", Weighing.struck.is_(None), Weighing.id.not_in(used))
        .order_by(Weighing.id))
    return {row.recipe_version: row.id for row in rows if row.recipe_version is not None}
