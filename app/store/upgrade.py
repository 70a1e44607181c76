"""Bring a book to the newest shape at start-up: copied first, upgraded whole or left as it was."""

import sqlite3
from datetime import datetime
from pathlib import Path
from typing import Any

from alembic import command
from alembic.config import Config
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, Engine, create_engine, event, pool
from sqlalchemy.engine import URL
from sqlalchemy.exc import DBAPIError

from app import paths
from app.problems import BookUnusable
from app.store.book import problem_of
from app.store.copies import make_copy


def migrations_config() -> Config:
    """Alembic's settings, made in code: no file is needed."""
    config = Config()
    config.set_main_option("script_location", str(paths.MIGRATIONS).replace("%", "%%"))
    return config


def upgrade_book(book: Path, at: datetime) -> None:
    """Create, leave alone or upgrade `book`; a checked copy is made before any change.

    Raises BookUnusable where the file is newer than the program, no book, or may not be written.
    """
    config = migrations_config()
    script = ScriptDirectory.from_config(config)
    existed = book.exists() and book.stat().st_size > 0
    engine = _upgrading_engine(book)
    try:
        with engine.connect() as connection:
            if not _is_newest(connection, script):
                if existed:
                    make_copy(book, at, f"before {script.get_current_head()}")
                _upgrade(connection, config)
    except DBAPIError as error:
        problem = problem_of(getattr(error.orig, "sqlite_errorname", ""))
        if problem is None:
            raise
        raise problem from error
    finally:
        engine.dispose()
    raw = sqlite3.connect(book)
    raw.execute("PRAGMA journal_mode = WAL")  # kept in the file: once is enough
    raw.close()


def _upgrade(connection: Connection, config: Config) -> None:
    with connection.begin():
        config.attributes["connection"] = connection
        command.upgrade(config, "head")
        broken = connection.exec_driver_sql("PRAGMA foreign_key_check").fetchall()
        if broken:
            raise BookUnusable(f"The upgrade left {len(broken)} broken links and was not kept.",
                               "Go on with the older program, and send us this sentence.")


def _is_newest(connection: Connection, script: ScriptDirectory) -> bool:
    known = {revision.revision for revision in script.walk_revisions()}
    with connection.begin():
        heads = set(MigrationContext.configure(connection).get_current_heads())
        tables = connection.exec_driver_sql("SELECT count(*) FROM sqlite_master").scalar()
    if heads - known:
        raise BookUnusable("This book was last opened by a newer program; it was left as it is.",
                           "Install the newer program on this computer.")
    if tables and not heads:
        raise BookUnusable("This file is a database, but not a book; it was left as it is.",
                           "Choose another file.")
    return heads == set(script.get_heads())


def _upgrading_engine(book: Path) -> Engine:
    """Holds the whole file, and does not follow deletions while tables are moved."""
    url = URL.create("sqlite", database=str(book))
    engine = create_engine(url, poolclass=pool.NullPool)

    @event.listens_for(engine, "connect")
    def _on_connect(raw: sqlite3.Connection, _record: Any) -> None:
        raw.isolation_level = None
        raw.execute("PRAGMA foreign_keys = OFF")

    @event.listens_for(engine, "begin")
    def _on_begin(connection: Connection) -> None:
        connection.exec_driver_sql("BEGIN EXCLUSIVE")

    return engine
