"""The trail: the thread of a thing as one line, with counts and certainty."""

from app.calculations.codes import Kind, numbered
from app.lookups.things import Found, by_code, of_lot
from app.lookups.trail import Stop, trail
from app.work.holding import hold
from app.work.opening_stock import OldLot, open_lot
from app.work.winding import end_cone
from tests.deeds import into_load, put
from tests.makers import Studio


def stops(studio: Studio, thing: str | Found | None) -> tuple[Stop, ...]:
    found = studio.book.ask(by_code, thing) if isinstance(thing, str) else thing
    assert found is not None
    return studio.book.ask(trail, found, studio.clock.now)


def line(studio: Studio, thing: str | Found | None) -> list[str]:
    return [f"{stop.kind} {stop.code}: {stop.count}" for stop in stops(studio, thing)]


def lot_code(studio: Studio) -> str:
    return f"26·15·{(studio.code(1) or '')[4:]}"


def whole_way(studio: Studio) -> list[int]:
    """6 skeins of one cone on disc 031: dyed, washed, counted one short, 4 tags tied on."""
    group = studio.wind(studio.cones(3)[0], 6, disc=studio.discs[0])
    studio.dye(group)
    studio.do(into_load, "wash", [group])
    (pile,) = studio.finish(group, red=5)
    return studio.tag(pile, 4)


def test_the_trail_of_a_lot_leads_from_the_delivery_to_where_it_is_now(studio: Studio) -> None:
    whole_way(studio)
    assert line(studio, studio.code(1)) == [
        "delivery 6 Apr: 3 cones", "cone C·0001·7: 6 skeins", "disc 031: 6 skeins",
        f"dye lot {lot_code(studio)}: 6 skeins", "wash load 1: 6 skeins",
        "pile 5 counted: 1 missing", "tags 4 of 4: tied on", "now 4 on the table: 2 elsewhere"]
    assert [stop.kind for stop in stops(studio, studio.code(1)) if stop.here] == ["dye lot"]


def test_the_trail_of_a_skein_is_its_own(studio: Studio) -> None:
    skeins = whole_way(studio)
    tagged = next(one for one in studio.book.ask(of_lot, 1) if one.id == skeins[0])
    assert line(studio, tagged) == [
        "delivery 6 Apr: 3 cones", "cone C·0001·7: 1 skein", "disc 031: 1 skein",
        f"dye lot {lot_code(studio)}: 6 skeins", "wash load 1: 1 skein",
        "pile 5 counted: none missing", "tags 4 of 4: tied on", "now 1 on the table: all of it"]


def test_the_trail_of_a_cone_leads_through_all_its_lots(studio: Studio) -> None:
    cone = studio.cone()
    for count in (6, 4):
        studio.dye(studio.wind(cone, count))
    assert line(studio, "C00017") == [
        "delivery 6 Apr: 1 cone", "cone C·0001·7: 10 skeins",
        f"dye lot {lot_code(studio)}: 6 skeins",
        f"dye lot 26·15·{(studio.code(2) or '')[4:]}: 4 skeins", "now 10 in work: all of it"]


def test_a_cone_of_which_nothing_was_wound_has_a_short_trail(studio: Studio) -> None:
    studio.cones(2)
    assert line(studio, "C0002K") == [
        "delivery 6 Apr: 2 cones", "cone C·0002·K: nothing wound yet"]
    assert stops(studio, "C0002K")[1].here


def test_two_cones_in_one_pot_are_one_of_two_until_the_count_tells_them(studio: Studio) -> None:
    pool = studio.mix(studio.wind(studio.cone(), 7, "red", studio.discs[0]),
                      studio.wind(studio.cone(), 5, "blue"))
    studio.dye(pool)
    found = {stop.kind: stop for stop in stops(studio, studio.code(1))}
    assert (found["cones"].code, found["cones"].count) == ("2 cones", "7 + 5")
    assert (found["disc"].certainty, found["disc"].note) == (
        "one of a pool", "one of 2 cones, 7 + 5")
    assert (found["dye lot"].count, found["dye lot"].certainty) == ("12 skeins", "one of a pool")
    of_cone = {stop.kind: stop for stop in stops(studio, "C00017")}
    assert (of_cone["dye lot"].count, of_cone["dye lot"].certainty) == ("7 of 12", "one of a pool")
    studio.finish(pool, red=7, blue=5)
    found = {stop.kind: stop for stop in stops(studio, studio.code(1))}
    assert (found["cones"].code, found["cones"].count) == ("2 cones", "7 + 5")
    assert (found["disc"].certainty, found["disc"].note) == ("known", "")
    assert found["pile"].code == "12 counted"


