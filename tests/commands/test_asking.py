"""find, trace, verify."""

import json
import sqlite3
from pathlib import Path

import pytest
from pypdfium2 import PdfDocument

from app.demo import Lived
from tests.commands.said import Say


@pytest.mark.usefixtures("studio_book")
def test_a_code_is_found_with_where_it_is_and_its_hold(say: Say) -> None:
    said = say("find", "C·0114·F")
    assert said.code == 0
    assert said.out.splitlines()[0] == "C·0114·F is a cone: Tarnfield 4-ply."
    assert "8 on the table, 6 of 12 counted and not tagged." in said.out
    assert "oil in the yarn, seen under the lamp" in said.out
    assert said.err == ""


@pytest.mark.usefixtures("studio_book")
def test_what_may_be_several_things_is_listed_and_not_found(say: Say) -> None:
    said = say("find", "2615")
    assert said.code == 1
    assert len(said.out.splitlines()) == 7
    assert "Sluice Keeper’s Glove, Tarnfield 4-ply" in said.out
    assert said.err.splitlines() == ["7 things in the book for “2615”.",
                                     "Choose the one that is meant; nothing was chosen for you."]


@pytest.mark.usefixtures("studio_book")
@pytest.mark.parametrize("text", ["2699K44", "4006381333931", "gloves of silk", "", "\ud800", "?"])
def test_what_is_not_there_ends_with_one_and_a_sentence_on_stderr(say: Say, text: str) -> None:
    said = say("find", text)
    assert (said.code, said.out) == (1, "")
    assert said.err.strip()


@pytest.mark.usefixtures("studio_book")
def test_a_program_reads_what_was_found_and_what_was_not(say: Say) -> None:
    found = json.loads(say("find", "C0114F", "--json").out)
    assert found["found"]["code"] == "C0114F"
    assert found["choices"] == []
    listed = say("find", "sluice", "--json")
    assert listed.code == 1
    data = json.loads(listed.out)
    assert data["found"] is None
    assert data["choices"][0]["swatch"] == "#00826C"


def test_every_tag_that_was_printed_traces_back_to_a_cone(
    say: Say, studio_book: Path
) -> None:
    with sqlite3.connect(studio_book) as raw:
        marks = [mark for (mark,) in raw.execute("SELECT mark FROM tag WHERE void IS NULL")]
    raw.close()
    assert len(marks) == 43
    for mark in marks[::6]:
        data = json.loads(say("trace", mark, "--json").out)
        assert {origin["kind"] for origin in data["origins"]} >= {"cone", "lot"}
        assert all(origin["certainty"] in ("known", "partly") for origin in data["origins"])


@pytest.mark.usefixtures("studio_book")
def test_a_trace_says_both_ends_and_makes_its_paper(say: Say, tmp_path: Path) -> None:
    paper = tmp_path / "trace.pdf"
    said = say("trace", "C0114F", "--out", paper, "--by", "OW")
    assert said.code == 0
    assert "How sure  8 surely come from it, and 6 of 12 others." in said.out
    assert said.err == f"The report is in {paper}.\n"
    document = PdfDocument(paper)
    assert "by OW" in document[0].get_textpage().get_text_bounded()
    document.close()
    assert [path.name for path in tmp_path.iterdir() if path.suffix == ".part"] == []


@pytest.mark.usefixtures("studio_book")
def test_a_trace_of_nothing_or_to_nowhere_is_refused(say: Say, tmp_path: Path) -> None:
    assert say("trace", "2699K44").code == 1
    for place in (tmp_path / "not there" / "x.pdf", tmp_path):
        said = say("trace", "C0114F", "--out", place)
        assert (said.code, said.out) == (1, "")
        assert "cannot be written" in said.err


def test_a_whole_book_is_verified_with_its_head(
    say: Say, studio_book: Path, lived: tuple[Path, Lived]
) -> None:
    said = say("verify")
    assert said.code == 0
    assert "The book agrees with its journal" in said.out
    data = json.loads(say("verify", "--json", "--book", lived[0]).out)
    assert data["head"] in said.out
    assert data["removed"] == []
    assert studio_book.exists()


def test_a_row_that_was_changed_behind_the_journal_ends_with_three(
    say: Say, studio_book: Path
) -> None:
    with sqlite3.connect(studio_book) as raw:
        raw.execute("UPDATE cone SET gross_mg = gross_mg + 1 WHERE id = 1")
    raw.close()
    said = say("verify")
    assert (said.code, said.out) == (3, "")
    assert "cone 1 is not what its deeds say" in said.err


@pytest.mark.usefixtures("studio_book")
def test_free_counts_are_a_file_for_the_web_shop(say: Say, tmp_path: Path) -> None:
    out = tmp_path / "free.csv"
    said = say("free-counts", out)
    assert (said.code, said.err) == (0, "")
    assert said.out.endswith(f": {out}.\n")
    assert out.read_bytes().startswith(b"\xef\xbb\xbflot,colourway,base,put-up,left to sell")
    assert json.loads(say("free-counts", out, "--json").out)["out"] == str(out)
    other = tmp_path / "letter.csv"
    other.write_text("Dear customer")
    refused = say("free-counts", other)
    assert refused.code == 1
    assert "no file of this program" in refused.err
    assert other.read_text() == "Dear customer"


@pytest.mark.usefixtures("studio_book")
def test_what_was_refused_is_data_too(say: Say) -> None:
    said = say("trace", "2699K44", "--json")
    assert said.code == 1
    data = json.loads(said.out)
    assert data["refused"] in said.err
    assert set(data) == {"refused", "next_step"}
    assert json.loads(say("--json", "verify").out)["entries"] == 128
    no_book = say("--json", "verify", "--book", "not-there.book")
    assert no_book.code == 3
    assert "There is no book at" in json.loads(no_book.out)["refused"]


@pytest.mark.usefixtures("studio_book")
def test_a_thing_without_words_has_no_empty_brackets(say: Say) -> None:
    said = say("trace", "003")
    assert said.code == 1
    assert "()" not in said.err
    assert "·003·" in said.err


@pytest.mark.usefixtures("studio_book")
def test_the_batch_record_of_a_lot_is_made_as_paper(say: Say, tmp_path: Path) -> None:
    lot = json.loads(say("find", "2615", "--json").out)["choices"][0]["code"]
    paper = tmp_path / "record.pdf"
    said = say("record", lot, paper, "--by", "OW")
    assert said.code == 0
    assert "in the bath" in said.out
    assert said.err == f"The batch record is in {paper}.\n"
    document = PdfDocument(paper)
    assert "Batch record" in document[0].get_textpage().get_text_bounded()
    assert "by OW" in document[0].get_textpage().get_text_bounded()
    document.close()
    data = json.loads(say("record", lot, paper, "--json").out)
    assert (data["lot"], data["file"]) == (lot, str(paper))


@pytest.mark.usefixtures("studio_book")
def test_without_a_place_the_record_is_put_here_and_only_lots_have_one(
    say: Say, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    lot = json.loads(say("find", "2615", "--json").out)["choices"][0]["code"]
    assert say("record", lot).code == 0
    assert (tmp_path / f"batch-record-{lot}.pdf").read_bytes()[:4] == b"%PDF"
    refused = say("record", "C0114F")
    assert (refused.code, refused.out) == (1, "")
    assert say("record", lot, tmp_path).code == 1
