"""Stations and their keys; a row's stations in the order of the work."""

from app.lookups.graph_ways import web
from app.lookups.graph_web import HERE, Centre, add, key, kind_of, number_of
from tests.deeds import into_load
from tests.makers import Studio


def test_a_key_says_what_a_station_is() -> None:
    assert (key("cone", 114), key("cone", None)) == ("cone:114", "cone:?")
    assert (kind_of("lot:7 again"), number_of("lot:7 again"), number_of("fill:?")) == (
        "lot", 7, None)


def test_yarn_on_a_link_adds_up() -> None:
    ways: dict[tuple[str, str], dict[int, int]] = {}
    add(ways, ("a", "b"), {7: 1})
    add(ways, ("a", "b"), {7: 2, 8: 1})
    assert ways == {("a", "b"): {7: 3, 8: 1}}


def test_a_soak_comes_before_the_pot_and_a_wash_after_it(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 5)
    soak = studio.do(into_load, "soak", [group])
    lot = studio.dye(group)
    wash = studio.do(into_load, "wash", [group])
    found = studio.book.ask(web, Centre("lot", (lot,)))
    assert found.stations(group) == [f"yarn:{group}", f"load:{soak}", HERE, f"load:{wash}"]
