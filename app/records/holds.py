"""Holds: one entry at the source; all below is on hold by computation."""

from sqlalchemy import CheckConstraint, ForeignKey, Index, text
from sqlalchemy.orm import Mapped, mapped_column

from app.records.base import Fact, Record, by_deed

SOURCES = ("cone", "yarn", "lot", "load", "bath", "fill", "supplier_lot")
_GIVEN = " + ".join(f"(CASE WHEN {kind} IS NULL THEN 0 ELSE 1 END)" for kind in SOURCES)
_LIVE = text("lifted IS NULL AND struck IS NULL")


class Hold(Fact, Record, kw_only=True):
    """Nothing made of this source may be sold, printed or promised until the hold is lifted."""

    __tablename__ = "hold"
    __table_args__ = (
        CheckConstraint(f"{_GIVEN} = 1", name="one_source"),
        Index("ix_hold_live", "id", sqlite_where=_LIVE, postgresql_where=_LIVE),
        {"sqlite_strict": True},
    )

    cone: Mapped[int | None] = mapped_column(ForeignKey("cone.id"), default=None)
    yarn: Mapped[int | None] = mapped_column(ForeignKey("yarn.id"), default=None)
    lot: Mapped[int | None] = mapped_column(ForeignKey("dye_lot.id"), default=None)
    load: Mapped[int | None] = mapped_column(ForeignKey("load.id"), default=None)
    bath: Mapped[int | None] = mapped_column(ForeignKey("bath.id"), default=None)
    fill: Mapped[int | None] = mapped_column(ForeignKey("fill.id"), default=None)
    supplier_lot: Mapped[int | None] = mapped_column(
        ForeignKey("supplier_lot.id"), default=None)
    """A spinner's batch: every cone of it."""
    why: Mapped[str]
    lifted: Mapped[int | None] = mapped_column(by_deed(), init=False, default=None)


class Clear(Fact, Record, kw_only=True):
    """This yarn was cleared of that one hold, with evidence; a new hold takes no clearing over."""

    __tablename__ = "clear"
    __table_args__ = (Index("ix_clear_hold", "hold"), {"sqlite_strict": True})

    hold: Mapped[int] = mapped_column(ForeignKey("hold.id"))
    yarn: Mapped[int] = mapped_column(ForeignKey("yarn.id"))
    evidence: Mapped[str]
