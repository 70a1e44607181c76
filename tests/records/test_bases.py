"""Bases: one of a name, a version a number, and a put-up that is wound."""

from typing import Any

from app.records import Base, BaseVersion, PutUp
from tests.makers import Studio
from tests.records.forbidden import allows_after_undo, forbids, forbids_twice


def version(**changes: Any) -> BaseVersion:
    return BaseVersion(**{"base": 1, "number": 2, "fibre": "100 % wool", "millitex": 1, **changes})


def put_up(**changes: Any) -> PutUp:
    return PutUp(**{"base_version": 1, "name": "ball", "turns": 1, "reel_mm": 1, "nominal_mg": 1,
                    "nominal_mm": 1, **changes})


def test_a_name_is_one_base(studio: Studio) -> None:
    forbids_twice(studio, lambda: Base(name="Moorit Hill DK"))
    allows_after_undo(studio, lambda: Base(name="Moorit Hill DK"))


def test_a_number_is_one_version_of_a_base(studio: Studio) -> None:
    forbids_twice(studio, version)
    forbids(studio, "has_a_count", version(millitex=0))


def test_a_put_up_is_described_once_and_wound(studio: Studio) -> None:
    forbids_twice(studio, put_up)
    forbids(studio, "is_wound", put_up(turns=0))
    forbids(studio, "is_wound", put_up(reel_mm=0))
