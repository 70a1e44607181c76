"""The journal: an unbroken chain that the whole book is checked against."""

import hashlib
import json
import shutil
import sqlite3
from contextlib import closing
from itertools import pairwise
from pathlib import Path

import pytest
from sqlalchemy import select

from app.problems import BookUnusable
from app.records import DeedRow, Head, Personal
from app.store.book import Book
from app.store.journal import Verdict, verify
from tests.deeds import customer, erase
from tests.makers import Clock, Studio


def tamper(path: Path, *statements: str) -> None:
    """Someone opens the file with another tool, where nothing is watched over."""
    with closing(sqlite3.connect(path, isolation_level=None)) as raw:
        for statement in statements:
            raw.execute(statement)


def verdict(book: Book) -> str:
    with pytest.raises(BookUnusable) as raised:
        book.ask(verify)
    assert raised.value.next_step.endswith("go on from the last good copy.")
    return raised.value.what


def a_little_thread(studio: Studio) -> None:
    studio.tagged(studio.cone(), 3)


def test_each_entry_is_chained_to_the_one_before_and_the_head_is_the_last(studio: Studio) -> None:
    a_little_thread(studio)
    rows = studio.book.ask(lambda c: c.execute(select(DeedRow).order_by(DeedRow.seq)).all())
    head = studio.book.ask(lambda c: c.execute(select(Head)).one())
    assert rows[0].hash == hashlib.sha256(rows[0].body).digest()
    for before, row in pairwise(rows):
        assert row.hash == hashlib.sha256(before.hash + row.body).digest()
    assert [row.seq for row in rows] == list(range(1, len(rows) + 1))
    assert (head.seq, head.hash, head.written) == (rows[-1].seq, rows[-1].hash, rows[-1].written)


def test_an_entry_says_who_when_why_and_which_rows(studio: Studio) -> None:
    studio.wind(studio.cone(), 3)
    body = json.loads(
        studio.book.ask(
            lambda c: c.execute(select(DeedRow.body).order_by(DeedRow.seq.desc()).limit(1)).scalar()
        )
    )
    assert (body["person"], body["station"], body["name"]) == ("OW", "desk", "wind")
    assert body["said"] == "wound 3 skeins of C·0001·7, red ties"
    assert [row[0] for row in body["rows"]] == ["yarn", "draw"]
    assert body["rows"][0][2] is None
    assert body["rows"][0][3]["count"] == 3


def test_a_book_nobody_touched_agrees_with_its_journal(studio: Studio) -> None:
    a_little_thread(studio)
    found = studio.book.ask(verify)
    assert isinstance(found, Verdict)
    assert found.entries == studio.last()
    assert found.rows > 40
    assert found.removed == ()


def test_an_empty_book_agrees_too(book: Book) -> None:
    assert (book.ask(verify).entries, book.ask(verify).rows) == (0, 0)


TAMPERED = {
    "a changed row": (
        ["UPDATE yarn SET count = 4 WHERE id = 1"],
        "yarn 1 is not what its deeds say.",
    ),
    "a changed row of the newest deed": (
        ["UPDATE whereabouts SET state = 'given' WHERE id = 3"],
        "whereabouts 3 is not what its deeds say.",
    ),
    "a row struck on the quiet": (
        ["UPDATE draw SET struck = 3 WHERE id = 1"],
        "draw 1 is not what its deeds say.",
    ),
    "a removed row": (["DELETE FROM in_bath WHERE id = 1"], "Rows are gone: in_bath 1."),
    "an inserted row": (
        ["INSERT INTO bundle(id, deed, note) VALUES (1, 1, '')"],
        "bundle 1 was written by no deed.",
    ),
    "a moment that is none": (["UPDATE tag_on SET since = 'noon' WHERE id = 1"], "cannot be read"),
    "a changed entry": (
        ["UPDATE deed SET body = CAST(replace(CAST(body AS TEXT), 'wound 3', 'wound 4') AS BLOB)"],
        "does not fit the chain.",
    ),
    "an entry that is no text any more": (
        ["UPDATE deed SET body = x'00' WHERE seq = 6"],
        "Entry 6 of the journal does not fit the chain.",
    ),
    "a changed person": (
        ["UPDATE deed SET person = 'XX' WHERE seq = 5"],
        "Entry 5 of the journal was changed.",
    ),
    "a removed entry": (
        ["DELETE FROM touched WHERE deed = 6", "DELETE FROM deed WHERE seq = 6"],
        "Entry 7 of the journal does not fit the chain.",
    ),
    "a removed last entry": (
        ["DELETE FROM deed WHERE seq = (SELECT seq FROM head)"],
        "The head of the journal is not its last entry.",
    ),
    "a head put back": (
        ["UPDATE head SET seq = seq - 1"],
        "The head of the journal is not its last entry.",
    ),
    "another hash at the head": (
        ["UPDATE head SET hash = x'0102'"],
        "The head of the journal is not its last entry.",
    ),
    "a later head": (
        ["UPDATE head SET written = '2031-01-01T00:00:00.000000Z'"],
        "The head of the journal is not its last entry.",
    ),
    "a forgotten touch": (
        ["DELETE FROM touched WHERE deed = 6"],
        "What entry 6 touched was changed.",
    ),
    "an invented touch": (
        ["INSERT INTO touched VALUES (6, 'yarn', 99)"],
        "What entry 6 touched was changed.",
    ),
}


