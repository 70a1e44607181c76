"""take-in, tags."""

import json
from pathlib import Path

import pytest

from app.documents.proof import read_back
from app.store.book import Book
from app.store.deed import By
from app.store.journal import verify
from app.work.holding import lift_hold
from app.work.studio import choose
from tests.commands.said import Say

GOOD = "Note;Base;Batch;Gross g;Tare g\n2300;Tarnfield 4-ply;A-209;1.462,5;64\n"


def entries(path: Path) -> int:
    book = Book(path)
    try:
        return book.ask(verify).entries
    finally:
        book.close()


def written(folder: Path, text: str) -> Path:
    path = folder / "note.csv"
    path.write_text(text, "utf-8")
    return path


def test_a_list_is_taken_in_in_the_name_of_who_says_so(
    say: Say, studio_book: Path, tmp_path: Path
) -> None:
    before = entries(studio_book)
    said = say("take-in", written(tmp_path, GOOD), "--by", "ad", "--say", "supplier=Aske Mill")
    assert (said.code, said.out) == (0, "took in 1 cone of Tarnfield 4-ply, note 2300.\n")
    assert entries(studio_book) == before + 1
    again = say("take-in", tmp_path / "note.csv", "--by", "AD", "--say", "supplier=Aske Mill")
    assert again.code == 1
    assert "Note 2300 of Aske Mill with Tarnfield 4-ply was taken in before" in again.err


def test_bad_rows_are_always_told_and_left_out_only_if_said(
    say: Say, studio_book: Path, tmp_path: Path
) -> None:
    path = written(tmp_path, GOOD + "2300;Tarnfield 4-ply;A-209;12x;64\n2300;Silk;A;1462;64\n")
    before = entries(studio_book)
    refused = say("take-in", path, "--by", "AD")
    assert (refused.code, refused.out) == (1, "")
    assert "Row 3, Gross g:" in refused.err
    assert "Row 4, Base:" in refused.err
    assert "--leave-bad-rows" in refused.err
    assert entries(studio_book) == before
    taken = say("take-in", path, "--by", "AD", "--leave-bad-rows", "--json")
    data = json.loads(taken.out)
    assert (taken.code, data["taken_in"], len(data["troubles"])) == (0, True, 2)
    assert "Row 3" in taken.err


def test_only_looking_saves_nothing(say: Say, studio_book: Path, tmp_path: Path) -> None:
    before = entries(studio_book)
    said = say("take-in", written(tmp_path, GOOD), "--by", "AD", "--look")
    assert said.code == 0
    assert said.out == "1 cone of Tarnfield 4-ply, note 2300; nothing was saved.\n"
    assert entries(studio_book) == before


@pytest.mark.usefixtures("studio_book")
def test_a_person_names_columns_and_says_once_what_all_rows_lack(
    say: Say, tmp_path: Path
) -> None:
    path = written(tmp_path, "Note;Base;Weight A\n2300;Tarnfield 4-ply;1462 g\n")
    lacking = say("take-in", path, "--by", "AD")
    assert lacking.code == 1
    assert "spinner's batch" in lacking.err
    said = say("take-in", path, "--by", "AD", "--column", "gross=Weight A", "--say", "tare=64 g",
               "--say", "batch=")
    assert (said.code, said.out) == (0, "took in 1 cone of Tarnfield 4-ply, note 2300.\n")


@pytest.mark.usefixtures("studio_book")
def test_very_many_troubles_are_counted_instead_of_told(say: Say, tmp_path: Path) -> None:
    path = written(tmp_path, GOOD + "2300;Tarnfield 4-ply;A;12x;64\n" * 5_000)
    said = say("take-in", path, "--by", "AD")
    assert said.code == 1
    assert "And 4,960 more like these." in said.err
    assert len(said.err.splitlines()) < 50


@pytest.mark.usefixtures("studio_book")
def test_nobody_takes_in_for_someone_who_does_not_work_here(say: Say, tmp_path: Path) -> None:
    said = say("take-in", written(tmp_path, GOOD), "--by", "XX")
    assert said.code == 1
    assert "Nobody here signs as XX; nothing was saved." in said.err
    assert "Those who sign: AD, BW," in said.err


