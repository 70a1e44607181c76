from datetime import UTC, datetime

import pytest

from app.lookups.now import NOW
from app.problems import NotFound
from app.window.session import open_session
from tests.window.fakes import FakeBook, a_session

THEN = datetime(2026, 4, 6, 17, tzinfo=UTC)


def naming(deed, *words, **more):
    return " ".join(words)


def test_deeds_are_signed_with_person_and_station():
    book = FakeBook()
    session = a_session(book)
    session.do(naming, "put", "by")
    session.person, session.station = "DA", "pots"
    session.undo(1)
    assert book.done == [("naming", ("put", "by"), ("SK", "till"))]
    assert book.undone == [1]


def test_questions_are_asked_of_the_book():
    assert a_session().ask(naming, "who", "has", "it") == "who has it"


@pytest.mark.parametrize("written", ["DA", " da "])
def test_initials_are_found_as_the_book_has_them(written):
    assert a_session().sign_on(written) == "DA"


def test_a_stranger_is_told_whom_to_ask():
    with pytest.raises(NotFound, match="Nobody here signs as XX"):
        a_session().sign_on("xx")


def test_a_new_book_is_begun_with_two_answers(tmp_path):
    session = open_session(tmp_path / "new" / "studio.book")
    assert session.people() == ()
    session.begin("Quernlow Dyeyard", "OW", "", "desk")
    assert session.people() == ("OW",)
    assert session.sign_on("ow") == "OW"
    assert session.last_copy().startswith("copy checked ")
    assert session.last_copy().endswith("today")
    session.book.close()


def looking(_connection, *moments):
    return moments


def test_while_it_is_written_late_deeds_and_questions_are_of_then(monkeypatch):
    terms = []
    monkeypatch.setattr(FakeBook, "do", lambda self, work, *args, by, **said: terms.append(said))
    session = a_session()
    session.do(naming)
    assert (session.at, session.now()) == (NOW, session.book.clock())
    assert session.ask(looking, NOW, THEN) == (NOW, THEN)
    session.late = THEN
    session.do(naming)
    session.do(naming, happened=NOW)
    assert terms == [{}, {"happened": THEN}, {"happened": NOW}]
    assert (session.at, session.now()) == (THEN, THEN)
    assert session.ask(looking, NOW, 7) == (THEN, 7)
