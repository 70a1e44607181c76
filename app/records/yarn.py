"""All yarn is one table and one link: so many members and milligrams of this came out of that."""

from sqlalchemy import CheckConstraint, ForeignKey, Index, and_, literal_column, text
from sqlalchemy.orm import Mapped, mapped_column

from app.records.base import (
    Fact,
    Record,
    by_deed,
    known_basis,
    once_while_believed,
    one_of,
)

_IN_WORK = text("closed IS NULL AND struck IS NULL AND kind <> 'skein'")


class Yarn(Fact, Record, kw_only=True):
    """So many skeins that cannot be told apart, or one tagged skein.

    `count` and `mg` (wound dry mass) are those at birth and never altered; `closed` names the deed
    that divided the row.
    """

    __tablename__ = "yarn"
    __table_args__ = (
        one_of("kind", ("group", "pile", "skein", "find", "candidates"), "kind"),
        CheckConstraint("count > 0 AND mg >= 0", name="is_something"),
        CheckConstraint("kind <> 'skein' OR count = 1", name="one_skein_a_row"),
        Index("ix_yarn_in_work", "kind", "base", sqlite_where=_IN_WORK,
              postgresql_where=_IN_WORK),
        {"sqlite_strict": True},
    )

    kind: Mapped[str]
    base: Mapped[int] = mapped_column(ForeignKey("base.id"))
    put_up: Mapped[str]
    count: Mapped[int]
    mg: Mapped[int]
    tie: Mapped[str | None] = mapped_column(default=None)
    base_version: Mapped[int | None] = mapped_column(ForeignKey("base_version.id"), default=None)
    closed: Mapped[int | None] = mapped_column(by_deed(), init=False, default=None)


IN_WORK = and_(Yarn.closed.is_(None), Yarn.struck.is_(None),
               Yarn.kind != literal_column("'skein'"))
"""Not divided yet and without a tag: few rows, which an index keeps together."""


class Draw(Fact, Record, kw_only=True):
    """Milligrams and millimetres of one cone in one group; a skein over a join has two draws."""

    __tablename__ = "draw"
    __table_args__ = (
        CheckConstraint("mg > 0 AND mm > 0", name="draws_something"),
        known_basis(),
        Index("ix_draw_cone", "cone", "yarn", "struck"),
        Index("ix_draw_yarn", "yarn"),
        {"sqlite_strict": True},
    )

    cone: Mapped[int] = mapped_column(ForeignKey("cone.id"))
    yarn: Mapped[int] = mapped_column(ForeignKey("yarn.id"))
    mg: Mapped[int]
    mm: Mapped[int]
    basis: Mapped[str]


class Part(Fact, Record, kw_only=True):
    """`gave` members of the child came out of the parent and used up `took` of its members.

    `took` 0 means "one of these": nothing moved.
    """

    __tablename__ = "part"
    __table_args__ = (
        CheckConstraint("took >= 0 AND gave > 0 AND mg >= 0", name="is_something"),
        CheckConstraint("child <> parent", name="not_of_itself"),
        known_basis(),
        Index("ix_part_up", "child", "parent", "struck"),
        Index("ix_part_down", "parent", "child", "struck", "took", "mg"),
        once_while_believed("uq_part_once", "child", "parent"),
        {"sqlite_strict": True},
    )

    child: Mapped[int] = mapped_column(ForeignKey("yarn.id"))
    parent: Mapped[int] = mapped_column(ForeignKey("yarn.id"))
    took: Mapped[int]
    gave: Mapped[int]
    mg: Mapped[int]
    basis: Mapped[str]


class Told(Fact, Record, kw_only=True):
    """These members came, at that pool, from that parent; what is made of them inherits it."""

    __tablename__ = "told"
    __table_args__ = (
        CheckConstraint("count > 0", name="tells_of_some"),
        known_basis(),
        Index("ix_told_pool", "pool"),
        once_while_believed("uq_told_once", "yarn", "pool"),
        {"sqlite_strict": True},
    )

    yarn: Mapped[int] = mapped_column(ForeignKey("yarn.id"))
    pool: Mapped[int] = mapped_column(ForeignKey("yarn.id"))
    parent: Mapped[int] = mapped_column(ForeignKey("yarn.id"))
    count: Mapped[int]
    basis: Mapped[str]


class Waste(Fact, Record, kw_only=True):
    """Mass that left the thread: the end of a cone, the loss of a cut."""

    __tablename__ = "waste"
    __table_args__ = (
        CheckConstraint("(cone IS NULL) <> (yarn IS NULL)", name="of_one_thing"),
        CheckConstraint("mg > 0", name="weighs_something"),
        Index("ix_waste_yarn", "yarn", "mg", "struck"),
        Index("ix_waste_cone", "cone"),
        {"sqlite_strict": True},
    )

    cone: Mapped[int | None] = mapped_column(ForeignKey("cone.id"), default=None)
    yarn: Mapped[int | None] = mapped_column(ForeignKey("yarn.id"), default=None)
    mg: Mapped[int]
    why: Mapped[str]
