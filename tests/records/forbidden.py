"""What the database itself says no to."""

from collections.abc import Callable

import pytest
from sqlalchemy.exc import IntegrityError

from app.problems import Refused
from app.records import Fact
from app.store.deed import Deed
from tests.makers import Studio


def forbids(studio: Studio, constraint: str, *rows: Fact) -> None:
    """These rows cannot stand in the book; the constraint that says so, by its name."""
    with pytest.raises(IntegrityError, match=constraint):
        studio.do(lambda deed: [deed.add(row) for row in rows])


def forbids_twice(studio: Studio, make: Callable[[], Fact]) -> None:
    """A second row like that is one too many; after the first was struck it is not."""
    def twice(deed: Deed) -> None:
        deed.add(make())
        deed.add(make())
    with pytest.raises(Refused, match="done already"):
        studio.do(twice)


def allows_after_undo(studio: Studio, make: Callable[[], Fact]) -> None:
    """What was taken back leaves room for the same again."""
    studio.do(lambda deed: deed.add(make()))
    studio.undo()
    studio.do(lambda deed: deed.add(make()))


def burnt_for_ever(studio: Studio, make: Callable[[], Fact]) -> None:
    """What was taken back is never used again."""
    studio.do(lambda deed: deed.add(make()))
    studio.undo()
    with pytest.raises(Refused, match="done already"):
        studio.do(lambda deed: deed.add(make()))
