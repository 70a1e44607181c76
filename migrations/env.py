"""Alembic's entry: always on the connection that app.store.upgrade hands over."""

from typing import Any

from alembic import context

from app.records import Record
from app.records.base import Moment


def render(kind: str, item: Any, _context: Any) -> str | bool:
    """Scripts carry their own MOMENT, so that they never import the program."""
    return "MOMENT" if kind == "type" and isinstance(item, Moment) else False


connection = context.config.attributes["connection"]
context.configure(
    connection=connection,
    target_metadata=Record.metadata,
    render_as_batch=True,
    render_item=render,
    transactional_ddl=True,
    compare_type=True,
)
with context.begin_transaction():
    context.run_migrations()
