"""Every balance of the book that does not add up: cones, jars, cords, tags and stock."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from decimal import Decimal

from sqlalchemy import Connection, func, select

from app.calculations.codes import shown
from app.calculations.cone_balance import ConeBalance, Drawn
from app.calculations.cone_balance import Gap as Looks
from app.calculations.gaps import CONE, CORD, JAR, STOCK, TAG, Gap, jar_gap_counts, ranked
from app.calculations.moments import day_words
from app.calculations.units import grams
from app.lookups.certainty import nearest
from app.lookups.cones import ConeFacts, cone_facts
from app.lookups.jar_gaps import jars_that_were_swapped
from app.lookups.jars import jars_now
from app.lookups.present import TOOK
from app.lookups.prices import prices_now
from app.lookups.shelves import shelf_words
from app.lookups.skeins import last_marks
from app.lookups.stocktakes import sold_yet_here
from app.lookups.thread import thread
from app.lookups.untagged import finds_waiting
from app.records import Base, DeedRow, DyeLot, PutUp, Tag, TagOn, Waste, Whereabouts, Yarn
from app.store.dialect import among, listed

LEFT_LYING = timedelta(days=7)
"""Skeins of a pile are tagged together: one left so long is missing; common practice, no source."""
NEAREST = 5  # lots named, those first whose use is nearest to the gap
WITHIN = timedelta(days=400)
"""Older gaps belong to a year that is closed."""

_ENDED = (
    select(Waste.cone).join(DeedRow, DeedRow.seq == Waste.deed)
    .where(Waste.cone.is_not(None), Waste.struck.is_(None)).order_by(Waste.cone)
)
_PUT_UP = select(PutUp.turns * PutUp.reel_mm).where(PutUp.name == "skein", PutUp.struck.is_(None))
_SHORT = (
    select(Yarn.id, Yarn.base, Base.name, Yarn.put_up, Yarn.mg, Yarn.count.label("members"),
           TOOK.label("took"))
    .join(Base, Base.id == Yarn.base).join(DeedRow, DeedRow.seq == Yarn.closed)
    .where(Yarn.struck.is_(None), Yarn.kind == "group", Yarn.count > TOOK).order_by(Yarn.id)
)
_BARE = (
    select(Yarn.id, Yarn.base, Base.name, Yarn.put_up, Yarn.mg, Yarn.count.label("members"),
           TOOK.label("took"))
    .join(Base, Base.id == Yarn.base).join(DeedRow, DeedRow.seq == Yarn.deed)
    .where(Yarn.struck.is_(None), Yarn.kind == "pile", Yarn.closed.is_(None), TOOK > 0,
           Yarn.count > TOOK).order_by(Yarn.id)
)
_LOST = (
    select(Yarn.id, Yarn.base, Base.name, Yarn.put_up, Yarn.mg)
    .join(Whereabouts, Whereabouts.yarn == Yarn.id).join(Base, Base.id == Yarn.base)
    .join(DeedRow, DeedRow.seq == Whereabouts.deed)
    .where(Whereabouts.state == "lost", Whereabouts.until.is_(None), Whereabouts.struck.is_(None),
           Yarn.struck.is_(None)).order_by(Yarn.id)
)
_YARN = (
    select(Yarn.id, Yarn.base, Base.name, Yarn.put_up, Yarn.mg)
    .join(Base, Base.id == Yarn.base).where(among(Yarn.id, "ids"))
)
_BASES = select(Base.id.label("base"), Base.name)
_LOOSE = (
    select(DyeLot.code, func.count()).select_from(Tag)
    .join(DyeLot, DyeLot.id == Tag.lot).join(Yarn, Yarn.id == Tag.pile)
    .join(DeedRow, DeedRow.seq == Tag.deed)
    .outerjoin(TagOn, (TagOn.tag == Tag.id) & TagOn.until.is_(None) & TagOn.struck.is_(None))
    .where(Tag.void.is_(None), Tag.struck.is_(None), TagOn.id.is_(None), Yarn.count <= TOOK)
    .group_by(DyeLot.code).order_by(DyeLot.code)
)


@dataclass(frozen=True, slots=True)
class _Asking:
    """What all of them need."""

    connection: Connection
    at: datetime
    prices: Mapping[tuple[int, str], int]

    @property
    def since(self) -> datetime:
        return self.at - WITHIN


def balance_gaps(connection: Connection, at: datetime) -> tuple[Gap, ...]:
    """All gaps of the last year, the dearest first."""
    ask = _Asking(connection, at, prices_now(connection))
    return ranked((*_cones(ask), *_jars(connection), *_cords(ask), *_tags(ask), *_stock(ask),
                   *_sold_yet_here(ask)))


def _cones(ask: _Asking) -> Iterator[Gap]:
    connection = ask.connection
    ended = connection.execute(_ENDED.where(DeedRow.happened >= ask.since)).scalars().all()
    for number in dict.fromkeys(ended):
        if number is None:
            continue
        cone = cone_facts(connection, number)
        each_g = _skein_g(connection, cone)
        balance = ConeBalance(grams(cone.fibre_mg), (
            Drawn("skeins", 1, grams(cone.drawn_mg)), Drawn("waste", 1, grams(cone.waste_mg))),
            each_g)
        if balance.gap is Looks.NONE:
            continue
        price = ask.prices.get((cone.base, "skein"))
        mg = int(balance.unexplained_g * 1000)
        yield Gap(CONE, f"cone {shown(cone.code)}, {cone.base_name}", cone.code, mg, None,
                  _cone_words(balance),
                  None if price is None else round(price * balance.unexplained_g / each_g))


def _cone_words(balance: ConeBalance) -> str:
    many = abs(balance.skeins_amiss)
    skeins = f"{many} skein{'' if many == 1 else 's'}"
    if balance.gap is Looks.NOT_BOOKED:
        return f"like {skeins} that {'was' if many == 1 else 'were'} not booked"
    if balance.gap is Looks.BOOKED_TWICE:
        return f"like {skeins} booked twice, or from another cone"
    return "no number of skeins fits it: was its end weighed?"


def _skein_g(connection: Connection, cone: ConeFacts) -> Decimal:
    """What one skein of this cone weighs as wound; the whole cone where none is described."""
    mm = connection.execute(
        _PUT_UP.where(PutUp.base_version == cone.base_version)).scalar()
    return grams(cone.fibre_mg) if mm is None else Decimal(mm) / 1000 * cone.millitex / 1_000_000


def _jars(connection: Connection) -> Iterator[Gap]:
    swapped = {jar: pair for pair in jars_that_were_swapped(connection)
               for jar in (pair.taken_from, pair.booked_on)}
    for jar in jars_now(connection):
        count = jar.count
        if count is None or not jar_gap_counts(count.gap_mg, count.expected_mg):
            continue
        pair = swapped.get(jar.shown)
        words = "weigh it again; a gap that stays is spilled or was taken without the book"
        if pair is not None:
            lots = list(dict.fromkeys(use.lot for use in pair.uses))
            named = f", perhaps for {', '.join(lots[:NEAREST])}" if lots else ""
            more = f" or {len(lots) - NEAREST} others" if len(lots) > NEAREST else ""
            words = (f"jar {pair.taken_from} is lighter and jar {pair.booked_on} heavier by about "
                     f"{pair.about_g:.1f} g: as if jar {pair.taken_from} was poured where jar "
                     f"{pair.booked_on} is written{named}{more}; look at their shades")
        yield Gap(JAR, f"jar {jar.shown}, {jar.dye}", jar.code, -count.gap_mg, None, words, None)


def _cords(ask: _Asking) -> Iterator[Gap]:
    """Skeins that a count missed, and those that were counted and left when the others had tags."""
    dates = ((_SHORT.where(DeedRow.happened >= ask.since),
              "missing at its count: look under the rail, and among finds without a tag"),
             (_BARE.where(DeedRow.happened >= ask.since, DeedRow.happened < ask.at - LEFT_LYING),
              "counted and never tagged, though others of its pile are: look among finds"))
    for question, words in dates:
        rows = ask.connection.execute(question).all()
        above = thread(ask.connection, [row.id for row in rows])
        for row in rows:
            short = row.members - row.took
            lots = [lot for lot in nearest(above, row.id, "lot") if lot is not None]
            code = _code(ask.connection, lots[0]) if len(lots) == 1 else ""
            of = f"lot {shown(code)}" if code else "a cord that was not dyed"
            price = ask.prices.get((row.base, row.put_up))
            yield Gap(CORD, f"{of}, {row.name}", code, row.mg * short // row.members, short, words,
                      None if price is None else price * short)


def _code(connection: Connection, lot: int) -> str:
    return connection.execute(select(DyeLot.code).where(DyeLot.id == lot)).scalar() or ""


def _tags(ask: _Asking) -> Iterator[Gap]:
    for code, loose in ask.connection.execute(_LOOSE.where(DeedRow.happened >= ask.since)):
        many = "it is" if loose == 1 else "they are"
        yield Gap(TAG, f"tags of lot {shown(code or '')}", code or "", None, loose,
                  f"printed, on no skein, and no skein of it waits: void {many}, or on something "
                  "else", None)


def _stock(ask: _Asking) -> Iterator[Gap]:
    lost = ask.connection.execute(_LOST.where(DeedRow.happened >= ask.since)).all()
    marks = last_marks(ask.connection, [row.id for row in lost])
    for row in lost:
        mark = marks.get(row.id)
        yield Gap(STOCK, f"{shown(mark) if mark else f'a {row.put_up} without a tag'}, {row.name}",
                  mark or "", row.mg, 1, "lost: not on its shelf at a count, or said so",
                  ask.prices.get((row.base, row.put_up)))
    bases = {row.name: row.base for row in ask.connection.execute(_BASES)}
    for find in finds_waiting(ask.connection):
        price = ask.prices.get((bases[find.base], find.put_up))
        yield Gap(STOCK, f"a {find.put_up} without a tag, {find.base}", "", -find.mg, -1,
                  "found and not matched: hold it beside what is short of its base, by shade and "
                  "weight, before you say what it is", None if price is None else -price)


def _sold_yet_here(ask: _Asking) -> Iterator[Gap]:
    met = {one.yarn: one for one in sold_yet_here(ask.connection, ask.since)}
    marks = last_marks(ask.connection, met)
    for row in ask.connection.execute(_YARN, {"ids": listed(met)}):
        one, price = met[row.id], ask.prices.get((row.base, row.put_up))
        mark, gone = marks.get(row.id, ""), "sold" if one.state == "sent" else "given away"
        name = mark or f"a {row.put_up} without a tag"
        yield Gap(STOCK, f"{name}, {row.name}", mark, -row.mg, -1,
                  f"{gone} by the book, yet met on {shelf_words(ask.connection, one.place)} at the "
                  f"count of {day_words(one.met)}: ask who let it go, then take it back at the "
                  "Counter, or scan it on its shelf at Tagging",
                  None if price is None else -price)
