"""Holds in a branching trail: where they were placed, and how many skeins they reach."""

from app.lookups.certainty import held_by
from app.lookups.graph_held import FREE, Held, HeldHere
from app.lookups.graph_ways import web
from app.lookups.graph_web import Centre
from app.work.holding import clear, hold
from tests.lookups.graphs import mixed_pot, of_kind, trail_of
from tests.makers import Studio


def test_a_hold_reaches_as_the_thread_says(studio: Studio) -> None:
    cones, lot, skeins = mixed_pot(studio)
    stop = studio.do(hold, "cone", cones[0], "moths")
    studio.do(clear, stop, skeins[3], "looked at in daylight")
    made = studio.book.ask(web, Centre("lot", (lot,)))
    held = Held(made)
    rows = [row for row in skeins if row in made.found.count]
    assert skeins[3] in rows
    assert {row: held.reaches(row) for row in rows} == {
        row: bool(held_by(made.found, row)) for row in rows}
    assert not held.reaches(skeins[3])


def test_of_what_is_folded_it_is_said_how_many_a_hold_reaches(studio: Studio) -> None:
    cone = studio.cone()
    lot, skeins = studio.tagged(cone, 9)
    for skein in skeins[:2]:
        studio.do(hold, "yarn", skein, "a knot")
    table = of_kind(trail_of(studio, "lot", lot), "table")
    assert (table.folded, table.held) == (9, HeldHere("here", 2))
    stop = studio.do(hold, "cone", cone, "oil")
    for skein in skeins[2:6]:
        studio.do(clear, stop, skein, "looked at under the lamp")
    assert of_kind(trail_of(studio, "lot", lot), "dye lot").held == HeldHere("below", 9)


def test_without_a_hold_nothing_is_asked(studio: Studio) -> None:
    _, lot, _ = mixed_pot(studio)
    assert {knot.held for knot in trail_of(studio, "lot", lot).knots} == {FREE}
