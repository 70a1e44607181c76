"""How sure many rows are together: the same as asked one by one of the whole thread."""

from app.lookups.certainty import links_of
from app.lookups.graph_sure import WHOLLY, Asking, how_sure
from app.lookups.thread import thread
from tests.lookups.graphs import mixed_pot
from tests.makers import Studio


def test_many_rows_are_as_sure_as_the_thread_says(studio: Studio) -> None:
    cones, lot, skeins = mixed_pot(studio)
    found = studio.book.ask(thread, skeins)
    members = dict.fromkeys(skeins[:6], 1)
    for kind, thing in (("cone", cones[0]), ("cone", cones[1]), ("lot", lot)):
        (link,) = [one for one in links_of(found, members, kind) if one.thing == thing]
        sure = Asking(found, frozenset({(kind, thing)})).of(members)
        assert (sure.word, sure.least, sure.most, sure.of, sure.expected, sure.share) == (
            link.word, link.least, link.most, link.of, link.expected, link.share)


def test_of_two_cones_together_all_skeins_are_known(studio: Studio) -> None:
    cones, _, skeins = mixed_pot(studio)
    found = studio.book.ask(thread, skeins)
    both = frozenset(("cone", cone) for cone in cones)
    sure = how_sure(found, dict.fromkeys(skeins, 1), both)
    assert (sure.word, sure.least, sure.most) == ("known", 12, 12)
    assert how_sure(found, {}, both) == WHOLLY
