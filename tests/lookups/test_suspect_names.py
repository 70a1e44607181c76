"""Suspects are called what people call them."""

from app.calculations.codes import shown
from app.lookups.suspect_names import named
from tests.deeds import into_load
from tests.dyehouse import Dyehouse
from tests.makers import Studio


def test_each_kind_has_its_name(studio: Studio) -> None:
    house = Dyehouse(studio)
    group = studio.wind(studio.cone(), 2)
    lot = studio.dye(group)
    loads = [studio.do(into_load, step, [group]) for step in ("wash", "rail", "soak")]
    things = [("cone", 1), ("lot", lot), ("fill", house.fills[1]), ("winder-day", 1),
              *(("load", load) for load in loads)]
    said = studio.book.ask(named, things, {1: "WN, 4 May 2026"})
    assert [str(said[thing]) for thing in things] == [
        "cone C·0001·7", f"lot {shown(studio.code(lot) or '')}",
        "jar fill B1 turquoise, fill 1", "winder-day WN, 4 May 2026",
        f"wash load {loads[0]} (6 Apr)", f"rail {loads[1]} (6 Apr)",
        f"soak load {loads[2]} (6 Apr)"]
