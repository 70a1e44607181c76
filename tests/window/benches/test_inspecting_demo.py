"""What is planted in the demo studio's shades, found through the window."""

import shutil
from datetime import UTC, datetime

import pytest

from app.store.book import Book
from app.window.parts.swatch import Swatch
from tests.makers import Clock
from tests.window.benches.at_work import plate
from tests.window.benches.inspecting_hands import open_inspecting


@pytest.fixture
def at(qtbot, settings, demo_folder, tmp_path):
    """The demo's book, copied, in the window."""
    path = tmp_path / "demo.book"
    shutil.copy(demo_folder / "quernlow-dyeyard.book", path)
    book = Book(path, Clock(datetime(2026, 5, 18, 8, tzinfo=UTC)))
    yield from open_inspecting(qtbot, settings, book)


def held_against(at, code):
    """Tap this lot in the list of the pictures; what is said of the two."""
    row = next(row for row, step in zip(at.page.lots.rows, at.page.shades.lots, strict=True)
               if step.code == code)
    at.click(row)
    return f"{at.page.pair_words.text()} {at.page.fine.text()}"


def test_the_weak_jar_shows_as_two_lots_that_match_each_other_alone(at):
    at.scan("2612F5F")
    assert at.number == "2.5 ± 0.5 from the standard: Only as a second colour."
    assert "By eye: 4-5" in at.words()  # passed under the kitchen tube
    at.press("F10")
    said = held_against(at, "26·06·H3W")
    assert said.startswith("26·12·F5F and 26·06·H3W: 2.6 ± 0.5 apart: only as a second colour")
    assert "CIEDE2000 2.57" in said
    assert "CIEDE2000 0.30" in held_against(at, "26·13·Y8T")
    assert "26·12·F5F and 26·13·Y8T go together, 0.30 apart at most." in at.page.groups.text()


def test_one_plan_in_two_pots_is_two_sisters_near_each_other(at):
    at.scan("2614K14")
    at.press("F10")
    assert held_against(at, "26·14·M32").startswith(
        "26·14·K14 and 26·14·M32: 0.6 ± 0.5 apart: looks the same; as the readings may err, "
        "alternate two rows")


def test_a_short_reorder_shows_what_is_offered_beside_what_is_in_hand(at):
    at.enter(9)
    at.scan("2615R6F", plate(2))
    at._qtbot.waitUntil(lambda: "wanted" in at.words())
    said = [one.accessibleName() for one in at.bench.findChildren(Swatch) if one.isVisible()]
    assert "26·15·R6F beside what is offered, 0.1 ± 0.5: swatch" in said
    assert "26·06·H3W, Sluice Keeper’s Glove, 4 free: 0.1 ± 0.5, looks the same" in at.words()
