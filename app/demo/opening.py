"""The first morning: who works here, what is dyed, what hangs on the walls, what lay there before.
"""

from datetime import UTC, datetime, time
from decimal import Decimal

from sqlalchemy import Connection, func, select

from app.calculations.codes import Kind
from app.calculations.units import milligrams
from app.demo.hands import Hands, mm
from app.demo.sources import Line, toml
from app.demo.weighing import stock_jars
from app.records import Base, BaseVersion, Colourway
from app.work.bases import BaseWords, PutUpWords, describe_base
from app.work.bundling import make_plates
from app.work.dyeing import name_colourway
from app.work.opening_stock import OldLot, open_lot
from app.work.people import enrol
from app.work.receiving import ConeIn, DeliveryIn, receive
from app.work.selling import set_price
from app.work.studio import choose


def open_studio(hands: Hands) -> None:
    """All that stands in the book before the first delivery."""
    studio = toml(hands.folder / "studio.toml")
    for initials, name in studio["people"].items():
        hands.do(enrol, initials, name)
    hands.do(choose, {key: studio[key] for key in ("name", "address", "origin", "differ")})
    for base in studio["bases"]:
        hands.do(describe_base, _base_words(base))
    for colourway in studio["colourways"]:
        hands.do(name_colourway, colourway["name"], colourway["swatch"])
    for plates in studio["plates"]:
        first, last = plates["numbers"]
        hands.do(make_plates, Kind(plates["kind"]), range(first, last + 1),
                 plates.get("words", ""))
    if (hands.folder / "jars.toml").exists():
        stock_jars(hands)
    _price(hands, studio)
    stock = hands.folder / "opening_stock.toml"
    if stock.exists():
        _lay_in(hands, toml(stock))


def _price(hands: Hands, studio: Line) -> None:
    for base in studio["bases"]:
        row = hands.book.ask(base_called, base["name"])
        for put_up in base["put_ups"]:
            if "price" in put_up:
                hands.do(set_price, row, put_up["name"], put_up["price"])


def _lay_in(hands: Hands, stock: Line) -> None:
    """Cones and lots from before the book."""
    for delivery in stock["deliveries"]:
        cones = tuple(
            ConeIn(milligrams(Decimal(str(cone["gross"]))), milligrams(Decimal(64)),
                   cone.get("batch"), cone["cone"], ecru_off=cone.get("ecru_off"))
            for cone in delivery["cones"])
        arrived = datetime.combine(delivery["arrived"], time(9), UTC)
        hands.do(receive, DeliveryIn(delivery["supplier"], delivery["note"], delivery["base"],
                                     arrived, cones, opening_stock=True))
    for old in stock["lots"]:
        version = hands.book.ask(version_of, old["base"])
        colourway = hands.book.ask(colourway_called, old["colourway"])
        hands.do(open_lot, OldLot(old["code"], version, colourway, old["skeins"]),
                 milligrams(Decimal(str(old["g"]))))


def _base_words(base: Line) -> BaseWords:
    put_ups = tuple(
        PutUpWords(one["name"], one["turns"], mm(one["reel_m"]), milligrams(Decimal(one["g"])),
                   mm(one["m"]))
        for one in base["put_ups"]
    )
    return BaseWords(
        base["name"], base["fibre"], base["tex"] * 1000, round(base["oil"] * 10),
        round(base["relax"] * 10), put_ups, knit=base["knit"], care=base["care"])


def base_called(connection: Connection, name: str) -> int:
    """A base by its name."""
    return connection.execute(
        select(Base.id).where(Base.name == name, Base.struck.is_(None))).scalar_one()


def version_of(connection: Connection, base: str) -> int:
    """The newest version of a base."""
    return connection.execute(
        select(func.max(BaseVersion.id)).join(Base, Base.id == BaseVersion.base)
        .where(Base.name == base, BaseVersion.struck.is_(None))).scalar_one()


def colourway_called(connection: Connection, name: str) -> int:
    """A colourway by its name."""
    return connection.execute(
        select(Colourway.id).where(Colourway.name == name, Colourway.struck.is_(None))
    ).scalar_one()