def test_a_skein_told_by_its_tie_has_only_its_own_pile_and_cone(studio: Studio) -> None:
    pool = studio.mix(studio.wind(studio.cone(), 7, "red"), studio.wind(studio.cone(), 5, "blue"))
    studio.dye(pool)
    _, blues = studio.finish(pool, red=7, blue=5)
    (skein,) = studio.tag(blues, 1)
    tagged = next(one for one in studio.book.ask(of_lot, 1) if one.id == skein)
    told = line(studio, tagged)
    assert "cone C·0002·K: 1 skein" in told
    assert "pile 5 counted: none missing" in told


def test_a_join_is_shown_as_partly(studio: Studio) -> None:
    one, two = studio.cones(2)
    studio.dye(studio.join([(one, 255_200), (two, 157_300)]))
    found = {stop.kind: stop for stop in stops(studio, studio.code(1))}
    assert found["cones"].code == "2 cones"
    assert "disc" not in found


def test_an_old_lot_begins_with_not_known(studio: Studio) -> None:
    studio.tag(studio.do(open_lot, OldLot("OLD-77", studio.version, 1, 4), 100_000), 4)
    found = stops(studio, "OLD77")
    assert [f"{stop.kind} {stop.code}: {stop.count}" for stop in found] == [
        "cone ?: not known", "dye lot OLD77: 4 skeins", "pile 4 counted: none missing",
        "tags 4 of 4: tied on", "now 4 on the table: all of it"]
    assert found[0].certainty == "not known"


def test_cones_of_two_deliveries_are_told_by_their_number(studio: Studio) -> None:
    studio.dye(studio.wind(studio.cone(), 2), studio.wind(studio.cone(), 2))
    assert line(studio, studio.code(1))[:2] == ["deliveries 2: from 6 Apr", "cones 2 cones: 2 + 2"]


def test_a_hold_shows_where_it_was_placed_and_below(studio: Studio) -> None:
    cone = studio.cone()
    studio.dye(studio.wind(cone, 4))
    assert {stop.held for stop in stops(studio, studio.code(1))} == {""}
    studio.do(hold, "cone", cone, "oil")
    assert [(stop.kind, stop.held) for stop in stops(studio, studio.code(1))] == [
        ("delivery", ""), ("cone", "here"), ("dye lot", "below"), ("now", "below")]


def test_where_most_of_it_is_now_leads_the_last_station(studio: Studio) -> None:
    skeins = whole_way(studio)
    studio.do(put, skeins[:3], "shelf", studio.pot)
    assert line(studio, studio.code(1))[-1] == "now 3 on the shelf: 3 elsewhere"


def test_the_trail_of_a_disc_is_of_what_it_hangs_on(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 6, disc=studio.discs[0])
    studio.dye(group)
    found = studio.book.ask(by_code, "D031W")
    assert [stop.kind for stop in stops(studio, found)] == [
        "delivery", "cone", "disc", "dye lot", "now"]
    assert stops(studio, numbered(Kind.DISC, 32).text) == ()


def test_an_ended_cone_keeps_its_trail(studio: Studio) -> None:
    cone = studio.cone()
    studio.wind(cone, 13)
    studio.do(end_cone, cone, 3_900)
    assert line(studio, "C00017")[-1] == "now 13 in work: all of it"


def test_a_hold_on_a_bath_is_seen_on_all_that_came_out_of_it(studio: Studio) -> None:
    whole_way(studio)
    studio.do(hold, "bath", 1, "uneven")
    held = {stop.kind: stop.held for stop in stops(studio, studio.code(1))}
    assert held["pile"] == held["now"] == "below"
    assert held["cone"] == ""


def test_a_hold_on_one_load_hangs_on_its_own_station_alone(studio: Studio) -> None:
    row = studio.wind(studio.cone(), 2)
    studio.dye(row)
    washed = studio.do(into_load, "wash", [row])
    studio.do(into_load, "rail", [row])
    studio.do(hold, "load", washed, "pink cast")
    held = {stop.kind: stop.held for stop in stops(studio, studio.code(1))}
    assert (held["wash"], held["rail"]) == ("here", "below")
