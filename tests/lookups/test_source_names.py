"""What can be held or recalled is called as people call it."""

from sqlalchemy import select

from app.calculations.codes import shown
from app.lookups.skeins import last_marks
from app.lookups.source_names import source_names
from app.lookups.thread import Thing
from app.records import Cone, DyeLot
from tests.deeds import into_load
from tests.makers import Studio


def test_every_source_has_its_name(studio: Studio) -> None:
    cone = studio.cone()
    cord = studio.wind(cone, 2)
    lot, load = studio.dye(cord), studio.do(into_load, "wash", [cord])
    (skein, *_) = studio.tagged(cone, 2)[1]
    bath, batch = studio.book.ask(lambda c: (
        c.execute(select(DyeLot.bath).where(DyeLot.id == lot)).scalar_one(),
        c.execute(select(Cone.supplier_lot).where(Cone.id == cone)).scalar_one()))
    things: list[Thing] = [("cone", cone), ("lot", lot), ("load", load), ("bath", bath),
                           ("supplier_lot", batch), ("yarn", skein), ("yarn", cord), ("bath", 99)]
    said = studio.book.ask(source_names, things)
    code = shown(studio.code(lot) or "")
    assert [said[thing] for thing in things] == [
        "cone C·0001·7", f"lot {code}", f"wash load {load} (6 Apr)", f"the bath of lot {code}",
        "batch A-203 of Aske Mill", f"skein {studio.book.ask(last_marks, [skein])[skein]}",
        "some skeins", "a bath"]
