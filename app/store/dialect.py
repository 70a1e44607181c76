"""What differs between SQLite and PostgreSQL: how a deed locks, how a list of ids is asked for."""

import json
import sqlite3
from collections.abc import Iterable
from typing import Any

from sqlalchemy import (
    Boolean,
    ColumnElement,
    Connection,
    Dialect,
    Engine,
    Text,
    bindparam,
    create_engine,
    event,
)
from sqlalchemy.engine import URL
from sqlalchemy.ext.compiler import compiles
from sqlalchemy.orm import InstrumentedAttribute
from sqlalchemy.sql.compiler import SQLCompiler
from sqlalchemy.sql.functions import FunctionElement

MODE = "conetrail_mode"
"""Execution option of a connection: "write" for a deed, else it may only read."""


class _Listed(FunctionElement[Any]):
    """The ids of one text parameter as rows: any number of them in one statement that is kept."""

    inherit_cache = True


@compiles(_Listed, "sqlite")
def _listed_in_sqlite(element: _Listed, compiler: SQLCompiler, **kw: Any) -> str:
    return f"(SELECT value FROM json_each({compiler.process(element.clauses, **kw)}))"


@compiles(_Listed, "postgresql")
def _listed_in_postgresql(element: _Listed, compiler: SQLCompiler, **kw: Any) -> str:
    one = compiler.process(element.clauses, **kw)
    return f"(SELECT CAST(value AS bigint) FROM json_array_elements_text(CAST({one} AS json)))"


def among(
    column: InstrumentedAttribute[int] | InstrumentedAttribute[int | None] | ColumnElement[int],
    name: str,
) -> ColumnElement[bool]:
    """The column is one of the ids given as parameter `name`, made by `listed`."""
    test = column.op("IN", return_type=Boolean())
    return test(_Listed(bindparam(name, type_=Text)))


def listed(ids: Iterable[int]) -> str:
    """Ids as the one parameter that `among` asks for."""
    return json.dumps(list(ids))


def open_engine(url: URL) -> Engine:
    """An engine whose connections read, unless a deed says that it writes."""
    if url.get_backend_name() == "sqlite":
        engine = create_engine(url, connect_args={"timeout": 5, "check_same_thread": False})
        event.listen(engine, "connect", _prepare_sqlite)
        event.listen(engine, "begin", _begin_sqlite)
    else:
        engine = create_engine(url)
        event.listen(engine, "begin", _begin_postgresql)
    return engine


def _prepare_sqlite(raw: sqlite3.Connection, _record: object) -> None:
    raw.isolation_level = None  # this module, not the driver, says BEGIN
    raw.execute("PRAGMA foreign_keys = ON")
    raw.execute("PRAGMA synchronous = FULL")


def _begin_sqlite(connection: Connection) -> None:
    writes = connection.get_execution_options().get(MODE) == "write"
    connection.exec_driver_sql(f"PRAGMA query_only = {'OFF' if writes else 'ON'}")
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")


def _begin_postgresql(connection: Connection) -> None:
    if connection.get_execution_options().get(MODE) != "write":
        connection.exec_driver_sql("SET TRANSACTION READ ONLY")


def locks_rows(dialect: Dialect) -> bool:
    """Whether the head is locked by row; SQLite's BEGIN IMMEDIATE has locked the whole book."""
    return dialect.name != "sqlite"
