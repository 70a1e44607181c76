"""People: initials burnt for ever; value and salt are there together or not at all."""

from typing import Any

import pytest

from app.records import Person, Personal
from app.store.deed import open_names, table_of
from tests.makers import Studio
from tests.records.forbidden import burnt_for_ever, forbids, forbids_twice


def personal(**changes: Any) -> Personal:
    return Personal(**{"person": 1, "field": "name", "value": "Ada", "salt": "s", "digest": "d",
                       **changes})


def test_initials_are_burnt_for_ever(studio: Studio) -> None:
    forbids_twice(studio, lambda: Person(initials="LR"))
    burnt_for_ever(studio, lambda: Person(initials="LR"))


@pytest.mark.parametrize("half", [{"value": None}, {"salt": None}])
def test_value_and_salt_go_together(studio: Studio, half: dict[str, None]) -> None:
    forbids(studio, "erased_together", personal(**half))


def test_a_personal_field_is_about_one(studio: Studio) -> None:
    forbids(studio, "about_one", personal(person=None))


def test_the_value_and_its_salt_are_what_is_never_told() -> None:
    columns = {column.name for column in table_of(Personal).columns}
    assert columns - set(open_names(table_of(Personal))) == {"value", "salt"}
