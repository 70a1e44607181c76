"""How the stations of a lot's trail hang from their yarn: in order, side by side, on below."""

from hypothesis import given, settings
from hypothesis import strategies as st

from app.documents.paper import Paper
from app.documents.proof import printed_pages
from app.documents.trail import ACROSS, Station, Trail, draw_band, lay_out
from app.documents.yarn import Certainty
from tests.documents.samples import text_of

WIDTH = 176.0
NOTES = ("", "62 %", "6 and 6", "one of two cones, 6 and 6 of each")


def station(code: str, certainty: Certainty = Certainty.KNOWN, note: str = "") -> Station:
    return Station("thing", code, "12 skeins", certainty, note)


def drawn(trail: Trail) -> Paper:
    paper = Paper("Test")
    for band in range(len(trail.bands)):
        draw_band(paper, trail, band, (20, 30 + 50 * band))
    return paper


def test_a_long_trail_goes_on_below_in_its_order() -> None:
    trail = lay_out([station(f"N{n}") for n in range(ACROSS + 3)], WIDTH)
    assert [len(band) for band in trail.bands] == [ACROSS, 3]
    said = text_of(drawn(trail).pdf(""))[0].split()
    assert [word for word in said if word.startswith("N")] == [f"N{n}" for n in range(ACROSS + 3)]


def test_a_short_note_stands_at_the_yarn_and_a_long_one_on_the_tag() -> None:
    pair = [station("0"), station("1", Certainty.POOL, "6 and 6")]
    assert lay_out(pair, 50).bands[0][1].note == "6 and 6"
    pair[1] = station("1", note="one of two cones, 6 and 6 of each")
    moved = lay_out(pair, 50).bands[0][1]
    assert (moved.note, moved.count) == ("", "12 skeins|one of two cones, 6 and 6 of each")


def test_the_yarn_is_whole_where_it_is_known_and_a_gap_leads_to_what_is_not() -> None:
    trail = lay_out([station("0"), station("1"), station("2", Certainty.UNKNOWN)], WIDTH)
    page = printed_pages(drawn(trail).pdf(""), 300)[0].convert("L")
    y, dots = round(30 * 300 / 25.4), 300 / 25.4
    band = page.crop((round(20 * dots), y - 12, round((20 + WIDTH) * dots), y + 12))
    ink = [band.crop((x, 0, x + 1, band.height)).getextrema()[0] < 128 for x in range(band.width)]
    to_the_second = ink[5:round(trail.spacing * 1.5 * dots)]
    gap = ink[round(trail.spacing * 1.7 * dots):round(trail.spacing * 1.9 * dots)]
    assert all(to_the_second)
    assert not any(gap)


@settings(max_examples=40)
@given(st.lists(st.tuples(st.sampled_from(list(Certainty)), st.sampled_from(NOTES)),
                min_size=1, max_size=20))
def test_every_trail_can_be_drawn_with_every_word(rows: list[tuple[Certainty, str]]) -> None:
    paper = drawn(lay_out([station(f"N{n}", *row) for n, row in enumerate(rows)], WIDTH))
    assert paper.misfits == ()
    said = "".join("".join(text_of(paper.pdf(""))).split())
    assert all(f"N{n}" in said for n in range(len(rows)))
    assert said.count("?") == sum(certainty is Certainty.UNKNOWN for certainty, _ in rows)
