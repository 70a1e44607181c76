"""One text of SQL for both databases: SQLite at one station, PostgreSQL for several."""

import importlib
import pkgutil
from collections.abc import Iterator

import pytest
from sqlalchemy import Executable, Select, select, text
from sqlalchemy.dialects import postgresql, sqlite
from sqlalchemy.schema import CreateIndex, CreateTable

import app.lookups
from app.lookups.walks import BELOW
from app.records import Head, Record, Yarn
from app.store.book import Book
from app.store.dialect import among, listed, locks_rows
from tests.makers import Studio

BOTH = {"sqlite": sqlite.dialect(), "postgresql": postgresql.dialect()}


def statements() -> Iterator[tuple[str, Select[*tuple[object, ...]]]]:
    """Every question that a module of lookups keeps ready."""
    for found in pkgutil.iter_modules(app.lookups.__path__):
        module = importlib.import_module(f"app.lookups.{found.name}")
        for name, value in vars(module).items():
            if isinstance(value, Select):
                yield f"{found.name}.{name}", value
    yield from ((f"walks.BELOW[{kind}]", walk) for kind, walk in BELOW.items())


KEPT = dict(statements())


@pytest.mark.parametrize("name", BOTH)
@pytest.mark.parametrize("table", Record.metadata.sorted_tables, ids=lambda table: table.name)
def test_every_table_can_be_made_in(table: object, name: str) -> None:
    made = str(CreateTable(table).compile(dialect=BOTH[name]))  # type: ignore[arg-type]
    assert ("STRICT" in made) is (name == "sqlite")
    for index in table.indexes:  # type: ignore[attr-defined]
        kept = index.dialect_options["sqlite"]["where"] is not None
        assert kept is (" WHERE " in str(CreateIndex(index).compile(dialect=BOTH[name])))


@pytest.mark.parametrize("name", KEPT)
def test_every_question_can_be_asked_of_both(name: str) -> None:
    in_sqlite, in_postgresql = (str(KEPT[name].compile(dialect=each)) for each in BOTH.values())
    assert "json_each" not in in_postgresql
    assert "json_array_elements" not in in_sqlite
    if "WITH RECURSIVE" in in_sqlite:
        assert "WITH RECURSIVE" in in_postgresql


def test_the_questions_that_are_kept_ready_are_met() -> None:
    assert {"walks.ABOVE", "thread._PARTS", "present._LEAVES", "walks.BELOW[cone]"} <= set(KEPT)


def test_any_number_of_ids_is_one_statement(studio: Studio) -> None:
    question: Executable = select(Yarn.id).where(among(Yarn.id, "ids"))
    rows = [studio.wind(studio.cone(), 1) for _ in range(3)]
    for wanted in ([], rows[:1], rows, [*rows, *range(1000, 41_000)]):
        found = studio.book.ask(
            lambda c, w=wanted: (
                c.execute(  # type: ignore[misc]
                    question, {"ids": listed(w)}
                )
                .scalars()
                .all()
            )
        )
        assert sorted(found) == [row for row in rows if row in wanted]


def test_a_book_follows_links_and_is_durable_at_every_deed(book: Book) -> None:
    def pragma(name: str) -> object:
        return book.ask(lambda c: c.execute(text(f"PRAGMA {name}")).scalar_one())

    assert (pragma("foreign_keys"), pragma("synchronous"), pragma("query_only")) == (1, 2, 1)


def test_a_server_locks_the_head_and_a_file_the_whole_book() -> None:
    assert locks_rows(BOTH["postgresql"])
    assert not locks_rows(BOTH["sqlite"])
    asked = select(Head.seq).with_for_update()
    assert str(asked.compile(dialect=BOTH["postgresql"])).endswith("FOR UPDATE")
