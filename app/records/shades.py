"""How a lot looks: what an instrument read, grey-scale steps, and what the inspector decided."""

from sqlalchemy import CheckConstraint, ForeignKey, Index, text
from sqlalchemy.orm import Mapped, mapped_column

from app.records.base import Fact, Record, one_of

VERDICTS = ("standard", "sister group", "one-off", "seconds", "hold")
CAME = ("typed", "csv", "cgats")
SCALES = ("change", "staining")


class ShadeReading(Fact, Record, kw_only=True):
    """L*, a*, b* of one card in thousandths: of a lot, of a colourway's standard, or of a cone.

    A standard is that of a colourway on one base. `zone` is the letter of a painted skein's zone.
    `readings` is how many the mean is of, `spread_milli` the largest CIEDE2000 between two of them.
    """

    __tablename__ = "shade_reading"
    __table_args__ = (
        CheckConstraint(
            "(CASE WHEN lot IS NULL THEN 0 ELSE 1 END)"
            " + (CASE WHEN colourway IS NULL THEN 0 ELSE 1 END)"
            " + (CASE WHEN cone IS NULL THEN 0 ELSE 1 END) = 1", name="of_one_thing"),
        CheckConstraint("(colourway IS NULL) = (base IS NULL)", name="standard_has_a_base"),
        CheckConstraint("readings > 0", name="was_read"),
        one_of("came", CAME, "came"),
        Index("ix_shade_reading_lot", "lot"),
        Index("ix_shade_reading_standard", "colourway", "base"),
        Index("ix_shade_reading_cone", "cone"),
        {"sqlite_strict": True},
    )

    lot: Mapped[int | None] = mapped_column(ForeignKey("dye_lot.id"), default=None)
    colourway: Mapped[int | None] = mapped_column(ForeignKey("colourway.id"), default=None)
    base: Mapped[int | None] = mapped_column(ForeignKey("base.id"), default=None)
    cone: Mapped[int | None] = mapped_column(ForeignKey("cone.id"), default=None)
    zone: Mapped[str] = mapped_column(default="")
    l_milli: Mapped[int]
    a_milli: Mapped[int]
    b_milli: Mapped[int]
    lamp: Mapped[str]
    observer: Mapped[int]
    wet: Mapped[int] = mapped_column(default=0)
    readings: Mapped[int]
    spread_milli: Mapped[int | None] = mapped_column(default=None)
    came: Mapped[str] = mapped_column(default="typed")
    instrument: Mapped[str] = mapped_column(default="")


class GreyStep(Fact, Record, kw_only=True):
    """A step of the grey scale in halves (10 is 5, 9 is 4-5): a lot held against its standard.

    `against` is another lot where it was not the standard.
    """

    __tablename__ = "grey_step"
    __table_args__ = (
        one_of("scale", SCALES, "scale"),
        CheckConstraint("half_steps BETWEEN 2 AND 10", name="is_a_step"),
        Index("ix_grey_step_lot", "lot"),
        Index("ix_grey_step_against", "against", sqlite_where=text("against IS NOT NULL"),
              postgresql_where=text("against IS NOT NULL")),
        {"sqlite_strict": True},
    )

    lot: Mapped[int] = mapped_column(ForeignKey("dye_lot.id"))
    against: Mapped[int | None] = mapped_column(ForeignKey("dye_lot.id"), default=None)
    scale: Mapped[str] = mapped_column(default="change")
    half_steps: Mapped[int]
    lamp: Mapped[str] = mapped_column(default="")


class ChosenSwatch(Fact, Record, kw_only=True):
    """How a lot looks where nothing was measured: a colour chosen by eye, never reckoned with."""

    __tablename__ = "chosen_swatch"
    __table_args__ = (
        Index("ix_chosen_swatch_lot", "lot"),
        {"sqlite_strict": True},
    )

    lot: Mapped[int] = mapped_column(ForeignKey("dye_lot.id"))
    swatch: Mapped[str]


class Verdict(Fact, Record, kw_only=True):
    """What the inspector decided of a lot; the newest believed row counts."""

    __tablename__ = "verdict"
    __table_args__ = (
        one_of("verdict", VERDICTS, "verdict"),
        CheckConstraint("verdict <> 'one-off' OR name <> ''", name="one_off_has_a_name"),
        CheckConstraint("verdict NOT IN ('seconds', 'hold') OR why <> ''", name="says_why"),
        Index("ix_verdict_lot", "lot"),
        {"sqlite_strict": True},
    )

    lot: Mapped[int] = mapped_column(ForeignKey("dye_lot.id"))
    verdict: Mapped[str]
    name: Mapped[str] = mapped_column(default="")
    why: Mapped[str] = mapped_column(default="")
