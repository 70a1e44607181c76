"""What the labeller sees of a pile: its lot and words, and counts that must add up."""

from dataclasses import dataclass
from random import Random

from sqlalchemy import Connection, bindparam, select

from app.calculations.code_drawing import draw_mark
from app.calculations.units import grams, metres, ounces, yards
from app.lookups.certainty import held_by, links, nearest
from app.lookups.discs import disc_of
from app.lookups.present import TOOK
from app.lookups.studio import setting
from app.lookups.thread import thread
from app.problems import NotFound
from app.records import (
    Base,
    BaseVersion,
    Colourway,
    DyeLot,
    PutUp,
    Tag,
    TagOn,
    Yarn,
)
from app.records.yarn import IN_WORK


@dataclass(frozen=True, slots=True)
class TagText:
    """The words of a tag, as its market reads them."""

    studio: str
    address: str
    colourway: str
    base: str
    fibre: str
    net: str
    ounces: str
    knit: str
    care: str
    origin: str
    differ: str
    lot: str


@dataclass(frozen=True, slots=True)
class PileFacts:
    """A pile on the table. `waiting`: printed, not void, not yet on a skein."""

    id: int
    disc: str | None
    lots: tuple[int | None, ...]
    lot: str | None
    colourway: str | None
    swatch: str | None
    base: str
    put_up: str
    counted: int
    left: int
    printed: int
    void: int
    waiting: int
    versions: tuple[int, ...]
    holds: tuple[int, ...]

    @property
    def applied(self) -> int:
        """Skeins of this pile that wear their tag."""
        return self.counted - self.left

    @property
    def to_print(self) -> int:
        """Skeins that no printed tag waits for."""
        return max(0, self.left - self.waiting)


_PILE = (
    select(Yarn.count.label("members"), Yarn.put_up, Base.name, TOOK.label("took"))
    .join(Base, Base.id == Yarn.base)
    .where(Yarn.id == bindparam("pile"), Yarn.struck.is_(None))
)
_LOT = (
    select(DyeLot.code, Colourway.name, Colourway.swatch)
    .join(Colourway, Colourway.id == DyeLot.colourway).where(DyeLot.id == bindparam("lot"))
)
_TAGS = (
    select(Tag.void, TagOn.id)
    .outerjoin(TagOn, (TagOn.tag == Tag.id) & TagOn.until.is_(None) & TagOn.struck.is_(None))
    .where(Tag.pile == bindparam("pile"), Tag.struck.is_(None))
)


def pile_facts(connection: Connection, pile: int) -> PileFacts:
    """All the labeller needs of one pile; raises NotFound."""
    row = connection.execute(_PILE, {"pile": pile}).first()
    if row is None:
        raise NotFound("This pile is not in the book.", "Count it at the finishing table first.")
    found = thread(connection, [pile])
    lots = tuple(sorted(nearest(found, pile, "lot"), key=lambda lot: lot or 0))
    named = lots[0] if len(lots) == 1 else None
    lot = connection.execute(_LOT, {"lot": named}).first() if named else None
    tags = connection.execute(_TAGS, {"pile": pile}).all()
    return PileFacts(
        id=pile, disc=disc_of(connection, pile), lots=lots, lot=lot.code if lot else None,
        colourway=lot.name if lot else None, swatch=lot.swatch if lot else None, base=row.name,
        put_up=row.put_up, counted=row.members, left=row.members - row.took, printed=len(tags),
        void=sum(1 for void, _ in tags if void),
        waiting=sum(1 for void, hung in tags if not void and hung is None),
        versions=tuple(link.thing for link in links(found, pile, "version") if link.thing),
        holds=held_by(found, pile),
    )


def piles_waiting(connection: Connection) -> tuple[PileFacts, ...]:
    """Piles with skeins that wear no tag yet, the oldest first."""
    ids = connection.execute(
        select(Yarn.id).where(IN_WORK, Yarn.kind == "pile").order_by(Yarn.id)
    ).scalars().all()
    return tuple(pile_facts(connection, pile) for pile in ids)


def tag_text(connection: Connection, pile: int, version: int) -> TagText:
    """The words for this pile's tags, by the base version of its cones."""
    facts = pile_facts(connection, pile)
    return text_by(connection, version, facts.put_up,
                   (facts.base, facts.colourway or "", facts.lot or ""))


def text_by(
    connection: Connection, version: int, put_up: str, names: tuple[str, str, str]
) -> TagText:
    """The words by a base version for a put-up; the names are base, colourway and lot."""
    base, colourway, lot = names
    words = connection.execute(
        select(BaseVersion.fibre, BaseVersion.knit, BaseVersion.care, BaseVersion.origin,
               PutUp.nominal_mg, PutUp.nominal_mm)
        .outerjoin(PutUp, (PutUp.base_version == BaseVersion.id) & (PutUp.name == put_up))
        .where(BaseVersion.id == version)
    ).one()
    if words.nominal_mg is None:
        raise NotFound(f"What a {put_up} of {base} holds is not described.",
                       "Describe this put-up of the base first.")
    mass, length = grams(words.nominal_mg), metres(words.nominal_mm)
    return TagText(
        studio=setting(connection, "name"), address=setting(connection, "address"),
        colourway=colourway, base=base, fibre=words.fibre,
        net=f"{mass:f} g   {length:f} m",
        ounces=f"{ounces(mass)} oz   {yards(length)} yd", knit=words.knit, care=words.care,
        origin=words.origin or setting(connection, "origin"),
        differ=setting(connection, "differ"), lot=lot,
    )


def marks_for(connection: Connection, lot: str, count: int, random: Random) -> tuple[str, ...]:
    """So many new marks of a lot; none was ever printed before."""
    taken = set(connection.execute(
        select(Tag.mark).where(Tag.mark >= f"{lot}-", Tag.mark < f"{lot}-~")
    ).scalars())
    marks = []
    for _ in range(count):
        mark = draw_mark(lot, taken, random).text
        taken.add(mark)
        marks.append(mark)
    return tuple(marks)
