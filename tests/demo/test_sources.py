"""The studio's papers: what is read of them, and in which order."""

from datetime import UTC, datetime
from pathlib import Path

from app import paths
from app.demo.sources import cones_named, lots_named, moments, rows
from tests.small import FOLDER


def test_all_papers_are_read_in_the_order_of_time_until_the_studio_closes() -> None:
    found = moments(paths.DEMO_DATA)
    assert [one.at for one in found] == sorted(one.at for one in found)
    assert found[0].at.isocalendar().week == 6
    assert datetime(2026, 5, 15, 11, tzinfo=UTC) < found[-1].at <= datetime(
        2026, 5, 15, 11, 40, tzinfo=UTC)


def test_what_the_papers_name_is_known_beforehand() -> None:
    found = moments(paths.DEMO_DATA)
    assert {"2614T26", "2615R6F", "2617M9K"} <= lots_named(found)
    assert {52, 53, 93, 114, 115, 116, 121, 122, 139} == cones_named(found)


def test_a_folder_of_a_few_days_has_no_plan_and_no_orders() -> None:
    assert {one.line["do"] for one in moments(FOLDER)} == {
        "take in", "wind", "join", "end cone", "dye", "lift", "split", "mix", "count", "tags",
        "hold"}


def test_a_list_that_is_not_there_has_no_rows(tmp_path: Path) -> None:
    assert list(rows(tmp_path / "baths.csv")) == []


def test_every_person_who_signs_works_here_then() -> None:
    for one in moments(paths.DEMO_DATA):
        assert one.line["by"] in {"OW", "AD", "WN", "DA", "DB", "WS", "BW", "TW", "LP", "OM", "SK",
                                  "LR"}
        assert one.line["by"] != "LR" or one.at < datetime(2026, 3, 13, 17, tzinfo=UTC)
