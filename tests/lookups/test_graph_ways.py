"""The whole thread around a thing: what is struck is left out, what was dyed twice goes on."""

from app.lookups.graph_ways import web
from app.lookups.graph_web import HERE, Centre
from app.work.matching import find, is_one_of
from app.work.remaking import gather
from tests.lookups.graphs import mixed_pot, of_kind, said, trail_of
from tests.makers import Studio


def test_yarn_that_was_dyed_again_leads_through_both_lots(studio: Studio) -> None:
    cone = studio.cone()
    first, skeins = studio.tagged(cone, 3)
    cord = studio.do(gather, skeins)
    second = studio.dye(cord, pot=studio.pot)
    found = trail_of(studio, "cone", cone)
    ends = [(one.start, one.end) for one in found.strands]
    assert (f"yarn:{cord}", f"lot:{second}") in ends
    assert [start for start, end in ends if end == f"lot:{first}"] != []
    assert {f"lot:{first}", f"lot:{second}"} <= {knot.key for knot in found.knots}
    again = trail_of(studio, "lot", second)
    assert {knot.side for knot in again.knots if knot.key == f"lot:{first}"} == {"from"}


def test_what_was_taken_back_is_no_station(studio: Studio) -> None:
    cone = studio.cone()
    studio.wind(cone, 4)
    studio.undo()
    assert [one.start for one in trail_of(studio, "cone", cone).strands if one.start == HERE] == []


def test_every_kind_of_station_can_be_in_the_middle(studio: Studio) -> None:
    mixed_pot(studio)
    for kind, thing in (("cone", 1), ("lot", 1), ("bath", 1), ("load", 1), ("supplier_lot", 1),
                        ("delivery", 1), ("yarn", 1)):
        found = studio.book.ask(web, Centre(kind, (thing,)))
        assert any(HERE in link for link in (*found.left, *found.right)), kind
        assert len(found.leaves) == 12, kind


def test_a_find_that_is_one_of_the_skeins_beside_it_is_drawn_after_them(studio: Studio) -> None:
    cone = studio.cone()
    lot, skeins = studio.tagged(cone, 4)
    back = studio.do(find, 1, 97_000)
    studio.do(is_one_of, back, skeins)
    found = trail_of(studio, "lot", lot)
    states = [knot for knot in found.knots if knot.key.startswith(("left:", "fold:left/"))]
    assert {(knot.named.kind, knot.count) for knot in states} == {("table", 4), ("table", 1)}
    assert found.together.of == 4


def test_what_was_told_to_be_of_another_cone_is_not_drawn(studio: Studio) -> None:
    """3 and 3 in one pot, told apart by their ties at the count: a pile each."""
    cones = studio.cones(2)
    rows = [studio.wind(cone, 3, tie) for cone, tie in zip(cones, ("red", "blue"), strict=True)]
    studio.dye(*rows)
    studio.finish(studio.mix(*rows), red=3, blue=3)
    found = trail_of(studio, "cone", cones[0])
    assert (found.together.least, found.together.most, found.together.of) == (3, 3, 3)
    assert said(of_kind(found, "piled")) == ("piled", "to", 3, "known")
    assert said(of_kind(found, "mixed on a cord")) == (
        "mixed on a cord", "to", 6, "one of a pool")
