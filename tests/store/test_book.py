"""The book: a deed is whole or nothing, a question saves nothing, and trouble is told in words."""

import sqlite3
import threading
from datetime import UTC, datetime, timedelta
from random import Random
from typing import Any

import pytest
from sqlalchemy import Connection, event, func, insert, select, text

from app.calculations.codes import Kind
from app.lookups.tagging import pile_facts
from app.problems import BookBusy, BookUnusable, NotFound, Problem, Refused
from app.records import Bundle, DeedRow, Plate, Setting, Yarn
from app.store.book import Book, problem_of
from app.store.deed import By, Deed
from app.store.journal import verify
from app.work.bundling import make_plates
from app.work.selling import set_price
from app.work.studio import choose
from tests.makers import Studio

BY = By("OW", "desk")


def rows_of(book: Book, kind: Any) -> int:
    return book.ask(lambda c: c.execute(select(func.count()).select_from(kind)).scalar_one())


def two_bundles(deed: Deed) -> list[int]:
    return deed.add_all([Bundle(note="one"), Bundle(note="two")])


def bundles_then(deed: Deed, trouble: Exception) -> None:
    two_bundles(deed)
    raise trouble


def set_on_connect(book: Book, pragma: str) -> None:
    @event.listens_for(book.engine, "connect")
    def _set(raw: sqlite3.Connection, _record: object) -> None:
        raw.execute(pragma)

    book.engine.dispose()


def test_a_book_with_a_chance_of_its_own_draws_the_tokens_that_this_draws(book: Book) -> None:
    book.chance = Random(5)
    book.do(two_bundles, by=BY)
    token = book.ask(lambda c: c.execute(select(DeedRow.token)).scalar_one())
    assert token == Random(5).randbytes(8).hex()


def test_a_deed_is_saved_with_its_entry(book: Book) -> None:
    done = book.do(two_bundles, by=BY, reason="from the white board")
    entry = book.ask(lambda c: c.execute(select(DeedRow)).one())
    assert (done.answer, done.seq) == ([1, 2], 1)
    assert (entry.person, entry.station, entry.name) == ("OW", "desk", "two_bundles")
    assert b"from the white board" in entry.body
    assert rows_of(book, Bundle) == 2


@pytest.mark.parametrize("trouble", [ZeroDivisionError(), Refused("No."), KeyboardInterrupt()])
def test_a_deed_that_breaks_after_it_added_rows_leaves_nothing(
    book: Book, trouble: BaseException
) -> None:
    with pytest.raises(type(trouble)):
        book.do(bundles_then, trouble, by=BY)
    assert (rows_of(book, Bundle), rows_of(book, DeedRow)) == (0, 0)
    assert book.do(two_bundles, by=BY).answer == [1, 2]
    book.ask(verify)


def test_an_answer_that_cannot_be_kept_saves_nothing(book: Book) -> None:
    with pytest.raises(TypeError):
        book.do(lambda deed: {deed.add(Bundle())}, by=BY)
    assert rows_of(book, Bundle) == 0


def test_the_same_token_gives_the_same_answer_and_no_second_deed(book: Book) -> None:
    first = book.do(two_bundles, by=BY, token="T-1")
    again = book.do(two_bundles, by=BY, token="T-1")
    other = book.do(two_bundles, by=BY, token="T-2")
    assert (again.answer, again.seq) == (first.answer, first.seq)
    assert (other.answer, other.seq) == ([3, 4], 2)
    assert rows_of(book, Bundle) == 4


def test_a_token_whose_deed_was_refused_may_be_tried_again(book: Book) -> None:
    with pytest.raises(Refused):
        book.do(bundles_then, Refused("No."), by=BY, token="T-1")
    assert book.do(two_bundles, by=BY, token="T-1").seq == 1


def test_what_is_said_and_found_comes_back_and_comes_back_on_a_retry(studio: Studio) -> None:
    def look(deed: Deed) -> None:
        deed.say("looked at 3 cones")
        deed.note("One is damp.")

    first = studio.done(look, token="T-3")
    assert (first.said, first.findings) == ("looked at 3 cones", ("One is damp.",))
    assert studio.done(look, token="T-3") == first


