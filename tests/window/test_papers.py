"""Papers that the window makes are kept beside the book."""

import pytest
from PySide6.QtGui import QDesktopServices

from app.problems import Refused
from app.window.papers import keep, open_paper, throw_away


def test_a_paper_lies_in_the_folder_of_its_kind_beside_the_book(tmp_path):
    path = keep(tmp_path / "studio.book", "plates", "disc-31.pdf", b"%PDF one")
    assert path == tmp_path / "studio plates" / "disc-31.pdf"
    assert keep(tmp_path / "studio.book", "plates", "disc-31.pdf", b"%PDF two") == path
    assert path.read_bytes() == b"%PDF two"
    assert [one.name for one in path.parent.iterdir()] == ["disc-31.pdf"]


def test_a_paper_is_thrown_away_and_one_that_is_not_there_is_no_trouble(tmp_path):
    book = tmp_path / "studio.book"
    path = keep(book, "shop", "customer-3.json", b"{}")
    for _ in range(2):
        throw_away(book, "shop", "customer-3.json")
        assert not path.exists()
    path.mkdir()
    with pytest.raises(Refused, match="cannot be thrown away"):
        throw_away(book, "shop", "customer-3.json")


def test_a_paper_is_kept_by_an_old_lots_code_too(tmp_path):
    book = tmp_path / "studio.book"
    path = keep(book, "tags", "GL14/3:7 entry 12.pdf", b"%PDF")
    assert path == tmp_path / "studio tags" / "GL14-3-7 entry 12.pdf"
    throw_away(book, "tags", "GL14/3:7 entry 12.pdf")
    assert not path.exists()


def test_what_cannot_be_written_is_refused_in_a_sentence(tmp_path):
    (tmp_path / "studio plates").write_text("in the way")
    with pytest.raises(Refused, match="cannot be written"):
        keep(tmp_path / "studio.book", "plates", "disc-31.pdf", b"%PDF")


def test_a_paper_is_shown_by_the_computers_own_reader(tmp_path, monkeypatch):
    shown = []
    monkeypatch.setattr(QDesktopServices, "openUrl", lambda url: shown.append(url) or True)
    assert open_paper(tmp_path / "disc 31.pdf")
    assert shown[0].toLocalFile() == str(tmp_path / "disc 31.pdf")
