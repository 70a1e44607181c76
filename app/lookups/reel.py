"""What the winder sees of a cone on the reel and of a disc: ties, what is left, what is wrong."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from sqlalchemy import Connection, select

from app.calculations.codes import shown
from app.calculations.units import metres
from app.calculations.winding import Yield, winding_yield
from app.lookups.bundles import BundleFacts, bundle_facts
from app.lookups.cones import ConeFacts, cone_facts
from app.lookups.holds import HoldFacts, hold_facts
from app.lookups.studio import tie_colours
from app.lookups.things import by_code
from app.lookups.ties import open_ties, tie_of
from app.lookups.trail import Stop, trail
from app.records import Cone, Draw, Hold, Plate, PlateStay, PutUp, Yarn


@dataclass(frozen=True, slots=True)
class AsWound:
    """A form the base is sold in, as the reel makes it."""

    name: str
    turns: int
    reel_mm: int

    @property
    def mm(self) -> int:
        """Length on the reel."""
        return self.turns * self.reel_mm


@dataclass(frozen=True, slots=True)
class OnReel:
    """A cone with the tie colour that is handed out for it."""

    facts: ConeFacts
    put_ups: tuple[AsWound, ...]
    tie: str
    tie_worn_by: str
    """Another open cone of the base that wears these ties already; '' where none does."""
    holds: tuple[HoldFacts, ...]
    stops: tuple[Stop, ...]

    def form(self, put_up: str) -> AsWound | None:
        """One form of its base, or none."""
        return next((one for one in self.put_ups if one.name == put_up), None)

    def gives(self, left_mm: int) -> Yield:
        """The skeins in so much of it, the minis in the rest, and the tail; ends are lost already.

        Where the base is not described in a form, there are none of it.
        """
        left = metres(max(0, left_mm))
        skein, mini = (metres(form.mm) if form else left + 1
                       for form in (self.form("skein"), self.form("mini")))
        return winding_yield(left, skein, mini, Decimal(0))


def on_reel(
    connection: Connection, code: str, at: datetime, ties_on_reel: Collection[str] = ()
) -> OnReel | None:
    """A cone that comes on the reel beside others, whose ties it must not share; or none."""
    found = by_code(connection, code)
    if found is None or found.kind != "cone":
        return None
    facts = cone_facts(connection, found.id)
    tie = _tie_beside(connection, facts, ties_on_reel)
    worn_by = open_ties(connection, facts.base, facts.id).get(tie)
    holds = connection.execute(
        select(Hold.id).where(Hold.cone == facts.id, Hold.lifted.is_(None), Hold.struck.is_(None))
    ).scalars().all()
    return OnReel(
        facts, put_ups(connection, facts.base_version), tie,
        _code(connection, worn_by) if worn_by else "", hold_facts(connection, holds),
        trail(connection, found, at),
    )


def cones_on_reel(
    connection: Connection, codes: Collection[str], at: datetime
) -> tuple[OnReel, ...]:
    """Cones that are on the reel already, as the book knows them now."""
    found = (on_reel(connection, code, at) for code in codes)
    return tuple(cone for cone in found if cone is not None)


def put_ups(connection: Connection, base_version: int) -> tuple[AsWound, ...]:
    """The forms a base is wound in, the longest first."""
    found = (AsWound(name, turns, reel_mm) for name, turns, reel_mm in connection.execute(
        select(PutUp.name, PutUp.turns, PutUp.reel_mm)
        .where(PutUp.base_version == base_version, PutUp.struck.is_(None))))
    return tuple(sorted(found, key=lambda one: -one.mm))


@dataclass(frozen=True, slots=True)
class DiscNow:
    """A disc and the live bundle it hangs on, if it does."""

    id: int
    number: str
    bundle: BundleFacts | None


def disc_now(connection: Connection, code: str, at: datetime) -> DiscNow | None:
    """The disc with this code, or none."""
    found = by_code(connection, code)
    if found is None or found.kind != "disc":
        return None
    return DiscNow(found.id, code[1:-1], bundle_facts(connection, found.id, at))


def tied_on_since(
    connection: Connection, since: datetime, at: datetime
) -> tuple[BundleFacts, ...]:
    """Bundles that were given the disc they still wear since this moment, the newest first."""
    discs = connection.execute(
        select(Plate.id).join(PlateStay, PlateStay.plate == Plate.id)
        .where(PlateStay.until.is_(None), PlateStay.struck.is_(None), PlateStay.since >= since,
               PlateStay.since <= at)
        .order_by(PlateStay.since.desc(), PlateStay.id.desc())
    ).scalars().all()
    return tuple(_live(connection, discs, at))


def _live(
    connection: Connection, discs: Collection[int], at: datetime
) -> Iterator[BundleFacts]:
    for disc in discs:
        found = bundle_facts(connection, disc, at)
        if found is not None:
            yield found


def _tie_beside(connection: Connection, facts: ConeFacts, on_the_reel: Collection[str]) -> str:
    """A cone keeps the colour it wears; a fresh one takes the next that is not on the reel."""
    tie = tie_of(connection, facts.id, facts.base)
    if tie not in on_the_reel or _wears(connection, facts.id, tie):
        return tie
    colours = tie_colours(connection)
    start = colours.index(tie)
    order = [colours[(start + n) % len(colours)] for n in range(1, len(colours))]
    free = [colour for colour in order if colour not in on_the_reel]
    worn = open_ties(connection, facts.base, facts.id)
    return next((colour for colour in free if colour not in worn), next(iter(free), tie))


def _wears(connection: Connection, cone: int, tie: str) -> bool:
    return connection.execute(
        select(Draw.id).join(Yarn, Yarn.id == Draw.yarn)
        .where(Draw.cone == cone, Draw.struck.is_(None), Yarn.tie == tie).limit(1)
    ).first() is not None


def _code(connection: Connection, cone: int) -> str:
    return shown(connection.execute(select(Cone.code).where(Cone.id == cone)).scalar_one())