def test_a_question_cannot_save(book: Book) -> None:
    with pytest.raises(RuntimeError, match="only a deed may write"):
        book.ask(lambda c: c.execute(insert(Bundle).values(id=1, deed=1, note="")))
    with pytest.raises(sqlite3.OperationalError, match="readonly"):
        book.ask(_past_the_guard)
    assert rows_of(book, Bundle) == 0


def _past_the_guard(connection: Connection) -> None:
    raw = connection.connection.driver_connection
    assert raw is not None
    raw.execute("INSERT INTO bundle(id, deed, note) VALUES (1, 1, '')")


@pytest.mark.parametrize(
    "statement",
    [
        "INSERT INTO bundle(id, deed, note) VALUES (9, 1, '')",
        "UPDATE bundle SET note = 'x'",
        "delete from bundle",
        "REPLACE INTO bundle(id, deed, note) VALUES (9, 1, '')",
        "WITH one AS (SELECT 1) DELETE FROM bundle",
        "/* by the way */ DELETE FROM bundle",
        "DROP TABLE bundle",
    ],
)
def test_a_statement_that_does_not_pass_the_deeds_hand_is_a_fault(
    book: Book, statement: str
) -> None:
    def past_the_journal(deed: Deed) -> None:
        two_bundles(deed)
        deed.connection.execute(text(statement))

    with pytest.raises(RuntimeError, match="only through its own hand"):
        book.do(past_the_journal, by=BY)
    assert rows_of(book, Bundle) == 0


def test_a_reading_with_that_only_names_a_writing_word_is_asked(book: Book) -> None:
    question = "WITH x AS (SELECT 'a' AS updated) SELECT updated FROM x"
    assert book.ask(lambda c: c.execute(text(question)).scalar_one()) == "a"


def test_what_has_not_happened_yet_is_refused(studio: Studio) -> None:
    tomorrow = studio.clock.now + timedelta(days=1)
    with pytest.raises(Refused, match="has not come yet; nothing was saved"):
        studio.do(choose, {"name": "Quernlow Dyeyard"}, happened=tomorrow)


def test_a_view_stays_steady_while_a_deed_is_saved(studio: Studio) -> None:
    question = select(func.count()).select_from(Yarn)
    cone = studio.cone()
    with studio.book.reading() as view:
        before = view.execute(question).scalar_one()
        studio.wind(cone, 3)
        assert view.execute(question).scalar_one() == before
    assert studio.book.ask(lambda c: c.execute(question).scalar_one()) == before + 1


def test_those_who_listen_hear_which_tables_changed_and_nothing_of_a_refusal(
    studio: Studio,
) -> None:
    heard: list[frozenset[str]] = []
    studio.book.on_saved = heard.append
    studio.wind(studio.cone(), 2)
    with pytest.raises(Refused):
        studio.do(bundles_then, Refused("No."))
    assert heard[-1] == {"yarn", "draw"}
    assert len(heard) == 2


def test_two_windows_that_write_at_once_make_one_unbroken_order(studio: Studio) -> None:
    other = Book(studio.book.path, studio.clock)

    def choose_many(book: Book, name: str) -> None:
        for number in range(15):
            book.do(choose, {"name": f"{name} {number}"}, by=BY)

    threads = [
        threading.Thread(target=choose_many, args=(each, name))
        for each, name in ((studio.book, "Quernlow"), (other, "Dyeyard"))
    ]
    before = studio.last()
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    other.close()
    assert studio.last() == before + 30
    assert rows_of(studio.book, Setting) == 30
    studio.check()


