"""Yarn qualities, as they were described over the years, and the forms they are sold in."""

from sqlalchemy import CheckConstraint, ForeignKey, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from app.records.base import Fact, Record, once_while_believed


class Base(Fact, Record, kw_only=True):
    """A yarn quality the studio dyes; not a colour."""

    __tablename__ = "base"
    __table_args__ = (once_while_believed("uq_base_name", "name"), {"sqlite_strict": True})

    name: Mapped[str]


class BaseVersion(Fact, Record, kw_only=True):
    """What is said of a base from one delivery on: a cone keeps the version it came with."""

    __tablename__ = "base_version"
    __table_args__ = (
        UniqueConstraint("base", "number"),
        CheckConstraint("millitex > 0", name="has_a_count"),
        {"sqlite_strict": True},
    )

    base: Mapped[int] = mapped_column(ForeignKey("base.id"))
    number: Mapped[int]
    fibre: Mapped[str]
    millitex: Mapped[int]
    oil_permille: Mapped[int] = mapped_column(default=0)
    relax_permille: Mapped[int] = mapped_column(default=0)
    regain_permille: Mapped[int] = mapped_column(default=160)
    knit: Mapped[str] = mapped_column(default="")
    care: Mapped[str] = mapped_column(default="")
    origin: Mapped[str] = mapped_column(default="")


class PutUp(Fact, Record, kw_only=True):
    """A form sold: what is wound for it, and what its tag says (never more than is inside)."""

    __tablename__ = "put_up"
    __table_args__ = (
        UniqueConstraint("base_version", "name"),
        CheckConstraint("turns > 0 AND reel_mm > 0", name="is_wound"),
        {"sqlite_strict": True},
    )

    base_version: Mapped[int] = mapped_column(ForeignKey("base_version.id"))
    name: Mapped[str]
    turns: Mapped[int]
    reel_mm: Mapped[int]
    nominal_mg: Mapped[int]
    nominal_mm: Mapped[int]
