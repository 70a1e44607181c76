"""What a tag of each base would say now, so that a stock or a market can be tried on it."""

from dataclasses import dataclass

from sqlalchemy import Connection, func, select

from app.lookups.studio import setting
from app.lookups.tagging import TagText, text_by
from app.records import Base, BaseVersion, Colourway, PutUp

SAMPLE_LOT = "2619K44"


@dataclass(frozen=True, slots=True)
class Samples:
    """One tag for each base by its newest version and heaviest put-up, with the longest name of a
    colourway; and the market and language that were chosen."""

    texts: tuple[TagText, ...]
    market: str
    language: str


def sample_tags(connection: Connection) -> Samples:
    """The tags of all bases, in the order of their names."""
    newest = (
        select(func.max(BaseVersion.id)).where(BaseVersion.struck.is_(None))
        .group_by(BaseVersion.base)
    )
    rows = connection.execute(
        select(Base.name.label("base"), BaseVersion.id, PutUp.name)
        .join(BaseVersion, BaseVersion.base == Base.id)
        .join(PutUp, PutUp.base_version == BaseVersion.id)
        .where(BaseVersion.id.in_(newest), Base.struck.is_(None), PutUp.struck.is_(None))
        .order_by(Base.name, PutUp.nominal_mg, PutUp.id)
    ).all()
    heaviest = {row.base: (row.id, row.name) for row in rows}
    colourway = _longest_name(connection)
    texts = tuple(text_by(connection, version, put_up, (base, colourway, SAMPLE_LOT))
                  for base, (version, put_up) in heaviest.items())
    return Samples(texts, setting(connection, "market"), setting(connection, "language"))


def _longest_name(connection: Connection) -> str:
    name: str | None = connection.execute(
        select(Colourway.name).where(Colourway.struck.is_(None))
        .order_by(func.length(Colourway.name).desc(), Colourway.id).limit(1)
    ).scalar()
    return name or "Colourway"
