"""The first morning: people, bases, prices, plates, and what lay there before."""

from sqlalchemy import func, select

from app.demo.opening import base_called, colourway_called, version_of
from app.lookups.studio import everyone, setting
from app.lookups.things import by_code
from app.records import Cone, Delivery, DyeLot, InBath, Plate, Price, Reading, Yarn
from app.store.book import Book


def test_all_who_sign_have_a_name_and_one_left(demo_book: Book) -> None:
    people = demo_book.ask(everyone)
    assert len(people) == 12
    assert all(person.name for person in people)
    assert [person.initials for person in people if person.left] == ["LR"]
    assert demo_book.ask(setting, "name") == "Quernlow Dyeyard"


def test_six_bases_and_all_colourways_are_described(demo_book: Book) -> None:
    assert demo_book.ask(version_of, "Kettle Chunky")
    assert demo_book.ask(colourway_called, "Late Bus Orchard")
    base = demo_book.ask(base_called, "Tarnfield 4-ply")
    with demo_book.reading() as connection:
        prices = connection.execute(select(Price.price).where(
            Price.base == base, Price.put_up == "skein").order_by(Price.id)).scalars().all()
        shelves = connection.execute(select(Plate.words).where(
            Plate.kind == "shelf").order_by(Plate.code)).scalars().all()
    assert prices == [2400, 2500]
    assert shelves[-3:] == ["window", "put by, behind the till", "fair table at Brackmere"]


def test_part_cones_and_old_lots_lay_there_and_their_cones_are_not_known(demo_book: Book) -> None:
    with demo_book.reading() as connection:
        cones = connection.execute(
            select(Cone.code).join(Delivery, Delivery.id == Cone.delivery)
            .where(Delivery.kind == "opening stock")).scalars().all()
        old = connection.execute(
            select(DyeLot.code, func.sum(Yarn.count)).join(InBath, InBath.lot == DyeLot.id)
            .join(Yarn, Yarn.id == InBath.yarn).where(DyeLot.bath.is_(None))
            .group_by(DyeLot.code).order_by(DyeLot.id)).all()
        found = demo_book.ask(by_code, "C0052M")
        assert found is not None
        ecru = connection.execute(select(Reading.value).where(
            Reading.cone == found.id, Reading.kind == "ecru centi-delta")).scalar()
    assert len(cones) == 14
    assert [tuple(row) for row in old] == [("FL25118", 5), ("NC2597", 3), ("25MW41", 4)]
    assert ecru == 234
