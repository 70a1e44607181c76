"""Upgrading: copied first, whole or left as it was; a newer or foreign file is not touched."""

import ast
import shutil
import sqlite3
from contextlib import closing
from datetime import UTC, datetime
from functools import partial
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import create_engine

from app import paths
from app.problems import BookBusy, BookUnusable
from app.records import Record
from app.store.book import Book
from app.store.copies import copies_folder, last_copy
from app.store.journal import verify
from app.store.upgrade import migrations_config, upgrade_book
from tests.makers import Studio

NOON = datetime(2026, 4, 6, 12, tzinfo=UTC)
NEXT = '''"""a next step."""

import sqlalchemy as sa
from alembic import op

revision = "0099"
down_revision = "{last}"


def upgrade() -> None:
    op.add_column("bundle", sa.Column("length_mm", sa.Integer()))
    {then}
'''


def sql(path: Path, statement: str) -> list[tuple[object, ...]]:
    with closing(sqlite3.connect(path)) as raw, raw:
        return raw.execute(statement).fetchall()


def contents(path: Path) -> list[str]:
    with closing(sqlite3.connect(path)) as raw:
        return list(raw.iterdump())


@pytest.fixture
def next_step(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of the migrations with room for one more: the path of the next script."""
    last = ScriptDirectory.from_config(migrations_config()).get_current_head()
    folder = tmp_path / "migrations"
    shutil.copytree(paths.MIGRATIONS, folder)
    monkeypatch.setattr(paths, "MIGRATIONS", folder)
    script = folder / "versions" / "0099_next.py"
    script.write_text(NEXT.format(last=last, then="pass"))
    return script


def test_a_new_book_is_made_by_the_same_steps_as_an_old_one(tmp_path: Path) -> None:
    upgrade_book(tmp_path / "new.book", NOON)
    assert sql(tmp_path / "new.book", "SELECT version_num FROM alembic_version") == [(HEAD,)]
    assert not copies_folder(tmp_path / "new.book").exists()


HEAD = ScriptDirectory.from_config(migrations_config()).get_current_head()


def test_migrations_and_records_agree(empty_book_file: Path) -> None:
    engine = create_engine(f"sqlite:///{empty_book_file}")
    with engine.connect() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        assert compare_metadata(context, Record.metadata) == []
    engine.dispose()


def test_the_order_of_the_steps_is_one_line() -> None:
    script = ScriptDirectory.from_config(migrations_config())
    assert len(script.get_heads()) == 1
    assert [step.revision for step in script.walk_revisions()][-1] == "0001"


@pytest.mark.parametrize("script", sorted((paths.MIGRATIONS / "versions").glob("*.py")))
def test_a_step_stands_by_itself_and_never_leans_on_the_program(script: Path) -> None:
    imported = set()
    for node in ast.walk(ast.parse(script.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            imported |= {name.name for name in node.names}
        elif isinstance(node, ast.ImportFrom):
            imported.add(node.module or "")
    assert {name.split(".")[0] for name in imported} <= {"sqlalchemy", "alembic", "json"}


def test_a_book_of_today_is_left_alone(studio: Studio) -> None:
    studio.book.close()
    before = studio.book.path.read_bytes()
    upgrade_book(studio.book.path, NOON)
    assert studio.book.path.read_bytes() == before
    assert not copies_folder(studio.book.path).exists()


def test_an_older_book_is_copied_and_then_upgraded_with_all_it_holds(
    studio: Studio, next_step: Path
) -> None:
    studio.wind(studio.cone(), 3)
    studio.book.close()
    upgrade_book(studio.book.path, NOON)
    assert sql(studio.book.path, "SELECT version_num FROM alembic_version") == [("0099",)]
    assert sql(studio.book.path, "SELECT length_mm FROM bundle") == []
    copy = last_copy(studio.book.path)
    assert copy is not None
    assert copy.path.name.endswith("before 0099.book")
    with closing(Book(copy.path)) as before, closing(Book(studio.book.path)) as after:
        assert before.ask(verify) == after.ask(verify)


FAILURES = {
    "a statement that cannot be": ("op.execute('UPDATE no_such_table SET x = 1')", Exception),
    "a fault": ("raise ZeroDivisionError", ZeroDivisionError),
    "broken links": ("op.execute('DELETE FROM base_version')", BookUnusable),
}


@pytest.mark.parametrize("what", FAILURES)
def test_an_upgrade_that_fails_leaves_all_as_it_was(
    studio: Studio, next_step: Path, what: str
) -> None:
    studio.wind(studio.cone(), 3)
    studio.book.close()
    path, before = studio.book.path, contents(studio.book.path)
    then, error = FAILURES[what]
    next_step.write_text(NEXT.format(last=HEAD, then=then))
    with pytest.raises(error):
        upgrade_book(path, NOON)
    assert contents(path) == before
    next_step.write_text(NEXT.format(last=HEAD, then="pass"))
    upgrade_book(path, NOON.replace(hour=13))
    assert sql(path, "SELECT version_num FROM alembic_version") == [("0099",)]


def test_no_upgrade_without_its_copy(studio: Studio, next_step: Path) -> None:
    studio.book.close()
    copies_folder(studio.book.path).write_text("a file where the folder should be")
    before = contents(studio.book.path)
    with pytest.raises(BookUnusable, match="No copy of the book could be made"):
        upgrade_book(studio.book.path, NOON)
    assert contents(studio.book.path) == before


def test_a_newer_book_is_refused_and_not_touched(studio: Studio) -> None:
    path = studio.book.path
    studio.book.close()
    sql(path, "UPDATE alembic_version SET version_num = '9999'")
    before = path.read_bytes()
    with pytest.raises(BookUnusable, match="opened by a newer program; it was left as it is"):
        upgrade_book(path, NOON)
    assert path.read_bytes() == before
    assert not copies_folder(path).exists()


def test_a_database_that_is_no_book_is_refused_and_not_touched(tmp_path: Path) -> None:
    path = tmp_path / "recipes.book"
    sql(path, "CREATE TABLE soup(name TEXT)")
    before = path.read_bytes()
    with pytest.raises(BookUnusable, match="a database, but not a book; it was left as it is"):
        upgrade_book(path, NOON)
    assert path.read_bytes() == before


def test_a_book_that_another_is_writing_is_told_as_busy(
    studio: Studio, next_step: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    studio.book.close()
    impatient = partial(create_engine, connect_args={"timeout": 0.02})
    monkeypatch.setattr("app.store.upgrade.create_engine", impatient)
    with closing(sqlite3.connect(studio.book.path, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(BookBusy):
            upgrade_book(studio.book.path, NOON)
    upgrade_book(studio.book.path, NOON)


@pytest.mark.parametrize("made", ["new", "before its power failed"])
def test_readers_are_never_stopped_by_a_writer_in_any_book(tmp_path: Path, made: str) -> None:
    path = tmp_path / "studio.book"
    upgrade_book(path, NOON)
    if made != "new":
        sql(path, "PRAGMA journal_mode = DELETE")
        upgrade_book(path, NOON)
    assert sql(path, "PRAGMA journal_mode") == [("wal",)]
