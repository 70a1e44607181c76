"""Recipes as they stood: zones, components in their order of pouring, steps of heat and time."""

from sqlalchemy import CheckConstraint, ForeignKey, Index
from sqlalchemy.orm import Mapped, mapped_column

from app.records.base import Fact, Record, once_while_believed, one_of

LOOKS = ("solid", "semi-solid", "zones", "speckle")
UNITS = ("owf", "bath", "bottle")


class Zone(Fact, Record, kw_only=True):
    """One zone of a painted skein: its bottle, its part of the skein, and what is poured on it."""

    __tablename__ = "zone"
    __table_args__ = (
        once_while_believed("uq_zone_letter", "recipe_version", "letter"),
        CheckConstraint("ml_per_100_g >= 0", name="pours_something"),
        {"sqlite_strict": True},
    )

    recipe_version: Mapped[int] = mapped_column(ForeignKey("recipe_version.id"))
    letter: Mapped[str]
    name: Mapped[str] = mapped_column(default="")
    share_permille: Mapped[int]
    ml_per_100_g: Mapped[int]
    swatch: Mapped[str | None] = mapped_column(default=None)


class Component(Fact, Record, kw_only=True):
    """One dye or assistant of a recipe version, at its place in the order of pouring.

    `amount` by its unit: `owf` in millionths of the dry fibre (0.85 % is 8500), `bath` in
    milligrams a litre of bath, `bottle` in milligrams a litre of the zone's bottle (1 % w/v is
    10000). `form` names what is weighed: anhydrous, crystals, 5 % vinegar.
    """

    __tablename__ = "component"
    __table_args__ = (
        one_of("role", ("dye", "assistant"), "role"),
        one_of("unit", UNITS, "unit"),
        CheckConstraint("amount > 0", name="is_some"),
        CheckConstraint("(unit = 'bottle') = (zone IS NOT NULL)", name="bottle_has_a_zone"),
        Index("ix_component_recipe_version", "recipe_version", "place"),
        {"sqlite_strict": True},
    )

    recipe_version: Mapped[int] = mapped_column(ForeignKey("recipe_version.id"))
    zone: Mapped[int | None] = mapped_column(ForeignKey("zone.id"), default=None)
    place: Mapped[int]
    role: Mapped[str]
    substance: Mapped[str]
    unit: Mapped[str]
    amount: Mapped[int]
    form: Mapped[str] = mapped_column(default="")


class Step(Fact, Record, kw_only=True):
    """One step at the pot or the steamer: what to do, how hot, how long."""

    __tablename__ = "step"
    __table_args__ = (
        Index("ix_step_recipe_version", "recipe_version", "place"),
        {"sqlite_strict": True},
    )

    recipe_version: Mapped[int] = mapped_column(ForeignKey("recipe_version.id"))
    place: Mapped[int]
    words: Mapped[str]
    decidegrees: Mapped[int | None] = mapped_column(default=None)
    minutes: Mapped[int | None] = mapped_column(default=None)
