"""A report says what is seen and where; a sighting is of yarn; a count is of one thing."""

from datetime import UTC, datetime
from hashlib import sha256

from sqlalchemy import select

from app.records import Cause, Counted, DeedRow, Photo, Recall, Report, Sighting, Stocktake
from tests.makers import Studio
from tests.records.forbidden import forbids


def test_a_report_names_a_fault_and_its_distance_only_where_it_repeats(studio: Studio) -> None:
    forbids(studio, "fault", Report(fault="ugly", seen_at="counter"))
    forbids(studio, "seen_at", Report(fault="streak", seen_at="dream"))
    forbids(studio, "repeats_at", Report(fault="streak", seen_at="counter", where_on="repeats"))
    forbids(studio, "repeats_at", Report(fault="streak", seen_at="counter", repeat_mm=1500))
    forbids(studio, "is_a_distance", Report(
        fault="streak", seen_at="counter", where_on="repeats", repeat_mm=0))
    studio.do(lambda deed: deed.add(Report(
        fault="streak", seen_at="counter", where_on="repeats", repeat_mm=1500)))


def test_a_faulty_sighting_has_its_report_and_a_good_one_needs_none(studio: Studio) -> None:
    yarn = studio.wind(studio.cone(), 2)
    one = {"yarn": yarn, "seen_at": "inspection", "basis": "scanned"}
    report = studio.do(lambda deed: deed.add(Report(fault="stain", seen_at="return")))
    forbids(studio, "good_or_faulty", Sighting(faulty=2, report=report, **one))
    forbids(studio, "fault_is_reported", Sighting(faulty=1, **one))
    studio.do(lambda deed: deed.add(Sighting(faulty=0, **one)))


def test_a_cause_is_of_a_known_kind_and_not_found_is_one(studio: Studio) -> None:
    report = studio.do(lambda deed: deed.add(Report(fault="stain", seen_at="return")))
    forbids(studio, "kind", Cause(report=report, kind="fate"))
    studio.do(lambda deed: deed.add(Cause(report=report, kind="not found")))


def test_the_journal_never_holds_a_picture(studio: Studio) -> None:
    report = studio.do(lambda deed: deed.add(Report(fault="stain", seen_at="return")))
    studio.do(lambda deed: deed.add(Photo(
        report=report, kind="image/jpeg", picture=b"\xff\xd8wool",
        sha256=sha256(b"\xff\xd8wool").hexdigest())))
    assert Photo.__table__.c.picture.info == {"secret": True}
    bodies = studio.book.ask(lambda c: c.execute(select(DeedRow.body)).scalars().all())
    assert sha256(b"\xff\xd8wool").hexdigest() in bodies[-1].decode()
    assert "picture" not in bodies[-1].decode()
    studio.check()


def test_a_recall_is_in_earnest_or_for_practice(studio: Studio) -> None:
    one = {"kind": "cone", "thing": 1, "began": datetime(2026, 5, 4, 9, tzinfo=UTC),
           "mg": 0, "accounted": 0}
    forbids(studio, "earnest_or_practice", Recall(practice=3, skeins=0, **one))
    forbids(studio, "is_an_amount", Recall(practice=1, skeins=-1, **one))
    studio.do(lambda deed: deed.add(Recall(practice=1, skeins=0, **one)))


def test_what_was_counted_is_a_skein_or_so_many_of_a_lot(studio: Studio) -> None:
    lot = studio.dye(yarn := studio.wind(studio.cone(), 2))
    stocktake = studio.do(lambda deed: deed.add(Stocktake(place=studio.pot)))
    forbids(studio, "of_one_thing", Counted(stocktake=stocktake))
    forbids(studio, "of_one_thing", Counted(stocktake=stocktake, yarn=yarn, lot=lot))
    forbids(studio, "is_some", Counted(stocktake=stocktake, lot=lot, count=0))
    studio.do(lambda deed: deed.add(Counted(stocktake=stocktake, lot=lot, count=3)))
