"""Where the thread begins: batches and deliveries of cones, powder tipped into jars."""

from app.work.jars import Refill, refill
from tests.dyehouse import Dyehouse
from tests.lookups.graphs import mixed_pot, trail_of
from tests.makers import Studio


def test_the_cones_of_a_lot_lead_back_to_their_delivery_and_batch(studio: Studio) -> None:
    cones, lot, _ = mixed_pot(studio)
    found = trail_of(studio, "lot", lot)
    ends = {(one.start, one.end) for one in found.strands}
    assert {("supplier_lot:1", "delivery:1"), *(("delivery:1", f"cone:{cone}") for cone in cones)
            } <= ends
    delivery = next(knot for knot in found.knots if knot.key == "delivery:1")
    assert (delivery.sure.word, delivery.count) == ("known", 12)


def test_a_lot_leads_back_through_a_refill_to_the_older_powder(studio: Studio) -> None:
    house = Dyehouse(studio)
    old = house.fills[1]
    new = studio.do(refill, 1, Refill("q", 500_000))
    lot = house.dye(house.weighed())
    found = trail_of(studio, "lot", lot)
    ends = {(one.start, one.end): one.sure.word for one in found.strands}
    assert ends[f"fill:{new}", "here"] == ends[f"fill:{old}", f"fill:{new}"] == "known"
    assert sum(end == f"fill:{old}" for _, end in ends) == 1
    assert not any(knot.named.name == "not known" for knot in found.knots)


def test_a_fill_leads_to_the_lots_that_its_powder_reached(studio: Studio) -> None:
    house = Dyehouse(studio)
    lots = [house.dye(house.weighed()), house.dye(house.weighed())]
    other = house.dye(house.weighed(jars=(2, 3)))
    found = trail_of(studio, "fill", house.fills[1])
    keys = {knot.key for knot in found.knots}
    assert {f"lot:{lot}" for lot in lots} <= keys
    assert f"lot:{other}" not in keys
    assert {knot.named.kind for knot in found.knots if knot.side == "from"} == {"maker's batch"}
