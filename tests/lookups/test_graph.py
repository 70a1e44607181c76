"""The branching trail: both sides of a thing, folded, with counts and certainty."""

from app.lookups.graph import FOLDED_FROM, SINGLY
from app.lookups.graph_held import HeldHere
from app.lookups.graph_web import HERE
from app.work.holding import hold
from tests.lookups.graphs import mixed_pot, of_kind, stations, sure, trail_of
from tests.makers import Studio


def test_a_cone_of_a_mixed_pot_leads_to_all_that_may_be_of_it(studio: Studio) -> None:
    cones, _, _ = mixed_pot(studio)
    found = trail_of(studio, "cone", cones[0])
    assert stations(found) >= {
        ("delivery", "from", 0, "known"), ("maker's batch", "from", 0, "known"),
        ("cone", "here", 7, "known"), ("wound", "to", 7, "known"),
        ("mixed on a cord", "to", 12, "one of a pool"), ("dye lot", "to", 12, "one of a pool"),
        ("wash load", "to", 12, "one of a pool"), ("table", "to", 8, "one of a pool"),
        ("given", "to", 4, "one of a pool")}
    together = found.together
    assert (together.least, together.most, together.of) == (7, 7, 12)
    given = of_kind(found, "given")
    assert (given.sure.least, given.sure.most, given.folded) == (0, 4, 4)


def test_a_skein_of_a_mixed_pot_comes_from_either_cone(studio: Studio) -> None:
    cones, lot, skeins = mixed_pot(studio)
    found = trail_of(studio, "yarn", skeins[0])
    shares = {knot.key: (knot.sure.word, round(float(knot.sure.expected), 3))
              for knot in found.knots if knot.named.kind == "cone"}
    assert shares == {f"cone:{cones[0]}": ("one of a pool", 0.583),
                      f"cone:{cones[1]}": ("one of a pool", 0.417)}
    assert of_kind(found, "dye lot").key == f"lot:{lot}"
    assert of_kind(found, "dye lot").sure.word == "known"
    assert [one.end for one in found.strands if one.start == HERE] == [f"left:{skeins[0]}"]


def test_a_join_is_partly_of_each_cone(studio: Studio) -> None:
    one, other = studio.cones(2)
    group = studio.join([(one, 240_000), (other, 160_000)])
    studio.dye(group)
    found = trail_of(studio, "lot", 1)
    assert sure(found, f"cone:{one}", f"yarn:{group}") == "partly"
    assert {round(float(knot.sure.share), 2) for knot in found.knots
            if knot.named.kind == "cone"} == {0.6, 0.4}


def test_many_skeins_are_folded_and_opened_on_demand(studio: Studio) -> None:
    cone = studio.cone()
    _, skeins = studio.tagged(cone, 9)
    found = trail_of(studio, "cone", cone)
    folded = next(knot for knot in found.knots if knot.folded)
    assert (folded.key, folded.count, folded.folded) == ("fold:left/table/skein", 9, 9)
    opened = trail_of(studio, "cone", cone, opened=frozenset({"left/table/skein"}))
    singly = {knot.key for knot in opened.knots if knot.stage == "left/table/skein"}
    assert singly == {f"left:{one}" for one in skeins}
    assert FOLDED_FROM < len(skeins) < SINGLY


def test_what_is_more_than_can_be_seen_stays_folded(studio: Studio) -> None:
    cone = studio.cone()
    studio.tagged(cone, SINGLY + 4)
    opened = trail_of(studio, "cone", cone, opened=frozenset({"left/table/skein"}))
    rest = next(knot for knot in opened.knots if knot.folded)
    assert (rest.folded, rest.of, rest.count) == (4, SINGLY + 4, 4)
    assert sum(knot.stage == "left/table/skein" for knot in opened.knots) == SINGLY


def test_a_hold_hangs_where_it_was_placed_and_on_all_below(studio: Studio) -> None:
    cones, lot, _ = mixed_pot(studio)
    studio.do(hold, "cone", cones[0], "moths")
    found = trail_of(studio, "lot", lot)
    assert {knot.key: knot.held.where for knot in found.knots if knot.named.kind == "cone"} == {
        f"cone:{cones[0]}": "here", f"cone:{cones[1]}": ""}
    assert found.here.held == HeldHere("below", 12)
    assert of_kind(found, "table").held == HeldHere("below", 8)


def test_the_skeins_of_all_stations_at_the_right_end_are_all_there_are(studio: Studio) -> None:
    cones, lot, _ = mixed_pot(studio)
    for found in (trail_of(studio, "cone", cones[1]), trail_of(studio, "lot", lot)):
        starts = {one.start for one in found.strands}
        assert sum(knot.count for knot in found.knots if knot.key not in starts) == 12
        assert found.together.of == 12
