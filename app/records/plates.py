"""Anything scannable that is used again (disc, pot, shelf ...), and the bundles that wear discs."""

from typing import ClassVar

from sqlalchemy import ForeignKey, Index
from sqlalchemy.orm import Mapped, mapped_column

from app.records.base import (
    Fact,
    Record,
    Stay,
    ends_after_it_began,
    once_while_believed,
    one_open,
)


class Plate(Fact, Record, kw_only=True):
    """A plate or disc: it holds something only between two moments, and is nothing by itself."""

    __tablename__ = "plate"
    __table_args__ = (once_while_believed("uq_plate_code", "code"), {"sqlite_strict": True})

    code: Mapped[str]
    kind: Mapped[str]
    words: Mapped[str] = mapped_column(default="")


class Bundle(Fact, Record, kw_only=True):
    """A cord that travels from winding to the finishing table."""

    __tablename__ = "bundle"
    __table_args__ = {"sqlite_strict": True}

    note: Mapped[str] = mapped_column(default="")


class PlateStay(Stay, Record, kw_only=True):
    """A disc hung on a bundle for a while."""

    __tablename__ = "plate_stay"
    __table_args__ = (
        ends_after_it_began(),
        one_open("uq_plate_holds_one", "plate"),
        Index("ix_plate_stay_when", "plate", "since"),
        Index("ix_plate_stay_bundle", "bundle"),
        {"sqlite_strict": True},
    )
    stay_of: ClassVar[str] = "plate"

    plate: Mapped[int] = mapped_column(ForeignKey("plate.id"))
    bundle: Mapped[int] = mapped_column(ForeignKey("bundle.id"))


class OnBundle(Stay, Record, kw_only=True):
    """Yarn was on a bundle for a while."""

    __tablename__ = "on_bundle"
    __table_args__ = (
        ends_after_it_began(),
        Index("ix_on_bundle_bundle", "bundle"),
        Index("ix_on_bundle_yarn", "yarn"),
        {"sqlite_strict": True},
    )
    stay_of: ClassVar[str] = "yarn"

    yarn: Mapped[int] = mapped_column(ForeignKey("yarn.id"))
    bundle: Mapped[int] = mapped_column(ForeignKey("bundle.id"))
