"""Colourways, recipe versions, baths with their dye lots, and the loads that join them by water."""

from sqlalchemy import ForeignKey, Index, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from app.records.base import (
    Fact,
    Record,
    by_deed,
    known_basis,
    once_while_believed,
    one_of,
)
from app.records.recipes import LOOKS


class Colourway(Fact, Record, kw_only=True):
    """A named look offered for sale; the swatch is chosen by eye, never measured here."""

    __tablename__ = "colourway"
    __table_args__ = (once_while_believed("uq_colourway_name", "name"), {"sqlite_strict": True})

    name: Mapped[str]
    swatch: Mapped[str | None] = mapped_column(default=None)


class RecipeVersion(Fact, Record, kw_only=True):
    """A recipe as it stood: frozen from the first weigh-out or bath that used it.

    `base_class` is the fibre it was made for, in words; the liquor in tenths (200 is 20 : 1).
    """

    __tablename__ = "recipe_version"
    __table_args__ = (
        UniqueConstraint("colourway", "number"),
        one_of("look", LOOKS, "look"),
        {"sqlite_strict": True},
    )

    colourway: Mapped[int] = mapped_column(ForeignKey("colourway.id"))
    number: Mapped[int]
    note: Mapped[str] = mapped_column(default="")
    look: Mapped[str | None] = mapped_column(default=None)
    base_class: Mapped[str | None] = mapped_column(default=None)
    liquor_tenths: Mapped[int | None] = mapped_column(default=None)


class Bath(Fact, Record, kw_only=True):
    """One bath in one vessel at one time."""

    __tablename__ = "bath"
    __table_args__ = (
        Index("ix_bath_plate", "plate"),
        Index("ix_bath_weighing", "weighing"),
        Index("ix_bath_recipe_version", "recipe_version"),
        {"sqlite_strict": True},
    )

    plate: Mapped[int | None] = mapped_column(ForeignKey("plate.id"))
    recipe_version: Mapped[int] = mapped_column(ForeignKey("recipe_version.id"))
    weighing: Mapped[int | None] = mapped_column(ForeignKey("weighing.id"), default=None)
    lifted: Mapped[int | None] = mapped_column(by_deed(), init=False, default=None)


class DyeLot(Fact, Record, kw_only=True):
    """One bath and one base; no code means it is pending while the clock is in doubt."""

    __tablename__ = "dye_lot"
    __table_args__ = (UniqueConstraint("bath", "base"), {"sqlite_strict": True})

    code: Mapped[str | None] = mapped_column(unique=True)
    bath: Mapped[int | None] = mapped_column(ForeignKey("bath.id"))
    base: Mapped[int] = mapped_column(ForeignKey("base.id"))
    colourway: Mapped[int] = mapped_column(ForeignKey("colourway.id"))


class InBath(Fact, Record, kw_only=True):
    """This yarn went into that bath and became that lot."""

    __tablename__ = "in_bath"
    __table_args__ = (
        known_basis(),
        Index("ix_in_bath_lot", "lot", "yarn", "struck"),
        Index("ix_in_bath_yarn", "yarn"),
        once_while_believed("uq_in_bath_once", "yarn", "lot"),
        {"sqlite_strict": True},
    )

    yarn: Mapped[int] = mapped_column(ForeignKey("yarn.id"))
    lot: Mapped[int] = mapped_column(ForeignKey("dye_lot.id"))
    basis: Mapped[str]


class Load(Fact, Record, kw_only=True):
    """One soak, wash, spin, rail or steamer run."""

    __tablename__ = "load"
    __table_args__ = (
        one_of("step", ("soak", "wash", "spin", "rail", "steamer"), "step"),
        {"sqlite_strict": True},
    )

    step: Mapped[str]
    plate: Mapped[int | None] = mapped_column(ForeignKey("plate.id"), default=None)


class InLoad(Fact, Record, kw_only=True):
    """This yarn was in that load; half a lot may be in another."""

    __tablename__ = "in_load"
    __table_args__ = (
        known_basis(),
        Index("ix_in_load_load", "load", "yarn", "struck"),
        Index("ix_in_load_yarn", "yarn"),
        once_while_believed("uq_in_load_once", "yarn", "load"),
        {"sqlite_strict": True},
    )

    yarn: Mapped[int] = mapped_column(ForeignKey("yarn.id"))
    load: Mapped[int] = mapped_column(ForeignKey("load.id"))
    basis: Mapped[str]
