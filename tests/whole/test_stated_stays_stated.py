"""What a customer states stays stated: no later deed makes it proven by itself."""

from collections.abc import Callable, Sequence
from datetime import timedelta
from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy import Connection, select

from app.lookups.reorder import Asked, reorder
from app.problems import Refused
from app.records import BASES, Whereabouts, stronger_first
from app.store.book import Book
from app.work.inspecting import VerdictIn, decide
from app.work.matching import find, is_one_of
from app.work.moving import To, call_second, move, put_by
from app.work.returning import came_back
from app.work.selling import sell
from tests.calculations.shades import TEAL
from tests.large_book import copy_of
from tests.lookups.cards import read_lot
from tests.lookups.shop import shelved
from tests.makers import Clock, Studio

DEEDS: dict[str, Callable[[Studio, int, int], object]] = {
    "shelve": lambda s, row, shelf: s.do(move, [row], To("shelf", place=shelf)),
    "put by": lambda s, row, shelf: s.do(
        put_by, [row], None, s.clock.now + timedelta(days=7)),
    "sell": lambda s, row, shelf: s.do(sell, [row]),
    "comes back": lambda s, row, shelf: s.do(came_back, [row]),
    "second": lambda s, row, shelf: s.do(call_second, [row], "a knot"),
    "read": lambda s, row, shelf: read_lot(s, 1, TEAL["P"].lab),
    "pass": lambda s, row, shelf: s.do(decide, 1, VerdictIn("standard")),
}


def a_shelf(connection: Connection) -> int | None:
    return connection.execute(select(Whereabouts.place).where(
        Whereabouts.place.is_not(None))).scalars().first()


@settings(max_examples=12, deadline=None, derandomize=True, suppress_health_check=[
    HealthCheck.function_scoped_fixture])
@given(names=st.lists(st.sampled_from(sorted(DEEDS)), min_size=1, max_size=6),
       basis=st.sampled_from(BASES))
def test_a_find_that_was_matched_by_words_is_never_known_better(
    studio_file: Path, tmp_path: Path, names: Sequence[str], basis: str
) -> None:
    book = Book(copy_of(studio_file, tmp_path), Clock())
    studio = Studio(book, furnished=True)
    (_, skeins), _ = shelved(studio, 2, 2)
    shelf = book.ask(a_shelf) or 0
    studio.do(sell, skeins)
    found = studio.do(find, 1, 97_000, "skein")
    studio.do(is_one_of, found, skeins, "stated")
    for name in names:
        try:
            DEEDS[name](studio, found, shelf)
        except Refused:
            continue
        for kind in ("cone", "lot"):
            assert [link.basis for link in studio.origins(found, kind)] == ["stated"]
    said = book.ask(reorder, Asked(lot=1, skeins=2, basis=basis), studio.clock.now)
    assert stronger_first(said.basis) == stronger_first(basis)
    book.close()
