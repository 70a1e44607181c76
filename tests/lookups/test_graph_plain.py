"""Plain skeins are known by their pile; those of which more is known are not plain."""

from app.lookups.graph_plain import known_as, plain_skeins
from app.lookups.present import leaves
from app.work.holding import clear, hold
from tests.makers import Studio


def test_a_skein_that_was_cleared_or_is_asked_for_is_not_plain(studio: Studio) -> None:
    lot, skeins = studio.tagged(studio.cone(), 4)
    stop = studio.do(hold, "lot", lot, "streaks")
    studio.do(clear, stop, skeins[0], "looked at in daylight")
    found = studio.book.ask(leaves, skeins)
    plain = studio.book.ask(plain_skeins, found, [skeins[1]])
    assert plain.keys() == set(skeins[2:])
    assert len(set(plain.values())) == 1


def test_plain_skeins_count_as_members_of_their_pile() -> None:
    assert known_as({1: 1, 2: 1, 9: 3}, {1: 7, 2: 7}) == {7: 2, 9: 3}
