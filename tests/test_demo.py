"""The invented studio: its days are lived by the program's own deeds, the same every time."""

import os
import sqlite3
import subprocess
import sys
import tomllib
from contextlib import closing
from pathlib import Path

import pytest

from app import paths
from app.calculations.units import grams
from app.demo import FIRST_TOKEN, Lived, live
from app.lookups.cones import cone_facts, cones_on_hand
from app.lookups.recent import entries
from app.lookups.things import by_code
from app.store.book import Book
from app.store.journal import verify

ROOT = Path(__file__).parent.parent


@pytest.fixture(scope="module")
def studio(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Lived]:
    """The days, lived once."""
    path = tmp_path_factory.mktemp("demo") / "a.book"
    return path, live(path)


def head_of(path: Path) -> str:
    book = Book(path)
    try:
        return book.ask(verify).head
    finally:
        book.close()


def test_the_same_seed_gives_the_same_book_and_papers(
    studio: tuple[Path, Lived], tmp_path: Path
) -> None:
    path, lived = studio
    again = live(tmp_path / "b.book")
    assert head_of(tmp_path / "b.book") == head_of(path)
    assert [sheet.pdf for sheet in again.sheets] == [sheet.pdf for sheet in lived.sheets]


def test_another_clock_on_the_wall_gives_the_same_book(
    studio: tuple[Path, Lived], tmp_path: Path
) -> None:
    words = "import sys, pathlib, app.demo; app.demo.live(pathlib.Path(sys.argv[1]))"
    subprocess.run([sys.executable, "-c", words, str(tmp_path / "b.book")], check=True, cwd=ROOT,
                   env={**os.environ, "TZ": "Pacific/Auckland", "PYTHONHASHSEED": "7"})
    assert head_of(tmp_path / "b.book") == head_of(studio[0])


def test_another_seed_gives_other_codes(studio: tuple[Path, Lived], tmp_path: Path) -> None:
    other = live(tmp_path / "b.book", seed=7)
    assert set(other.lots) != set(studio[1].lots)
    assert len(other.lots) == len(studio[1].lots)


def test_it_is_the_small_studio_it_should_be(studio: tuple[Path, Lived]) -> None:
    lived = studio[1]
    assert (lived.notes, lived.cones, lived.skeins, len(lived.lots)) == (3, 38, 56, 7)
    assert lived.tied_on == 43
    assert sum(sheet.count for sheet in lived.sheets) == 44
    assert lived.refusals == ["HOLD: no tags are printed for this pile."]
    assert lived.held == "C0114F"


def test_most_of_it_is_plain_correct_work(studio: tuple[Path, Lived]) -> None:
    book = Book(studio[0])
    rows = book.ask(entries, 1_000)
    book.close()
    strange = [row for row in rows if row.findings or "hold" in row.said or "mixed" in row.said]
    assert 4 <= len(strange) <= len(rows) * 0.2
    assert all(row.said for row in rows)


def test_nobody_works_at_night_and_all_who_sign_work_here(studio: tuple[Path, Lived]) -> None:
    book = Book(studio[0])
    rows = book.ask(entries, 1_000)
    book.close()
    people = tomllib.loads((paths.DEMO_DATA / "studio.toml").read_text("utf-8"))["people"]
    assert {row.person for row in rows} <= set(people)
    assert all(7 <= row.happened.hour < 18 for row in rows)
    assert [row.happened for row in rows] == sorted((row.happened for row in rows), reverse=True)


def test_the_oily_cone_has_left_what_the_card_says(studio: tuple[Path, Lived]) -> None:
    book = Book(studio[0])
    found = book.ask(by_code, "C0114F")
    assert found is not None
    facts = book.ask(cone_facts, found.id)
    on_hand = book.ask(cones_on_hand)
    book.close()
    assert grams(facts.net_mg) == 1_516
    assert 317_000 <= facts.left_mm < 318_000
    assert len(on_hand) == 37  # one was wound to its end


def test_the_first_entry_shows_that_it_is_the_demo(studio: tuple[Path, Lived]) -> None:
    with closing(sqlite3.connect(studio[0])) as raw:
        assert raw.execute("SELECT token FROM deed WHERE seq = 1").fetchone() == (FIRST_TOKEN,)


def _in_srgb(lab: list[float]) -> str:
    """CIELAB for D65 and 2° as sRGB (IEC 61966-2-1; white and matrix from memory), cut off."""
    y = (lab[0] + 16) / 116
    xyz = [white * (t**3 if t > 6 / 29 else 3 * (6 / 29) ** 2 * (t - 4 / 29))
           for white, t in zip((0.95047, 1.0, 1.08883), (y + lab[1] / 500, y, y - lab[2] / 200),
                               strict=True)]
    matrix = ((3.2404542, -1.5371385, -0.4985314), (-0.9692660, 1.8760108, 0.0415560),
              (0.0556434, -0.2040259, 1.0572252))
    linear = [sum(a * b for a, b in zip(row, xyz, strict=True)) for row in matrix]
    shown = [12.92 * c if c <= 0.0031308 else 1.055 * c ** (1 / 2.4) - 0.055 for c in linear]
    return "#" + "".join(f"{round(255 * min(1.0, max(0.0, c))):02X}" for c in shown)


def test_every_swatch_is_the_colour_beside_it() -> None:
    studio = tomllib.loads((paths.DEMO_DATA / "studio.toml").read_text("utf-8"))
    assert len(studio["colourways"]) == 12
    for colourway in studio["colourways"]:
        assert colourway["swatch"] == _in_srgb(colourway["lab"])


def test_no_tag_promises_more_than_was_wound() -> None:
    studio = tomllib.loads((paths.DEMO_DATA / "studio.toml").read_text("utf-8"))
    for base in studio["bases"]:
        for put_up in base["put_ups"]:
            wound_m = put_up["turns"] * put_up["reel_m"]
            assert wound_m * base["tex"] / 1000 >= put_up["g"]
            assert wound_m * (1 - base["relax"] / 100) >= put_up["m"]
