"""The people of the studio, and the fields about persons that can be erased on request."""

from sqlalchemy import CheckConstraint, ForeignKey, Index
from sqlalchemy.orm import Mapped, mapped_column

from app.records.base import Fact, Record, by_deed

SECRET = {"secret": True}
"""Marks a column that never enters the journal."""


class Person(Fact, Record, kw_only=True):
    """One who signs deeds; the initials are theirs for ever, also after they left."""

    __tablename__ = "person"
    __table_args__ = {"sqlite_strict": True}

    initials: Mapped[str] = mapped_column(unique=True)
    left: Mapped[int | None] = mapped_column(by_deed(), init=False, default=None)


class Personal(Fact, Record, kw_only=True):
    """One field about a person or customer: the journal holds its salted digest alone.

    Value and salt are erased together; a digest whose salt is kept could be guessed.
    """

    __tablename__ = "personal"
    __table_args__ = (
        CheckConstraint("(value IS NULL) = (salt IS NULL)", name="erased_together"),
        CheckConstraint("(customer IS NULL) <> (person IS NULL)", name="about_one"),
        Index("ix_personal_customer", "customer"),
        Index("ix_personal_person", "person"),
        {"sqlite_strict": True},
    )

    customer: Mapped[int | None] = mapped_column(ForeignKey("customer.id"), default=None)
    person: Mapped[int | None] = mapped_column(ForeignKey("person.id"), default=None)
    field: Mapped[str]
    value: Mapped[str | None] = mapped_column(info=SECRET)
    salt: Mapped[str | None] = mapped_column(info=SECRET)
    digest: Mapped[str]


class Setting(Fact, Record, kw_only=True):
    """A choice of the studio (its name, tie colours, texts); the newest believed row counts."""

    __tablename__ = "setting"
    __table_args__ = (Index("ix_setting_key", "key", "id"), {"sqlite_strict": True})

    key: Mapped[str]
    value: Mapped[str]
