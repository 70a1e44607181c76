"""demo: a folder with a book, its papers, and a tag that was traced back."""

from pathlib import Path

import pytest

from app.commands.showing import BOOK
from app.documents.proof import read_back
from app.store.book import Book
from app.store.journal import verify
from app.store.opening import Claim
from tests.commands.said import Say


def test_the_demo_leaves_its_book_and_papers_and_nothing_half(say: Say, tmp_path: Path) -> None:
    folder = tmp_path / "out"
    said = say("demo", "--out", folder)
    assert said.code == 0
    names = {path.name for path in folder.iterdir()}
    assert names >= {BOOK, "trace-C0114F.pdf", "tags-2615YX1.pdf"}
    assert ("window.png" in names) == (said.err == "")
    assert not any(name.startswith("making-") for name in names)
    marks = {code.code for path in folder.glob("tags-*.pdf")
             for page in read_back(path.read_bytes(), 300) for code in page}
    assert len(marks) == 44
    book = Book(folder / BOOK)
    verdict = book.ask(verify)
    book.close()
    for words in ("38 cones of 3 delivery notes", "56 skeins", "7 lots", "44 tags on 7 sheets",
                  f"{verdict.entries} entries", verdict.head[:16], "Refused: HOLD",
                  "8 surely come from it, and 6 of 12 others."):
        assert words in said.out
    again = say("demo", "--out", folder)
    assert again.out.splitlines()[:-1] == said.out.splitlines()[:-1]


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
    said = say("demo")
    assert said.code == 0
    assert said.err.startswith("The picture of the window could not be made")
    (folder,) = tmp_path.glob("conetrail-demo-*")
    assert (folder / BOOK).is_file()
    assert not (folder / "window.png").exists()
    assert str(folder) in said.out
