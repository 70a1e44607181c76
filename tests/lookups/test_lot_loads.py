"""The loads of a lot, and who else was in them."""

from app.calculations.codes import shown
from app.lookups.lot_loads import LotLoad, lot_loads
from app.lookups.walks import below
from app.work.readings import bleed
from tests.deeds import into_load
from tests.full_lot import FullLot
from tests.makers import Studio


def loads_of(studio: Studio, lot: int) -> tuple[LotLoad, ...]:
    return studio.book.ask(lambda c: lot_loads(c, set(below(c, "lot", lot))))


def test_a_wash_names_the_other_lots_with_rinses_and_bleeding(studio: Studio) -> None:
    full = FullLot(studio)
    wash, spin, rail = loads_of(studio, full.lot)
    other = studio.code(full.other)
    assert other is not None
    assert (wash.step, wash.count, wash.others, wash.person) == (
        "wash", 12, (shown(other),), "WS")
    assert [one.value for one in wash.read("rinse") + wash.read("bleed")] == [3, 1]
    assert (spin.others, spin.readings) == ((), ())
    assert [one.value for one in rail.read("room permille")] == [510]


def test_yarn_that_was_not_dyed_is_named_as_such(studio: Studio) -> None:
    row, bare = studio.wind(studio.cone(), 2), studio.wind(studio.cone(), 1)
    lot = studio.dye(row)
    studio.do(into_load, "wash", yarn=[row, bare])
    assert loads_of(studio, lot)[0].others == ("undyed yarn",)


def test_what_was_read_of_another_lots_yarn_is_not_this_lots(studio: Studio) -> None:
    row, strange = studio.wind(studio.cone(), 2), studio.wind(studio.cone(), 1)
    lot = studio.dye(row)
    studio.dye(strange)
    load = studio.do(into_load, "wash", yarn=[row, strange])
    studio.do(bleed, load, 2, strange)
    studio.do(bleed, load, 1, row)
    assert [one.value for one in loads_of(studio, lot)[0].read("bleed")] == [1]
