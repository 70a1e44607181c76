"""The journal: one row a deed, in one unbroken order, each chained to the one before."""

from datetime import datetime

from sqlalchemy import ForeignKey, Index
from sqlalchemy.orm import Mapped, mapped_column

from app.records.base import Record


class DeedRow(Record):
    """One deed. `body` is the stored text that was hashed, with its rows before and after."""

    __tablename__ = "deed"
    __table_args__ = {"sqlite_strict": True}

    seq: Mapped[int] = mapped_column(primary_key=True, autoincrement=False)
    happened: Mapped[datetime]
    written: Mapped[datetime]
    person: Mapped[str]
    station: Mapped[str]
    name: Mapped[str]
    token: Mapped[str] = mapped_column(unique=True)
    undoes: Mapped[int | None] = mapped_column(ForeignKey("deed.seq"), unique=True)
    body: Mapped[bytes]
    hash: Mapped[bytes] = mapped_column(unique=True)


class Touched(Record):
    """Which rows a deed wrote: the history of a thing, and what an undo must look at."""

    __tablename__ = "touched"
    __table_args__ = (
        Index("ix_touched_row", "tbl", "row", "deed"),
        {"sqlite_strict": True},
    )

    deed: Mapped[int] = mapped_column(ForeignKey("deed.seq"), primary_key=True)
    tbl: Mapped[str] = mapped_column(primary_key=True)
    row: Mapped[int] = mapped_column(primary_key=True)


class Head(Record):
    """The end of the chain: one row, locked while the next entry is made."""

    __tablename__ = "head"
    __table_args__ = {"sqlite_strict": True}

    id: Mapped[int] = mapped_column(primary_key=True, autoincrement=False)
    seq: Mapped[int]
    written: Mapped[datetime]
    hash: Mapped[bytes]
