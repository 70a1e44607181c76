"""A journal head scanned from paper: whether paper and book agree, and no code is made of it."""

from app.documents.batch_record import journal_code
from app.lookups.recent import head
from app.scanning.resolve import resolve


def said(studio, text):
    found = studio.book.ask(resolve, text, False)
    assert found.found is None
    return found.sentence


def test_a_head_of_this_book_agrees_and_others_do_not(studio):
    entry, digest = studio.book.ask(head)
    assert said(studio, journal_code(entry, digest)).startswith(
        f"Paper and book agree: entry {entry} ")
    studio.cone()
    assert said(studio, journal_code(entry, digest)).startswith("Paper and book agree")
    assert "is not the one" in said(studio, journal_code(entry - 1, digest))
    assert "has no such entry" in said(studio, journal_code(entry + 99, digest))
    assert "agree" not in said(studio, journal_code(entry, digest)[:-1])
