"""What was read at the pot, in the wash, of a jar and of the room."""

from sqlalchemy import CheckConstraint, ForeignKey, Index
from sqlalchemy.orm import Mapped, mapped_column

from app.records.base import Fact, Record, one_of

AT_THE_POT = ("pH centi", "decidegrees", "clearness", "step done", "water ml")
IN_THE_WASH = ("rinse", "bleed", "room decidegrees", "room permille")
OF_THE_ROOM = ("room decidegrees", "room permille", "regain permille")
REGAIN_FROM = ("", "reference skein", "humidity")
OF_A_FILL = ("weighed mg", "strength permille")


class BathReading(Fact, Record, kw_only=True):
    """pH, heat, how clear the bath is (0 clear, 1 tinted, 2 coloured), a step done, water added."""

    __tablename__ = "bath_reading"
    __table_args__ = (
        one_of("kind", AT_THE_POT, "kind"),
        Index("ix_bath_reading_bath", "bath"),
        {"sqlite_strict": True},
    )

    bath: Mapped[int] = mapped_column(ForeignKey("bath.id"))
    kind: Mapped[str]
    value: Mapped[int]


class LoadReading(Fact, Record, kw_only=True):
    """Rinses, bleeding (0 none, 1 slight, 2 strong) of a load or of one yarn in it, the room."""

    __tablename__ = "load_reading"
    __table_args__ = (
        one_of("kind", IN_THE_WASH, "kind"),
        Index("ix_load_reading_load", "load"),
        Index("ix_load_reading_yarn", "yarn"),
        {"sqlite_strict": True},
    )

    load: Mapped[int] = mapped_column(ForeignKey("load.id"))
    yarn: Mapped[int | None] = mapped_column(ForeignKey("yarn.id"), default=None)
    kind: Mapped[str]
    value: Mapped[int]


class FillReading(Fact, Record, kw_only=True):
    """A jar on the balance without its weight of glass, or its strength against the standard."""

    __tablename__ = "fill_reading"
    __table_args__ = (
        one_of("kind", OF_A_FILL, "kind"),
        Index("ix_fill_reading_fill", "fill"),
        {"sqlite_strict": True},
    )

    fill: Mapped[int] = mapped_column(ForeignKey("fill.id"))
    kind: Mapped[str]
    value: Mapped[int]


class RoomReading(Fact, Record, kw_only=True):
    """The room at the tag table: heat, moisture, or the regain of a fibre's reference skein.

    `fibre` names the class whose reference skein was weighed.
    """

    __tablename__ = "room_reading"
    __table_args__ = (
        one_of("kind", OF_THE_ROOM, "kind"),
        CheckConstraint("(kind = 'regain permille') = (fibre <> '')", name="regain_of_a_fibre"),
        Index("ix_room_reading_kind", "kind", "id"),
        {"sqlite_strict": True},
    )

    kind: Mapped[str]
    value: Mapped[int]
    fibre: Mapped[str] = mapped_column(default="")


class PutUpWeight(Fact, Record, kw_only=True):
    """One put-up on the balance at the tag table, with the regain of its fibre in the room.

    `yarn` is the skein, or the pile it still lies in. `sell_as_mg` is what it is honestly sold as
    where it is lighter than its put-up; `regain_from` says what told the regain, if anything did.
    """

    __tablename__ = "put_up_weight"
    __table_args__ = (
        one_of("regain_from", REGAIN_FROM, "regain_from"),
        CheckConstraint("(regain_permille IS NULL) = (regain_from = '')", name="regain_from_what"),
        CheckConstraint("mg > 0", name="weighs_something"),
        CheckConstraint("sell_as_mg IS NULL OR sell_as_mg > 0", name="sold_as_something"),
        Index("ix_put_up_weight_yarn", "yarn"),
        {"sqlite_strict": True},
    )

    yarn: Mapped[int] = mapped_column(ForeignKey("yarn.id"))
    mg: Mapped[int]
    regain_permille: Mapped[int | None] = mapped_column(default=None)
    regain_from: Mapped[str] = mapped_column(default="")
    sell_as_mg: Mapped[int | None] = mapped_column(default=None)
