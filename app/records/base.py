"""What all records share: names of constraints, moments in UTC, who wrote a row, and stays."""

from datetime import UTC, datetime
from typing import Any, ClassVar

from sqlalchemy import (
    CheckConstraint,
    DateTime,
    Dialect,
    ForeignKey,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    Text,
    TypeDecorator,
    text,
)
from sqlalchemy.orm import DeclarativeBase, Mapped, MappedAsDataclass, mapped_column
from sqlalchemy.types import TypeEngine

BASES = ("scanned", "counted", "recognised", "matched", "stated")
"""How a link is known, strongest first; a way is as strong as its weakest link."""


def stronger_first(basis: str) -> int:
    """Place of a basis in the order of trust."""
    return BASES.index(basis)


def moment_text(moment: datetime) -> str:
    """A moment as text of one width, so that the order of texts is the order of time."""
    if moment.tzinfo is None:
        raise ValueError("a moment needs a time zone")
    return moment.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%S.%fZ")


class Moment(TypeDecorator[datetime]):
    """A moment in UTC; one without a time zone is refused."""

    impl = Text
    cache_ok = True

    def load_dialect_impl(self, dialect: Dialect) -> TypeEngine[Any]:
        kind: TypeEngine[Any] = Text() if dialect.name == "sqlite" else DateTime(timezone=True)
        return dialect.type_descriptor(kind)

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> Any:
        if value is None:
            return None
        text = moment_text(value)
        return text if dialect.name == "sqlite" else value.astimezone(UTC)

    def process_result_value(self, value: Any, dialect: Dialect) -> datetime | None:
        if value is None or isinstance(value, datetime):
            return value
        return datetime.strptime(value, "%Y-%m-%dT%H:%M:%S.%fZ").replace(tzinfo=UTC)


class Record(MappedAsDataclass, DeclarativeBase, kw_only=True):
    """A table of the book; every constraint has a name, so that it can be altered later."""

    metadata = MetaData(
        naming_convention={
            "ix": "ix_%(column_0_N_label)s",
            "uq": "uq_%(table_name)s_%(column_0_N_name)s",
            "ck": "ck_%(table_name)s_%(constraint_name)s",
            "fk": "fk_%(table_name)s_%(column_0_N_name)s",
            "pk": "pk_%(table_name)s",
        }
    )
    type_annotation_map: ClassVar[dict[Any, Any]] = {
        datetime: Moment, str: Text, int: Integer, bytes: LargeBinary
    }


def by_deed() -> ForeignKey:
    """Points at the deed's own row."""
    return ForeignKey("deed.seq", deferrable=True, initially="DEFERRED")


class Fact(MappedAsDataclass, kw_only=True):
    """A row that a deed wrote; `struck` names the deed that said it was never so."""

    id: Mapped[int] = mapped_column(primary_key=True, autoincrement=False, init=False)
    deed: Mapped[int] = mapped_column(by_deed(), init=False)
    struck: Mapped[int | None] = mapped_column(by_deed(), init=False, default=None)


class Stay(Fact, kw_only=True):
    """Something that was so for a while; ended is not struck, for it was true."""

    stay_of: ClassVar[str]

    since: Mapped[datetime] = mapped_column(init=False)
    until: Mapped[datetime | None] = mapped_column(init=False, default=None)
    ended_by: Mapped[int | None] = mapped_column(by_deed(), init=False, default=None)


def one_of(column: str, values: tuple[str, ...], name: str) -> CheckConstraint:
    """The column holds one of these words."""
    listed = ", ".join(f"'{value}'" for value in values)
    return CheckConstraint(f"{column} IN ({listed})", name=name)


def known_basis() -> CheckConstraint:
    """The row says how it is known."""
    return one_of("basis", BASES, "basis")


def ends_after_it_began() -> CheckConstraint:
    """No stay ends before it began."""
    return CheckConstraint("until IS NULL OR until >= since", name="ends_after_it_began")


BELIEVED = text("struck IS NULL")
OPEN = text("until IS NULL AND struck IS NULL")


def once_while_believed(name: str, *columns: str) -> Index:
    """No two rows that are believed share these columns."""
    return Index(name, *columns, unique=True, sqlite_where=BELIEVED, postgresql_where=BELIEVED)


def one_open(name: str, column: str) -> Index:
    """One thing has one open stay at the most."""
    return Index(name, column, unique=True, sqlite_where=OPEN, postgresql_where=OPEN)
