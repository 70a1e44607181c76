"""The journal as people read it."""

from app.lookups.recent import book_began, entries, entries_that_wrote, head
from tests.makers import Studio


def test_the_newest_entries_come_first(studio: Studio) -> None:
    studio.wind(studio.cone(), 2)
    found = studio.book.ask(entries, limit=2)
    assert [entry.said for entry in found] == [
        "wound 2 skeins of C·0001·7, red ties", "took in 1 cone of Tarnfield 4-ply, note 2241"]
    assert (found[0].person, found[0].station, found[0].undone) == ("OW", "desk", False)
    assert found[0].happened == found[0].written == studio.clock.now


def test_an_entry_that_was_taken_back_says_so(studio: Studio) -> None:
    studio.wind(studio.cone(), 2)
    studio.book.undo(studio.last(), by=studio.by, reason="other cone")
    took_back, wound, *_ = studio.book.ask(entries)
    assert (took_back.said, took_back.reason, took_back.undone) == (
        "took back: wound 2 skeins of C·0001·7, red ties", "other cone", False)
    assert wound.undone


def test_what_was_off_stays_with_its_entry(studio: Studio) -> None:
    studio.wind(studio.cone(), 20)
    (entry,) = studio.book.ask(entries, limit=1)
    assert entry.findings == (
        "C·0001·7 gave 2062 g, and held 1427 g at standard moisture: count again, or another "
        "cone was on the reel.",)


def test_the_history_of_a_thing_is_every_entry_that_wrote_it(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 3)
    studio.dye(group)
    studio.finish(group, red=3)
    wrote = studio.book.ask(entries_that_wrote, {"yarn": [group]})
    assert [entry.said.split()[0] for entry in wrote] == ["wound", "counted"]
    assert studio.book.ask(entries_that_wrote, {"yarn": [99]}) == ()


def test_the_head_is_the_last_entry(studio: Studio) -> None:
    seq, digest = studio.book.ask(head)
    assert (seq, len(digest)) == (5, 64)
    studio.wind(studio.cone(), 1)
    assert studio.book.ask(head)[0] == 7
    assert studio.book.ask(head)[1] != digest


def test_the_book_began_with_the_first_thing_that_happened(studio: Studio) -> None:
    began = studio.book.ask(book_began)
    assert began is not None
    assert began < studio.clock.now
    studio.cone()
    assert studio.book.ask(book_began) == began