@pytest.mark.usefixtures("studio_book")
@pytest.mark.parametrize("content", [b"", b"%PDF-1.7", bytes(range(256)), b"PK\x03\x04xx"])
def test_a_file_that_is_no_list_is_refused(say: Say, tmp_path: Path, content: bytes) -> None:
    path = tmp_path / "strange"
    path.write_bytes(content)
    said = say("take-in", path, "--by", "AD")
    assert (said.code, said.out) == (1, "")
    assert said.err.strip()
    assert say("take-in", tmp_path / "not there", "--by", "AD").code == 1
    assert say("take-in", tmp_path, "--by", "AD").code == 1


@pytest.fixture
def free_of_hold(studio_book: Path) -> Path:
    """The book after the hold was lifted: 12 skeins of one lot wait for their tags."""
    book = Book(studio_book)
    book.do(lift_hold, 1, "washed out", by=By("OW", "desk"))
    book.close()
    return studio_book


def test_tags_are_printed_proven_and_in_the_book(
    say: Say, free_of_hold: Path, tmp_path: Path
) -> None:
    paper = tmp_path / "tags.pdf"
    said = say("tags", "2615M20", "--out", paper, "--by", "LP", "--first-cell", 9, "--json")
    assert said.code == 0
    data = json.loads(said.out)
    found = [code.code for page in read_back(paper.read_bytes(), 300) for code in page]
    assert sorted(found) == sorted(data["marks"])
    assert (data["sheets"], data["first_cell"], data["last_cell"], data["left"]) == (2, 9, 10, 0)
    assert say("find", found[0]).code == 0
    again = say("tags", "2615M20", "--out", paper, "--by", "LP")
    assert again.code == 1
    assert "No skein of this lot waits for a tag" in again.err
    assert entries(free_of_hold) == data["entry"]


def test_so_many_tags_on_another_stock(say: Say, free_of_hold: Path, tmp_path: Path) -> None:
    said = say("tags", "2615M20", "--out", tmp_path / "t.pdf", "--by", "LP", "--count", 5,
               "--stock", "small-63x38", "--first-cell", 9)
    assert said.out.splitlines()[0] == "printed 5 tags for 26·15·M20; every code was read back."
    assert "from cell 9 to cell 13 of sheet 1; 8 cells left on it" in said.out
    assert free_of_hold.exists()


def test_what_the_market_asks_to_look_at_is_told_beside_the_answer(
    say: Say, free_of_hold: Path, tmp_path: Path
) -> None:
    book = Book(free_of_hold)
    book.do(choose, {"market": "EU", "language": "de", "origin": "Grown on the fell."},
            by=By("OW", "desk"))
    book.close()
    said = say("tags", "2615M20", "--out", tmp_path / "t.pdf", "--by", "LP", "--json")
    warnings = json.loads(said.out)["warnings"]
    assert any("has no words in German" in one for one in warnings)
    assert all(one in said.err for one in warnings)


@pytest.mark.parametrize(("words", "why"), [
    (["2615M20"], "HOLD"), (["2619K44"], "not in this book"),
    (["C0114F"], "Wanted here: a dye lot"),
    (["2615YX1"], "No skein of this lot waits"), (["2615M20", "--stock", "paper"], "No stock"),
])
def test_what_may_not_be_tagged_leaves_neither_paper_nor_entry(
    say: Say, studio_book: Path, tmp_path: Path, words: list[str], why: str
) -> None:
    before, paper = entries(studio_book), tmp_path / "t.pdf"
    if "--stock" in words:
        book = Book(studio_book)
        before = book.do(lift_hold, 1, "washed out", by=By("OW", "desk")).seq
        book.close()
    said = say("tags", *words, "--out", paper, "--by", "LP")
    assert (said.code, said.out) == (1, "")
    assert why in said.err
    assert list(tmp_path.glob("t.pdf*")) == []
    assert entries(studio_book) == before


def test_no_paper_no_deed(say: Say, free_of_hold: Path, tmp_path: Path) -> None:
    before = entries(free_of_hold)
    for place in (tmp_path / "not there" / "t.pdf", tmp_path):
        said = say("tags", "2615M20", "--out", place, "--by", "LP")
        assert said.code == 1
        assert "cannot be written" in said.err
    assert entries(free_of_hold) == before
