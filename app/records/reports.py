"""What was seen on yarn, by whom it was told, and what the owner found out."""

from datetime import datetime

from sqlalchemy import CheckConstraint, ForeignKey, Index, text
from sqlalchemy.orm import Mapped, mapped_column

from app.records.base import Fact, Record, known_basis, one_of
from app.records.people import SECRET

FAULTS = ("streak", "stain", "bleed", "short", "knot", "felt", "hole", "off shade", "smell",
          "thin place", "tie mark", "other")
WHERE_ON = ("whole", "one place", "repeats", "one end", "not said")
SEEN_AT = ("inspection", "tag table", "return", "counter", "stocktake", "customer")
CAUSES = ("cone", "fill", "bath", "lot", "load", "winder-day", "not found")


class Report(Fact, Record, kw_only=True):
    """A fault as it was told or seen: what, where on the skein, how often it repeats.

    `lot` and `count` are what was stated where no tag was read. `words` describe the fault and
    never a person.
    """

    __tablename__ = "report"
    __table_args__ = (
        one_of("fault", FAULTS, "fault"),
        one_of("where_on", WHERE_ON, "where_on"),
        one_of("seen_at", SEEN_AT, "seen_at"),
        CheckConstraint("(where_on = 'repeats') = (repeat_mm IS NOT NULL)", name="repeats_at"),
        CheckConstraint("repeat_mm IS NULL OR repeat_mm > 0", name="is_a_distance"),
        Index("ix_report_lot", "lot", sqlite_where=text("lot IS NOT NULL"),
              postgresql_where=text("lot IS NOT NULL")),
        Index("ix_report_customer", "customer", sqlite_where=text("customer IS NOT NULL"),
              postgresql_where=text("customer IS NOT NULL")),
        {"sqlite_strict": True},
    )

    fault: Mapped[str]
    where_on: Mapped[str] = mapped_column(default="not said")
    repeat_mm: Mapped[int | None] = mapped_column(default=None)
    seen_at: Mapped[str]
    words: Mapped[str] = mapped_column(default="")
    customer: Mapped[int | None] = mapped_column(ForeignKey("customer.id"), default=None)
    lot: Mapped[int | None] = mapped_column(ForeignKey("dye_lot.id"), default=None)
    count: Mapped[int | None] = mapped_column(default=None)


class Sighting(Fact, Record, kw_only=True):
    """Yarn that was looked at: faulty with its report, or seen good (of one fault, or of all)."""

    __tablename__ = "sighting"
    __table_args__ = (
        known_basis(),
        one_of("seen_at", SEEN_AT, "seen_at"),
        CheckConstraint("faulty IN (0, 1)", name="good_or_faulty"),
        CheckConstraint("faulty = 0 OR report IS NOT NULL", name="fault_is_reported"),
        Index("ix_sighting_yarn", "yarn"),
        Index("ix_sighting_report", "report"),
        {"sqlite_strict": True},
    )

    yarn: Mapped[int] = mapped_column(ForeignKey("yarn.id"))
    report: Mapped[int | None] = mapped_column(ForeignKey("report.id"), default=None)
    faulty: Mapped[int]
    seen_at: Mapped[str]
    basis: Mapped[str]


class Cause(Fact, Record, kw_only=True):
    """What the owner says a report came from, the newest counts; "not found" is an answer."""

    __tablename__ = "cause"
    __table_args__ = (
        one_of("kind", CAUSES, "kind"),
        Index("ix_cause_report", "report"),
        {"sqlite_strict": True},
    )

    report: Mapped[int] = mapped_column(ForeignKey("report.id"))
    kind: Mapped[str]
    thing: Mapped[int | None] = mapped_column(default=None)
    """The row of that kind; the person and day of a winder stand in `words`."""
    words: Mapped[str] = mapped_column(default="")


class Photo(Fact, Record, kw_only=True):
    """A picture of a report; the journal holds its digest alone, so it can be erased."""

    __tablename__ = "photo"
    __table_args__ = (
        Index("ix_photo_report", "report"),
        {"sqlite_strict": True},
    )

    report: Mapped[int] = mapped_column(ForeignKey("report.id"))
    kind: Mapped[str]
    picture: Mapped[bytes | None] = mapped_column(info=SECRET)
    sha256: Mapped[str]


class Recall(Fact, Record, kw_only=True):
    """A list of all who have something of one source, made in earnest or for practice.

    `began` is when the owner asked; the deed's own moment is when the list lay there.
    """

    __tablename__ = "recall"
    __table_args__ = (
        CheckConstraint("practice IN (0, 1)", name="earnest_or_practice"),
        CheckConstraint("skeins >= 0 AND mg >= 0", name="is_an_amount"),
        {"sqlite_strict": True},
    )

    practice: Mapped[int]
    kind: Mapped[str]
    thing: Mapped[int]
    hold: Mapped[int | None] = mapped_column(ForeignKey("hold.id"), default=None)
    began: Mapped[datetime]
    skeins: Mapped[int]
    mg: Mapped[int]
    accounted: Mapped[int]
    """How many of the skeins the list could say a place or buyer of."""


class Stocktake(Fact, Record, kw_only=True):
    """One place counted at one time."""

    __tablename__ = "stocktake"
    __table_args__ = (Index("ix_stocktake_place", "place"), {"sqlite_strict": True})

    place: Mapped[int] = mapped_column(ForeignKey("plate.id"))


class Counted(Fact, Record, kw_only=True):
    """What was met at a stocktake: a skein by its tag, or so many of a lot without tags."""

    __tablename__ = "counted"
    __table_args__ = (
        CheckConstraint("(yarn IS NULL) <> (lot IS NULL)", name="of_one_thing"),
        CheckConstraint("count > 0", name="is_some"),
        Index("ix_counted_stocktake", "stocktake"),
        Index("ix_counted_yarn", "yarn"),
        {"sqlite_strict": True},
    )

    stocktake: Mapped[int] = mapped_column(ForeignKey("stocktake.id"))
    yarn: Mapped[int | None] = mapped_column(ForeignKey("yarn.id"), default=None)
    lot: Mapped[int | None] = mapped_column(ForeignKey("dye_lot.id"), default=None)
    count: Mapped[int] = mapped_column(default=1)
