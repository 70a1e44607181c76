"""All yarn is one table and one link: whole members, whole milligrams, each link once."""

from typing import Any

from app.records import Draw, Part, Told, Waste, Yarn
from tests.makers import Studio
from tests.records.forbidden import forbids, forbids_twice


def yarn(**changes: Any) -> Yarn:
    return Yarn(**{"kind": "group", "base": 1, "put_up": "skein", "count": 1, "mg": 1, **changes})


def two_rows(studio: Studio) -> tuple[int, int]:
    return studio.wind(studio.cone(), 2), studio.wind(studio.cone(), 2)


def test_a_row_is_so_many_skeins_of_a_known_kind(studio: Studio) -> None:
    forbids(studio, "ck_yarn_kind", yarn(kind="heap"))
    forbids(studio, "ck_yarn_is_something", yarn(count=0))
    forbids(studio, "ck_yarn_is_something", yarn(mg=-1))


def test_a_tagged_skein_is_a_row_of_its_own(studio: Studio) -> None:
    forbids(studio, "one_skein_a_row", yarn(kind="skein", count=2))


def test_a_draw_takes_metres_and_grams(studio: Studio) -> None:
    row, _ = two_rows(studio)
    draw = {"cone": 1, "yarn": row, "mg": 1, "mm": 1, "basis": "scanned"}
    for nothing in ({"mg": 0}, {"mm": 0}):
        forbids(studio, "draws_something", Draw(**{**draw, **nothing}))
    forbids(studio, "ck_draw_basis", Draw(**{**draw, "basis": "guessed"}))


def test_a_part_comes_out_of_another_row_once(studio: Studio) -> None:
    a, b = two_rows(studio)
    part = {"child": b, "parent": a, "took": 1, "gave": 1, "mg": 1, "basis": "counted"}
    forbids(studio, "not_of_itself", Part(**{**part, "child": a}))
    forbids(studio, "ck_part_is_something", Part(**{**part, "gave": 0}))
    forbids(studio, "ck_part_is_something", Part(**{**part, "took": -1}))
    forbids_twice(studio, lambda: Part(**part))


def test_a_row_is_told_once_at_a_pool(studio: Studio) -> None:
    a, b = two_rows(studio)
    told = {"yarn": b, "pool": a, "parent": a, "count": 1, "basis": "recognised"}
    forbids_twice(studio, lambda: Told(**told))
    forbids(studio, "tells_of_some", Told(**{**told, "count": 0}))


def test_waste_is_of_a_cone_or_of_yarn_and_weighs_something(studio: Studio) -> None:
    row, _ = two_rows(studio)
    forbids(studio, "of_one_thing", Waste(mg=1, why="dust"))
    forbids(studio, "of_one_thing", Waste(cone=1, yarn=row, mg=1, why="dust"))
    forbids(studio, "weighs_something", Waste(cone=1, mg=0, why="dust"))
