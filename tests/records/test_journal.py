"""The journal's own tables: a number, a token and a taking back, each once."""

import sqlite3
from contextlib import closing

import pytest
from sqlalchemy import func, select

from app.records import DeedRow, Head, Touched
from tests.makers import Studio

COLUMNS = "seq, happened, written, person, station, name, token, undoes, body, hash"


@pytest.mark.parametrize("same", ["seq", "token", "hash"])
def test_no_two_entries_share(studio: Studio, same: str) -> None:
    values = {"seq": "99", "token": "'t-9'", "hash": "x'09'"}
    values[same] = same
    chosen = ", ".join(values.get(name, name) for name in COLUMNS.split(", "))
    with (closing(sqlite3.connect(studio.book.path)) as raw,
          pytest.raises(sqlite3.IntegrityError, match=f"deed.{same}")):
        raw.execute(f"INSERT INTO deed({COLUMNS}) SELECT {chosen} FROM deed WHERE seq = 1")


def test_an_entry_is_taken_back_once_at_the_most(studio: Studio) -> None:
    studio.cone()
    studio.undo()
    with (closing(sqlite3.connect(studio.book.path)) as raw,
          pytest.raises(sqlite3.IntegrityError, match="undoes")):
        raw.execute("UPDATE deed SET undoes = (SELECT max(undoes) FROM deed) WHERE seq = 2")


def test_there_is_one_head(studio: Studio) -> None:
    assert studio.book.ask(
        lambda c: c.execute(select(func.count()).select_from(Head)).scalar()) == 1


def test_every_row_of_an_entry_is_touched_by_it(studio: Studio) -> None:
    studio.wind(studio.cone(), 2)
    rows = studio.book.ask(lambda c: c.execute(
        select(Touched.tbl, Touched.row).where(Touched.deed == studio.last())).all())
    assert {tuple(row) for row in rows} == {("yarn", 1), ("draw", 1)}
    assert studio.book.ask(
        lambda c: c.execute(select(func.max(DeedRow.seq))).scalar()) == studio.last()