@pytest.fixture(scope="module")
def thread_file(empty_book_file: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("thread") / "thread.book"
    shutil.copy(empty_book_file, path)
    with closing(Book(path, Clock())) as book:
        a_little_thread(Studio(book))
    return path


@pytest.mark.parametrize("what", TAMPERED)
def test_verify_finds_what_was_tampered_with(thread_file: Path, tmp_path: Path, what: str) -> None:
    path = tmp_path / "tampered.book"
    shutil.copy(thread_file, path)
    statements, sentence = TAMPERED[what]
    tamper(path, *statements)
    with closing(Book(path)) as book:
        assert sentence in verdict(book)


def test_a_name_is_nowhere_in_the_journal_and_its_digest_is_right(studio: Studio) -> None:
    studio.do(customer, "Ada Nygård")
    rows = studio.book.ask(lambda c: c.execute(select(DeedRow.body)).scalars().all())
    kept = studio.book.ask(
        lambda c: c.execute(select(Personal).where(Personal.customer.is_not(None))).one()
    )
    assert kept.digest == hashlib.sha256(f"{kept.salt}Ada Nygård".encode()).hexdigest()
    everything = b"".join(rows)
    for secret in ("Nygård", "Nyg\\u00e5rd", kept.salt):
        assert secret.encode() not in everything
    assert kept.digest.encode() in everything


def test_a_removed_name_is_told_as_removed_and_is_gone_from_the_file(studio: Studio) -> None:
    who = studio.do(customer, "Ada Nygård")
    studio.do(erase, who, reason="on request")
    assert studio.book.ask(verify).removed == (f"name of customer {who} was removed",)
    tamper(studio.book.path, "PRAGMA wal_checkpoint(TRUNCATE)", "VACUUM")
    assert "Nygård".encode() not in studio.book.path.read_bytes()


def test_a_name_that_no_deed_removed_is_missed(studio: Studio) -> None:
    studio.do(customer, "Ada Nygård")
    tamper(studio.book.path, "UPDATE personal SET value = NULL, salt = NULL")
    assert verdict(studio.book) == "personal 1 is not what its deeds say."


def test_another_name_in_its_place_is_found(studio: Studio) -> None:
    studio.do(customer, "Ada Nygård")
    tamper(studio.book.path, "UPDATE personal SET value = 'Bo Ek' WHERE customer IS NOT NULL")
    assert "is not what its deeds say" in verdict(studio.book)


def test_verify_finds_a_damaged_index(studio: Studio) -> None:
    studio.cones(2)
    raw = sqlite3.connect(studio.book.path)
    raw.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    (page,) = raw.execute("SELECT rootpage FROM sqlite_master WHERE name='uq_cone_code'").fetchone()
    (size,) = raw.execute("PRAGMA page_size").fetchone()
    raw.close()
    studio.book.close()
    whole = bytearray(studio.book.path.read_bytes())
    start = (page - 1) * size
    at = whole.index(b"C00017", start, start + size)
    whole[at + 5] ^= 1
    studio.book.path.write_bytes(whole)
    with pytest.raises(BookUnusable, match="damaged"):
        Book(studio.book.path).ask(verify)
