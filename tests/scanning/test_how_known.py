"""Certainty never rises by itself: what was seen on a photograph is as stated."""

from collections.abc import Callable, Sequence
from datetime import timedelta
from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy import Connection, select

from app.problems import Refused
from app.records import BASES, Sighting
from app.scanning.from_photo import Shown
from app.scanning.how_known import BASIS_OF, Came
from app.scanning.photo_codes import Seen
from app.scanning.resolve import resolve
from app.store.book import Book
from app.work.inspecting import VerdictIn, decide
from app.work.matching import find, is_one_of
from app.work.moving import To, call_second, move, put_by
from app.work.reporting import FaultIn, report_fault
from app.work.returning import came_back
from app.work.selling import sell
from tests.large_book import copy_of
from tests.lookups.shop import shelved
from tests.makers import Clock, Studio


def test_every_way_has_a_basis_and_only_a_scan_proves() -> None:
    assert set(BASIS_OF) == set(Came)
    assert set(BASIS_OF.values()) <= set(BASES)
    assert [way for way, basis in BASIS_OF.items() if basis != "stated"] == [Came.SCAN]


DEEDS: dict[str, Callable[[Studio, int], object]] = {
    "shelve": lambda s, row: s.do(move, [row], To("table")),
    "put by": lambda s, row: s.do(put_by, [row], None, s.clock.now + timedelta(days=7)),
    "sell": lambda s, row: s.do(sell, [row]),
    "comes back": lambda s, row: s.do(came_back, [row]),
    "second": lambda s, row: s.do(call_second, [row], "a knot"),
    "judge": lambda s, row: s.do(decide, 1, VerdictIn("standard")),
    "photo again": lambda s, row: s.do(report_fault, FaultIn("stain", "customer"), [row],
                                       BASIS_OF[Came.PHOTO]),
    "scanned at the counter": lambda s, row: s.book.ask(resolve, "2615R6F", False),
}
"""What happens to a skein and to the book; none of it is a deed that says what the find is."""


def bases_of_sightings(connection: Connection, yarn: int) -> set[str]:
    return set(connection.execute(select(Sighting.basis).where(Sighting.yarn == yarn)).scalars())


@settings(max_examples=3, deadline=None, derandomize=True, suppress_health_check=[
    HealthCheck.function_scoped_fixture])
@given(names=st.lists(st.sampled_from(sorted(DEEDS)), min_size=4, max_size=8))
def test_a_find_known_by_a_photograph_is_never_known_better_by_itself(
    studio_file: Path, tmp_path: Path, names: Sequence[str]
) -> None:
    book = Book(copy_of(studio_file, tmp_path), Clock())
    studio = Studio(book, furnished=True)
    (_, skeins), _ = shelved(studio, 2, 2)
    studio.do(sell, skeins)
    found = studio.do(find, 1, 97_000, "skein")
    seen = Shown(Seen(studio.code(1) or "", 0.5, 0.5), book.ask(resolve, studio.code(1), False))
    assert seen.answer.found is not None
    studio.do(is_one_of, found, skeins, seen.basis)
    studio.do(report_fault, FaultIn("streak", "customer"), [found], seen.basis)
    for name in names:
        try:
            DEEDS[name](studio, found)
        except Refused:
            continue
        assert {link.basis for kind in ("cone", "lot")
                for link in studio.origins(found, kind)} == {"stated"}
        assert book.ask(bases_of_sightings, found) == {"stated"}
    book.close()
