"""The short trail: what yarn only passed is left out, and nothing else."""

import pytest

from app.lookups.graph import graph
from app.lookups.graph_web import HERE, Centre, kind_of
from app.store.book import Book
from app.work.holding import hold
from tests.deeds import into_load
from tests.lookups.graphs import ends, mixed_pot, of_kind, stations, sure, trail_of
from tests.makers import Studio


def test_loads_piles_and_deliveries_are_left_out_and_counts_stay(studio: Studio) -> None:
    cones, lot, _ = mixed_pot(studio)
    found = trail_of(studio, "cone", cones[0], short=True)
    assert stations(found) == {
        ("maker's batch", "from", 0, "known"), ("cone", "here", 7, "known"),
        ("wound", "to", 7, "known"), ("mixed on a cord", "to", 12, "one of a pool"),
        ("dye lot", "to", 12, "one of a pool"), ("table", "to", 8, "one of a pool"),
        ("given", "to", 4, "one of a pool")}
    assert sure(found, f"lot:{lot}", of_kind(found, "table").key) == "one of a pool"
    whole = trail_of(studio, "cone", cones[0])
    assert found.together == whole.together


def test_a_skein_hangs_right_below_its_lot_and_the_lot_is_counted_whole(studio: Studio) -> None:
    _, lot, skeins = mixed_pot(studio)
    found = trail_of(studio, "yarn", skeins[0], short=True)
    assert (f"lot:{lot}", HERE) in {(one.start, one.end) for one in found.strands}
    assert of_kind(found, "dye lot").count == 12


def test_a_load_that_was_put_on_hold_stays_in_the_picture(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 6)
    lot = studio.dye(group)
    wash = studio.do(into_load, "wash", [group])
    studio.do(into_load, "spin", [group])
    studio.finish(group, red=6)
    studio.do(hold, "load", wash, "rust in the drum")
    found = trail_of(studio, "lot", lot, short=True)
    assert of_kind(found, "wash load").held.where == "here"
    assert "spin" not in {knot.named.kind for knot in found.knots}


@pytest.mark.parametrize("kind", ["cone", "lot"])
def test_in_the_demo_every_short_trail_ends_where_the_whole_one_does(
    demo_book: Book, kind: str
) -> None:
    table = {"cone": "cone", "lot": "dye_lot"}[kind]
    ids = demo_book.ask(lambda c: c.exec_driver_sql(f"SELECT id FROM {table}").scalars().all())
    for one in ids[::5]:
        whole = demo_book.ask(graph, Centre(kind, (one,)))
        short = demo_book.ask(graph, Centre(kind, (one,)), short=True)
        assert ends(short) == ends(whole), one
        kept = {knot.key: (knot.count, knot.sure, knot.held) for knot in short.knots}
        assert not {kind_of(key) for key in kept} & {"load", "delivery"}
        assert kept.items() >= {
            (knot.key, (knot.count, knot.sure, knot.held)) for knot in whole.knots
            if knot.key in kept}, one
