"""What comes in at the door: deliveries, cones, jars, and what was read of them."""

from datetime import datetime

from sqlalchemy import CheckConstraint, ForeignKey, Index, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from app.records.base import Fact, Record, once_while_believed, one_of


class Supplier(Fact, Record, kw_only=True):
    """Who sends cones or dye."""

    __tablename__ = "supplier"
    __table_args__ = (once_while_believed("uq_supplier_name", "name"), {"sqlite_strict": True})

    name: Mapped[str]


class SupplierLot(Fact, Record, kw_only=True):
    """A spinner's batch or a dye maker's lot; no words means it was not stated, on purpose."""

    __tablename__ = "supplier_lot"
    __table_args__ = (
        once_while_believed("uq_supplier_lot_said", "supplier", "said"),
        {"sqlite_strict": True},
    )

    supplier: Mapped[int] = mapped_column(ForeignKey("supplier.id"))
    said: Mapped[str | None]


class Delivery(Fact, Record, kw_only=True):
    """A delivery at the door, or the opening stock counted on the first day."""

    __tablename__ = "delivery"
    __table_args__ = (
        one_of("kind", ("delivery", "opening stock"), "kind"),
        {"sqlite_strict": True},
    )

    supplier: Mapped[int | None] = mapped_column(ForeignKey("supplier.id"))
    kind: Mapped[str]
    note_no: Mapped[str]
    arrived: Mapped[datetime]


class Cone(Fact, Record, kw_only=True):
    """A package of undyed yarn; what is left on it is computed from its draws."""

    __tablename__ = "cone"
    __table_args__ = (
        CheckConstraint("tare_mg >= 0 AND tare_mg < gross_mg", name="weighs_something"),
        Index("ix_cone_delivery", "delivery"),
        Index("ix_cone_supplier_lot", "supplier_lot"),
        once_while_believed("uq_cone_code", "code"),
        {"sqlite_strict": True},
    )

    code: Mapped[str]
    delivery: Mapped[int] = mapped_column(ForeignKey("delivery.id"))
    supplier_lot: Mapped[int] = mapped_column(ForeignKey("supplier_lot.id"))
    base_version: Mapped[int] = mapped_column(ForeignKey("base_version.id"))
    gross_mg: Mapped[int]
    tare_mg: Mapped[int]


class Jar(Fact, Record, kw_only=True):
    """A dye jar: the vessel with its plate, not its content; below `reorder_mg` more is bought."""

    __tablename__ = "jar"
    __table_args__ = (once_while_believed("uq_jar_code", "code"), {"sqlite_strict": True})

    code: Mapped[str]
    dye: Mapped[str]
    reorder_mg: Mapped[int | None] = mapped_column(default=None)


class Fill(Fact, Record, kw_only=True):
    """One filling of a jar, with its strength against the standard (1000: as the standard)."""

    __tablename__ = "fill"
    __table_args__ = (
        UniqueConstraint("jar", "number"),
        CheckConstraint("mg > 0", name="holds_something"),
        {"sqlite_strict": True},
    )

    jar: Mapped[int] = mapped_column(ForeignKey("jar.id"))
    number: Mapped[int]
    mg: Mapped[int]
    strength_permille: Mapped[int | None]
    expires: Mapped[datetime | None] = mapped_column(default=None)


class FillPart(Fact, Record, kw_only=True):
    """What went into a fill: a supplier's lot, or what was left of the fill before."""

    __tablename__ = "fill_part"
    __table_args__ = (
        CheckConstraint("(supplier_lot IS NULL) <> (from_fill IS NULL)", name="one_source"),
        CheckConstraint("mg > 0", name="adds_something"),
        Index("ix_fill_part_fill", "fill"),
        Index("ix_fill_part_supplier_lot", "supplier_lot"),
        Index("ix_fill_part_from_fill", "from_fill"),
        {"sqlite_strict": True},
    )

    fill: Mapped[int] = mapped_column(ForeignKey("fill.id"))
    supplier_lot: Mapped[int | None] = mapped_column(ForeignKey("supplier_lot.id"), default=None)
    from_fill: Mapped[int | None] = mapped_column(ForeignKey("fill.id"), default=None)
    mg: Mapped[int]


class Reading(Fact, Record, kw_only=True):
    """A number somebody read: the weight of 100 m, moisture, ecru difference, a put-up's weight."""

    __tablename__ = "reading"
    __table_args__ = (
        one_of("kind", ("wrap mg", "moisture permille", "ecru centi-delta", "weight mg"), "kind"),
        CheckConstraint("(cone IS NULL) <> (yarn IS NULL)", name="of_one_thing"),
        Index("ix_reading_cone", "cone"),
        Index("ix_reading_yarn", "yarn"),
        {"sqlite_strict": True},
    )

    cone: Mapped[int | None] = mapped_column(ForeignKey("cone.id"), default=None)
    yarn: Mapped[int | None] = mapped_column(ForeignKey("yarn.id"), default=None)
    kind: Mapped[str]
    value: Mapped[int]
