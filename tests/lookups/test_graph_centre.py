"""What stands in the middle of a thing's trail."""

from app.lookups.fills import fill_at
from app.lookups.graph_centre import centre_of
from app.lookups.graph_web import Centre
from app.lookups.things import Found, by_code, of_lot
from tests.makers import Studio


def middle(studio: Studio, found: Found | None) -> Centre | None:
    assert found is not None
    return studio.book.ask(centre_of, found, studio.clock.now)


def test_cones_lots_skeins_and_discs_stand_for_their_yarn(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 4, disc=studio.discs[0])
    disc = studio.book.ask(by_code, studio.book.ask(
        lambda c: c.exec_driver_sql("SELECT code FROM plate WHERE id = 1").scalar()))
    assert middle(studio, disc) == Centre("yarn", (group,))
    lot = studio.dye(group)
    assert middle(studio, studio.book.ask(by_code, studio.code(lot) or "")) == Centre("lot", (lot,))
    (pile,) = studio.finish(group, red=4)
    skein = studio.tag(pile, 1)[0]
    (tag,) = studio.book.ask(of_lot, lot)
    assert middle(studio, tag) == Centre("yarn", (skein,))


def test_a_jar_that_was_never_filled_has_no_trail(studio: Studio) -> None:
    jar = Found("jar", 1, "J001H", "lemon Y1")
    assert studio.book.ask(fill_at, 1, studio.clock.now) is None
    assert middle(studio, jar) is None
    assert middle(studio, Found("shelf", 999, "S0022", "by the door")) is None
