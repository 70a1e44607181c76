"""What all records share: moments of one width, trust in order, names for every constraint."""

from datetime import UTC, datetime, timedelta, timezone

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sqlalchemy.dialects import postgresql, sqlite

from app.records import BASES, Record, moment_text, stronger_first
from app.records.base import Moment

moments = st.datetimes(timezones=st.sampled_from(
    [UTC, timezone(timedelta(hours=2)), timezone(timedelta(hours=-11, minutes=-30))]),
    min_value=datetime(1971, 1, 1), max_value=datetime(2199, 1, 1))  # noqa: DTZ001


@given(moments, moments)
def test_the_order_of_texts_is_the_order_of_time(one: datetime, other: datetime) -> None:
    assert (moment_text(one) < moment_text(other)) is (one < other)
    assert len(moment_text(one)) == len(moment_text(other)) == 27


@given(moments)
def test_a_moment_comes_back_as_it_went_in(moment: datetime) -> None:
    kept = Moment().process_bind_param(moment, sqlite.dialect())
    assert Moment().process_result_value(kept, sqlite.dialect()) == moment


def test_a_moment_without_a_time_zone_is_not_kept() -> None:
    with pytest.raises(ValueError, match="needs a time zone"):
        moment_text(datetime(2026, 4, 6))  # noqa: DTZ001


def test_a_server_keeps_moments_as_moments() -> None:
    noon = datetime(2026, 4, 6, 14, tzinfo=timezone(timedelta(hours=2)))
    kept = Moment().process_bind_param(noon, postgresql.dialect())
    assert (kept, kept.tzinfo) == (noon, UTC)
    assert Moment().process_bind_param(None, postgresql.dialect()) is None
    assert Moment().process_result_value(noon, postgresql.dialect()) == noon


def test_trust_falls_from_what_was_scanned_to_what_was_stated() -> None:
    assert sorted(set(BASES), key=stronger_first) == [
        "scanned", "counted", "recognised", "matched", "stated"]


@pytest.mark.parametrize("table", Record.metadata.sorted_tables, ids=lambda table: table.name)
def test_every_constraint_and_index_has_a_name(table: object) -> None:
    for kept in (*table.constraints, *table.indexes):  # type: ignore[attr-defined]
        assert kept.name
