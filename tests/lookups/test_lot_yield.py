"""How many of a lot were there at each step."""

from app.lookups.batch_record import batch_record
from app.lookups.lot_yield import YieldAt
from app.work.put_up_weights import weigh_put_up
from tests.full_lot import FullLot
from tests.makers import EACH_MG, Studio


def yields_of(studio: Studio, lot: int) -> dict[str, YieldAt]:
    one = studio.book.ask(batch_record, lot, studio.clock.now)
    return {step.step: step for step in one.yields}


def test_each_step_counts_every_skein_once_against_what_was_expected(studio: Studio) -> None:
    full = FullLot(studio)
    found = yields_of(studio, full.lot)
    assert {step: (one.least, one.most, one.expected) for step, one in found.items()} == {
        "wound": (12, 12, 12), "in the bath": (12, 12, 12), "hung": (12, 12, 12),
        "counted": (11, 11, 12), "tagged": (11, 11, 12)}
    assert (found["wound"].mg, found["counted"].mg) == (12 * EACH_MG, 11 * EACH_MG)
    assert (found["counted"].people, found["hung"].people) == (("TW",), ("WS",))


def test_ties_are_counted_pile_by_pile_and_stay_known_after_the_tags(studio: Studio) -> None:
    full = FullLot(studio)
    one = studio.book.ask(batch_record, full.lot, studio.clock.now)
    assert [(count.ties, count.count) for count in one.counts] == [("red", 6), ("blue", 5)]


def test_a_pile_of_two_lots_gives_bounds_and_no_weight(studio: Studio) -> None:
    rows = [studio.wind(studio.cone(), 4), studio.wind(studio.cone(), 3)]
    lots = [studio.dye(row) for row in rows]
    pool = studio.mix(*rows)
    studio.finish(pool, red=5)
    counted = yields_of(studio, lots[0])["counted"]
    assert (counted.least, counted.most, counted.mg) == (2, 4, None)


def test_a_step_nobody_wrote_has_no_time(studio: Studio) -> None:
    lot = studio.dye(studio.wind(studio.cone(), 2))
    found = yields_of(studio, lot)
    assert [(found[step].most, found[step].at) for step in ("hung", "counted", "tagged")] == [
        (0, None)] * 3


def test_what_a_put_up_weighed_at_the_tag_table_stands_among_the_weights(studio: Studio) -> None:
    lot, (skein, _) = studio.tagged(studio.cone(), 2)
    studio.do(weigh_put_up, skein, 97_200)
    one = studio.book.ask(batch_record, lot, studio.clock.now)
    assert [(weight.mg, weight.person) for weight in one.weights] == [(97_200, "OW")]
