"""What a put-up of a base costs now, in the smallest unit of the studio's currency."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, func, select

from app.lookups.door import bases_now
from app.lookups.studio import setting
from app.records import Base, BaseVersion, DeedRow, Price, PutUp

CURRENCY = "currency"
"""The setting with the words that stand after an amount: EUR, kr, £."""


def price_of(connection: Connection, base: int, put_up: str) -> int | None:
    """The price that counts now, or none where none was set."""
    return connection.execute(
        select(Price.price)
        .where(Price.base == base, Price.put_up == put_up, Price.struck.is_(None))
        .order_by(Price.id.desc()).limit(1)
    ).scalar()


def prices_now(connection: Connection) -> Mapping[tuple[int, str], int]:
    """{(base, put-up): price} of all that were set."""
    newest = (
        select(func.max(Price.id)).where(Price.struck.is_(None))
        .group_by(Price.base, Price.put_up)
    )
    return {(row.base, row.put_up): row.price for row in connection.execute(
        select(Price.base, Price.put_up, Price.price).where(Price.id.in_(newest)))}


@dataclass(frozen=True, slots=True)
class Priced:
    """A put-up as its base is described now, with its price and since when, if it has one."""

    base: int
    name: str
    put_up: str
    price: int | None
    since: datetime | None


def price_list(connection: Connection) -> tuple[Priced, ...]:
    """Every put-up that is described, base by base, the heaviest first."""
    since = dict(connection.execute(
        select(Price.id, DeedRow.happened).join(DeedRow, DeedRow.seq == Price.deed)
        .where(Price.struck.is_(None))).all())
    newest = {(base, put_up): (row, price) for row, base, put_up, price in connection.execute(
        select(Price.id, Price.base, Price.put_up, Price.price)
        .where(Price.struck.is_(None)).order_by(Price.id))}
    priced = []
    for one in bases_now(connection):
        for base, put_up in _put_ups(connection, one.name):
            row, price = newest.get((base, put_up), (None, None))
            priced.append(Priced(base, one.name, put_up, price,
                                 None if row is None else since[row]))
    return tuple(priced)


def _put_ups(connection: Connection, base: str) -> list[tuple[int, str]]:
    version = (
        select(BaseVersion.id).join(Base, Base.id == BaseVersion.base)
        .where(Base.name == base, Base.struck.is_(None), BaseVersion.struck.is_(None))
        .order_by(BaseVersion.number.desc()).limit(1).scalar_subquery()
    )
    rows = connection.execute(
        select(BaseVersion.base, PutUp.name).join(BaseVersion, BaseVersion.id == PutUp.base_version)
        .where(PutUp.base_version == version, PutUp.struck.is_(None))
        .order_by(PutUp.nominal_mg.desc(), PutUp.id))
    return [(row.base, row.name) for row in rows]


def currency(connection: Connection) -> str:
    """The words that stand after an amount; '' where the studio named none."""
    return setting(connection, CURRENCY)


def money_words(price: int, currency: str = "") -> str:
    """'1,218.50 EUR': an amount in hundredths as it is written, with the studio's currency."""
    return f"{price / 100:,.2f} {currency}".strip()
