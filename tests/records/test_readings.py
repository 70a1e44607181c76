"""Readings are of the kinds that are known."""

from app.records import Bath, BathReading, Fill, FillReading, Jar, Load, LoadReading, RoomReading
from app.records.readings import AT_THE_POT, IN_THE_WASH, OF_A_FILL, OF_THE_ROOM
from app.store.deed import Deed
from tests.makers import Studio
from tests.records.forbidden import forbids


def read_of_all(deed: Deed) -> list[int]:
    """One reading of every kind."""
    deed.add(Bath(plate=None, recipe_version=1))
    deed.add(Load(step="wash"))
    deed.add(Jar(code="J001H", dye="B1"))
    deed.add(Fill(jar=1, number=1, mg=10, strength_permille=None))
    return [
        *deed.add_all([BathReading(bath=1, kind=kind, value=1) for kind in AT_THE_POT]),
        *deed.add_all([LoadReading(load=1, kind=kind, value=1) for kind in IN_THE_WASH]),
        *deed.add_all([FillReading(fill=1, kind=kind, value=1) for kind in OF_A_FILL]),
        *deed.add_all([RoomReading(kind=kind, value=1, fibre="wool" * kind.startswith("regain"))
                       for kind in OF_THE_ROOM]),
    ]


def test_every_kind_is_kept_and_no_other(studio: Studio) -> None:
    kinds = (AT_THE_POT, IN_THE_WASH, OF_A_FILL, OF_THE_ROOM)
    assert len(studio.do(read_of_all)) == sum(len(some) for some in kinds)
    forbids(studio, "ck_bath_reading_kind", BathReading(bath=1, kind="mood", value=1))
    forbids(studio, "ck_load_reading_kind", LoadReading(load=1, kind="mood", value=1))
    forbids(studio, "ck_fill_reading_kind", FillReading(fill=1, kind="mood", value=1))
    forbids(studio, "ck_room_reading_kind", RoomReading(kind="mood", value=1))
    forbids(studio, "regain_of_a_fibre", RoomReading(kind="regain permille", value=130))
    forbids(studio, "regain_of_a_fibre", RoomReading(kind="room permille", value=1, fibre="wool"))
    studio.check()
