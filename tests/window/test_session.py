import pytest

from app.problems import NotFound
from app.window.session import open_session
from tests.window.fakes import FakeBook, a_session


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