def test_a_busy_book_is_told_in_words_and_the_deed_can_be_done_again(book: Book) -> None:
    set_on_connect(book, "PRAGMA busy_timeout = 20")
    other = sqlite3.connect(book.path, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    with pytest.raises(BookBusy, match="someone else is writing. Nothing of this was saved"):
        book.do(two_bundles, by=BY)
    assert rows_of(book, Bundle) == 0  # asking is never stopped
    other.execute("ROLLBACK")
    other.close()
    assert book.do(two_bundles, by=BY).seq == 1


def test_a_full_disk_is_told_in_words_and_what_was_there_stays(studio: Studio) -> None:
    book, pages = studio.book, "PRAGMA page_count"
    room = book.ask(lambda c: c.exec_driver_sql(pages).scalar_one()) + 1
    set_on_connect(book, f"PRAGMA max_page_count = {room}")
    before = studio.last()
    with pytest.raises(BookUnusable, match="no room left on the disk; nothing of this was saved"):
        studio.do(choose, {"address": "by the river " * 2000})
    assert studio.last() == before
    studio.check()
    set_on_connect(book, f"PRAGMA max_page_count = {room + 100}")
    studio.do(choose, {"address": "by the river " * 2000})
    studio.check()


def test_a_file_that_is_no_database_is_told_in_words(tmp_path: Any) -> None:
    path = tmp_path / "picture.book"
    path.write_bytes(b"\x89PNG" * 400)
    with pytest.raises(BookUnusable, match="This file is not a book"):
        Book(path).ask(verify)


def test_what_the_database_forbids_is_told_as_done_already(studio: Studio) -> None:
    def once_more(deed: Deed) -> None:
        deed.add(Plate(code="D031M", kind="disc"))
        deed.add(Plate(code="D031M", kind="disc"))

    with pytest.raises(Refused, match="done already, perhaps at another station"):
        studio.do(once_more)


def test_a_number_that_no_book_can_keep_is_refused_in_words(studio: Studio) -> None:
    seq = studio.last()
    for number in (2**63, -10**30):
        with pytest.raises(Refused, match="larger than any the book can keep; nothing was saved"):
            studio.do(set_price, 1, "skein", abs(number))
        with pytest.raises(Refused, match="larger than any"):
            studio.book.ask(pile_facts, number)
    assert studio.last() == seq


def test_what_names_something_unknown_is_not_found(studio: Studio) -> None:
    seq = studio.last()
    with pytest.raises(NotFound, match="names is not in the book; nothing was saved"):
        studio.do(set_price, 99, "skein", 2_400)
    assert studio.last() == seq


def test_a_fault_of_the_program_is_not_dressed_up(studio: Studio) -> None:
    with pytest.raises(Exception, match="CHECK constraint failed") as raised:
        studio.do(lambda deed: deed.add(Yarn(kind="heap", base=1, put_up="skein", count=1, mg=1)))
    assert not isinstance(raised.value, Problem)


@pytest.mark.parametrize(
    "name",
    [
        "SQLITE_BUSY",
        "SQLITE_BUSY_SNAPSHOT",
        "SQLITE_LOCKED",
        "SQLITE_FULL",
        "SQLITE_READONLY",
        "SQLITE_READONLY_DIRECTORY",
        "SQLITE_CANTOPEN",
        "SQLITE_IOERR_WRITE",
        "SQLITE_CORRUPT",
        "SQLITE_NOTADB",
        "SQLITE_CONSTRAINT_UNIQUE",
        "SQLITE_CONSTRAINT_FOREIGNKEY",
        "SQLITE_CONSTRAINT_TRIGGER",
    ],
)
def test_each_trouble_of_the_file_has_its_sentence_and_a_way_on(name: str) -> None:
    problem = problem_of(name)
    assert problem is not None
    assert problem.what.endswith(".")
    assert problem.next_step.endswith(".")


@pytest.mark.parametrize("name", ["", "SQLITE_ERROR", "SQLITE_CONSTRAINT_CHECK"])
def test_what_is_not_the_files_trouble_has_no_sentence(name: str) -> None:
    assert problem_of(name) is None


def test_a_book_without_a_clock_takes_the_computers(empty_book_file: Any, tmp_path: Any) -> None:
    path = tmp_path / "now.book"
    path.write_bytes(empty_book_file.read_bytes())
    book, before = Book(path), datetime.now(UTC)
    book.do(make_plates, Kind.DISC, [1], by=BY)
    entry = book.ask(lambda c: c.execute(select(DeedRow)).one())
    assert before <= entry.written <= datetime.now(UTC)
    assert entry.happened == entry.written
    book.close()
