"""demo: a folder with a book, its papers, and a tag that was traced back."""

import re
import shutil
from pathlib import Path

import pytest

from app.commands.showing import BOOK, TAGS
from app.demo import Lived
from app.lookups.book_totals import book_totals
from app.store.book import Book
from app.store.journal import verify
from app.store.opening import Claim
from tests.commands.said import Say
from tests.small import live_small


@pytest.fixture
def lived_before(demo_folder: Path, tmp_path: Path) -> Path:
    """A copy of what the demo left."""
    folder = tmp_path / "out"
    shutil.copytree(demo_folder, folder)
    return folder


def test_the_demo_leaves_its_book_and_papers_and_nothing_half(demo_folder: Path) -> None:
    names = {path.name for path in demo_folder.iterdir()}
    assert names >= {BOOK, "trace-C0114F.pdf", "tags-2615R6F.pdf", "tags-2608XKM.pdf"}
    assert not any(name.startswith("making-") for name in names)
    out = (demo_folder / "said.txt").read_text("utf-8")
    book = Book(demo_folder / BOOK)
    verdict, totals = book.ask(verify), book.ask(book_totals)
    book.close()
    for words in (f"{totals.cones} cones, by {totals.deliveries} deliveries",
                  f"{totals.wound['skein']} skeins and {totals.wound['mini']} minis",
                  f"{totals.lots} lots", f"{totals.tags} tags",
                  f"{totals.somewhere} skeins, minis and balls are each in one place",
                  f"{verdict.entries} entries", verdict.head[:16],
                  "8 surely come from it, and 6 of 12 others."):
        assert words in out
    place = re.search(r"one place: (.*)\.", out)
    assert place is not None
    counts = [int(words.split()[0]) for words in place[1].split(", ")]
    assert sum(counts) == totals.somewhere


def test_a_demo_that_is_there_is_opened_as_it_is(say: Say, lived_before: Path) -> None:
    before = (lived_before / BOOK).read_bytes()
    said = say("demo", "--out", lived_before)
    assert (said.code, said.err) == (0, "")
    told = (lived_before / "said.txt").read_text("utf-8").splitlines()
    assert said.out.splitlines()[:-2] == told[:-1]
    assert "The weeks were lived before." in said.out
    assert (lived_before / BOOK).read_bytes() == before


def test_without_its_tags_the_demo_says_what_is_missing(say: Say, lived_before: Path) -> None:
    (lived_before / "tags-2615R6F.pdf").unlink()
    said = say("demo", "--out", lived_before)
    assert (said.code, said.out) == (1, "")
    assert "is not there any more; the book is" in said.err


def test_a_book_of_somebody_else_is_never_replaced(say: Say, tmp_path: Path) -> None:
    (tmp_path / BOOK).write_text("my own")
    said = say("demo", "--out", tmp_path)
    assert (said.code, said.out) == (1, "")
    assert "no book of the demo; it was left as it is" in said.err
    assert (tmp_path / BOOK).read_text() == "my own"


def test_a_demo_that_is_open_in_a_window_is_left_alone(say: Say, tmp_path: Path) -> None:
    with Claim(tmp_path / BOOK):
        said = say("demo", "--out", tmp_path)
    assert said.code == 3
    assert "open in another window" in said.err


def test_a_folder_that_cannot_be_written_is_refused_if_it_was_asked_for(
    say: Say, tmp_path: Path
) -> None:
    (tmp_path / "file").touch()
    said = say("demo", "--out", tmp_path / "file" / "out")
    assert (said.code, said.out) == (1, "")
    assert "cannot be written in" in said.err


def test_without_a_folder_of_its_own_it_goes_where_it_may_and_no_picture_stops_it(
    say: Say, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "conetrail-demo").touch()
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("TMPDIR", str(tmp_path))
    monkeypatch.setattr("tempfile.tempdir", None)
    monkeypatch.setattr("sys.executable", "/bin/false")
    monkeypatch.setattr("app.commands.showing.live", lived_shortly)
    monkeypatch.setattr("app.commands.showing.SHEETS", {"2615YX1": TAGS})
    said = say("demo")
    assert said.code == 0
    assert said.err.startswith("The picture of the window could not be made")
    (folder,) = tmp_path.glob("conetrail-demo-*")
    assert (folder / BOOK).is_file()
    assert not (folder / "window.png").exists()
    assert str(folder) in said.out


def lived_shortly(path: Path, say: object) -> Lived:
    """The small studio's week instead of the weeks of the demo."""
    return live_small(path)
