"""Where each skein is: one open row a skein, so that none is in two places or sold twice."""

from datetime import datetime
from typing import ClassVar

from sqlalchemy import CheckConstraint, ForeignKey, Index, text
from sqlalchemy.orm import Mapped, mapped_column

from app.records.base import (
    Record,
    Stay,
    ends_after_it_began,
    known_basis,
    one_of,
    one_open,
)

_PUT_BY_NOW = "state = 'put by' AND until IS NULL AND struck IS NULL"
STATES = ("table", "shelf", "put by", "kit", "taken", "sent", "fair", "lost", "given", "discarded")


class Whereabouts(Stay, Record, kw_only=True):
    """A skein was in this state for a while, with the place, line, kit or customer it needs."""

    __tablename__ = "whereabouts"
    __table_args__ = (
        one_of("state", STATES, "state"),
        known_basis(),
        ends_after_it_began(),
        CheckConstraint("(state IN ('taken','sent')) = (line IS NOT NULL)", name="is_on_an_order"),
        CheckConstraint("state <> 'kit' OR kit IS NOT NULL", name="is_in_a_kit"),
        CheckConstraint("state NOT IN ('shelf','fair') OR place IS NOT NULL", name="has_a_place"),
        CheckConstraint("state <> 'put by' OR ends IS NOT NULL", name="put_by_until"),
        one_open("uq_one_state_a_skein", "yarn"),
        Index("ix_whereabouts_when", "yarn", "since"),
        Index("ix_whereabouts_place", "place", sqlite_where=text("place IS NOT NULL"),
              postgresql_where=text("place IS NOT NULL")),
        Index("ix_whereabouts_line", "line", sqlite_where=text("line IS NOT NULL"),
              postgresql_where=text("line IS NOT NULL")),
        Index("ix_whereabouts_kit", "kit", sqlite_where=text("kit IS NOT NULL"),
              postgresql_where=text("kit IS NOT NULL")),
        Index("ix_whereabouts_put_by", "ends", sqlite_where=text(_PUT_BY_NOW),
              postgresql_where=text(_PUT_BY_NOW)),
        {"sqlite_strict": True},
    )
    stay_of: ClassVar[str] = "yarn"

    yarn: Mapped[int] = mapped_column(ForeignKey("yarn.id"))
    state: Mapped[str]
    place: Mapped[int | None] = mapped_column(ForeignKey("plate.id"), default=None)
    line: Mapped[int | None] = mapped_column(ForeignKey("order_line.id"), default=None)
    kit: Mapped[int | None] = mapped_column(ForeignKey("kit.id"), default=None)
    customer: Mapped[int | None] = mapped_column(ForeignKey("customer.id"), default=None)
    ends: Mapped[datetime | None] = mapped_column(default=None)
    """Until when a skein is put by."""
    basis: Mapped[str]
