"""Tags: printed is not applied, applied is not sold, and a mark is never used twice."""

from typing import ClassVar

from sqlalchemy import CheckConstraint, ForeignKey, Index, text
from sqlalchemy.orm import Mapped, mapped_column

from app.records.base import Fact, Record, Stay, by_deed, ends_after_it_began, one_open


class PrintSheet(Fact, Record, kw_only=True):
    """One printing: on which stock, from which cell on, and why if for more than was counted."""

    __tablename__ = "print_sheet"
    __table_args__ = (
        CheckConstraint("first_cell > 0", name="begins_at_a_cell"),
        {"sqlite_strict": True},
    )

    stock: Mapped[str]
    first_cell: Mapped[int]
    why: Mapped[str] = mapped_column(default="")


class Tag(Fact, Record, kw_only=True):
    """A printed tag with its own mark and the words it was printed with."""

    __tablename__ = "tag"
    __table_args__ = (
        Index("ix_tag_lot", "lot"),
        Index("ix_tag_pile", "pile"),
        Index("ix_tag_sheet", "sheet"),
        Index("ix_tag_successor", "successor", sqlite_where=text("successor IS NOT NULL"),
              postgresql_where=text("successor IS NOT NULL")),
        {"sqlite_strict": True},
    )

    mark: Mapped[str] = mapped_column(unique=True)
    lot: Mapped[int] = mapped_column(ForeignKey("dye_lot.id"))
    pile: Mapped[int | None] = mapped_column(ForeignKey("yarn.id"))
    base_version: Mapped[int | None] = mapped_column(ForeignKey("base_version.id"))
    words: Mapped[str]
    sheet: Mapped[int] = mapped_column(ForeignKey("print_sheet.id"))
    cell: Mapped[int | None] = mapped_column(default=None)
    """Counted row by row from 1 over all sheets of its printing; none in books of before 0005,
    where tags of a sheet follow one another from its first cell."""
    void: Mapped[int | None] = mapped_column(by_deed(), init=False, default=None)
    successor: Mapped[int | None] = mapped_column(ForeignKey("tag.id"), init=False, default=None)


class TagsInHand(Fact, Record, kw_only=True):
    """Printed tags of a lot counted in hand at the end of a day, neither tied on nor spoiled.

    `why` is said where they do not add up with what was printed, tied on and spoiled.
    """

    __tablename__ = "tags_in_hand"
    __table_args__ = (
        CheckConstraint("count >= 0", name="is_a_count"),
        Index("ix_tags_in_hand_lot", "lot"),
        {"sqlite_strict": True},
    )

    lot: Mapped[int] = mapped_column(ForeignKey("dye_lot.id"))
    count: Mapped[int]
    why: Mapped[str] = mapped_column(default="")


class TagOn(Stay, Record, kw_only=True):
    """A tag hung on a skein for a while: one tag a skein, one skein a tag."""

    __tablename__ = "tag_on"
    __table_args__ = (
        ends_after_it_began(),
        one_open("uq_tag_hangs_once", "tag"),
        one_open("uq_skein_wears_one", "yarn"),
        Index("ix_tag_on_tag", "tag"),
        Index("ix_tag_on_when", "yarn", "since"),
        {"sqlite_strict": True},
    )
    stay_of: ClassVar[str] = "yarn"

    tag: Mapped[int] = mapped_column(ForeignKey("tag.id"))
    yarn: Mapped[int] = mapped_column(ForeignKey("yarn.id"))
