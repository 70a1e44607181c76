"""How the stations of a trail are laid out: columns by distance, threads in rows."""

from hypothesis import given, settings
from hypothesis import strategies as st

from app.documents.paper import Paper
from app.documents.trail import ACROSS, Station, Trail, draw_band, lay_out
from app.documents.yarn import Certainty
from tests.documents.samples import text_of

WIDTH, HEIGHT = 176.0, 225.0


def station(code: str, *after: int, **changes: object) -> Station:
    return Station("thing", code, "12 skeins", after, **changes)


def drawn(trail: Trail) -> list[str]:
    paper = Paper("Test")
    y = 30.0
    for band, height in enumerate(trail.band_heights):
        draw_band(paper, trail, band, (20, y))
        y += height
    assert paper.misfits == ()
    return text_of(paper.pdf(""))


def test_a_straight_trail_lies_on_one_row() -> None:
    trail = lay_out([station("0"), station("1", 0), station("2", 1)], WIDTH, HEIGHT)
    assert trail.places == ((0, 0), (1, 0), (2, 0))


def test_where_the_yarn_parts_the_first_stays_on_its_row() -> None:
    trail = lay_out([station("0"), station("1", 0), station("2", 0)], WIDTH, HEIGHT)
    assert trail.places == ((0, 0), (1, 0), (1, 1))


def test_where_yarns_meet_the_station_stands_after_the_longer_way() -> None:
    stations = [station("0"), station("1", 0), station("2"), station("3", 1, 2)]
    assert lay_out(stations, WIDTH, HEIGHT).places == ((0, 0), (1, 0), (0, 1), (2, 0))


def test_a_long_trail_goes_on_below() -> None:
    stations = [station(str(n), *([n - 1] if n else [])) for n in range(ACROSS + 3)]
    trail = lay_out(stations, WIDTH, HEIGHT)
    assert len(trail.band_heights) == 2
    said = drawn(trail)[0].split()
    assert all(str(n) in said for n in range(ACROSS + 3))


def test_rows_no_page_holds_are_counted_not_forgotten() -> None:
    stations = [station("0"), *(station(str(n), 0) for n in range(1, 15))]
    trail = lay_out(stations, WIDTH, HEIGHT)
    assert trail.left_out == 15 - len(trail.stations) > 0
    assert sum(trail.band_heights) <= HEIGHT


def test_a_short_note_stands_at_the_yarn_and_a_long_one_on_the_tag() -> None:
    pair = [station("0"), station("1", 0, certainty=Certainty.POOL, note="6 and 6")]
    assert lay_out(pair, 50, HEIGHT).stations[1].note == "6 and 6"
    pair[1] = station("1", 0, note="one of two cones, 6 and 6 of each")
    moved = lay_out(pair, 50, HEIGHT).stations[1]
    assert (moved.note, moved.count) == ("", "12 skeins|one of two cones, 6 and 6 of each")


trails = st.lists(
    st.tuples(
        st.sets(st.integers(0, 30), max_size=3),
        st.sampled_from(list(Certainty)),
        st.sampled_from(["", "62 %", "6 and 6", "one of two cones, 6 and 6 of each"]),
    ),
    min_size=1,
    max_size=16,
).map(
    lambda rows: [
        station(
            str(n), *sorted({a % n for a in after}) if n else (), certainty=certainty, note=note
        )
        for n, (after, certainty, note) in enumerate(rows)
    ]
)


@given(trails)
def test_no_two_stations_share_a_place_and_none_stands_before_its_origin(
    stations: list[Station],
) -> None:
    trail = lay_out(stations, WIDTH, HEIGHT)
    assert len(set(trail.places)) == len(trail.places)
    for one, (column, _) in zip(trail.stations, trail.places, strict=True):
        assert all(trail.places[n][0] < column for n in one.after)
    for band in range(len(trail.band_heights)):
        rows = {row for column, row in trail.places if column // ACROSS == band}
        assert rows == set(range(len(rows)))


@settings(deadline=None, max_examples=40)
@given(trails)
def test_every_trail_can_be_drawn(stations: list[Station]) -> None:
    trail = lay_out(stations, WIDTH, 120)
    for band in range(len(trail.band_heights)):
        paper = Paper("Test")
        draw_band(paper, trail, band, (20, 30))
        assert paper.misfits == ()
