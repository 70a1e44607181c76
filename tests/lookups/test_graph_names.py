"""What stations are called, and the code that opens each."""

from app.lookups.graph_names import kinds_of_yarn
from app.lookups.thread import thread
from tests.deeds import into_load, send
from tests.lookups.graphs import of_kind, trail_of
from tests.makers import Studio


def test_stations_bear_the_names_that_people_know(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 2, disc=studio.discs[0])
    lot = studio.dye(group)
    wash = studio.do(into_load, "wash", [group])
    (pile,) = studio.finish(group, red=2)
    skeins = studio.tag(pile, 2)
    studio.do(send, skeins[:1])
    found = trail_of(studio, "lot", lot)
    named = {knot.named.kind: knot.named for knot in found.knots}
    assert (named["cone"].name, named["cone"].code) == ("C·0001·7", "C00017")
    assert (named["wound"].name, named["wound"].note) == ("disc 031", "red tie")
    assert named["dye lot"].code == studio.code(lot)
    assert named["wash load"].note.endswith(f"load {wash}")
    assert (named["maker's batch"].name, named["maker's batch"].note) == ("A-203", "Aske Mill")
    sent = of_kind(found, "sent, buyer not known")
    assert sent.named.note.startswith("order ")
    assert sent.named.name


def test_what_is_not_known_is_said(studio: Studio) -> None:
    studio.dye(studio.wind(studio.cone(), 2))
    found = trail_of(studio, "lot", 1)
    fills = of_kind(found, "jar fills")
    assert (fills.named.name, fills.sure.word) == ("not known", "not known")


def test_rows_are_called_by_how_they_came_about(studio: Studio) -> None:
    one, other = studio.wind(studio.cone(), 4), studio.wind(studio.cone(), 3)
    part, _ = studio.split(one, 2, 2)
    pool = studio.mix(part, other)
    kinds = studio.book.ask(lambda c: kinds_of_yarn(c, thread(c, [pool]), [one, part, pool]))
    assert kinds == {one: "wound", part: "part of a cord", pool: "mixed on a cord"}
