"""What is left of every lot at once is what each has alone."""

from app.calculations.codes import Kind
from app.lookups.free_counts import free_counts
from app.lookups.left_to_sell import left_to_sell
from app.work.bundling import make_plates
from app.work.holding import hold
from app.work.moving import To, move
from app.work.selling import OrderIn, Wanted, place_order
from tests.makers import Studio


def test_mixed_yarn_on_hold_promises_and_several_lots_are_each_as_alone(studio: Studio) -> None:
    (shelf,) = studio.do(make_plates, Kind.SHELF, [3])
    a, b, c = studio.cones(3)
    pool = studio.mix(studio.wind(a, 4), studio.wind(b, 3))
    mixed = studio.dye(pool)
    (pile,) = studio.finish(pool, red=7)
    alone, skeins = studio.tagged(c, 6)
    studio.do(move, [*studio.tag(pile, 7), *skeins], To("shelf", place=shelf))
    studio.do(place_order, OrderIn("1", studio.clock.now, "web", (Wanted("2", 2, alone),)))

    def left() -> dict[int, int]:
        return {one.lot: one.left for one in studio.book.ask(free_counts)}

    assert left() == {mixed: 7, alone: 4}
    studio.do(hold, "cone", a, "oil")
    assert left() == {lot: studio.book.ask(left_to_sell, lot).count for lot in (mixed, alone)}
    assert left() == {mixed: 0, alone: 4}
