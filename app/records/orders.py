"""Who buys, what was promised, kits, prices and seconds."""

from datetime import datetime

from sqlalchemy import CheckConstraint, ForeignKey, Index, text
from sqlalchemy.orm import Mapped, mapped_column

from app.records.base import Fact, Record, by_deed, once_while_believed, one_of

CHANNELS = ("shop", "web", "fair")
OFFERS = ("same lot", "sister lot", "nearest lot", "blend", "other design", "kit substitute",
          "redye", "all new")


class Customer(Fact, Record, kw_only=True):
    """Someone who buys; what is known of them sits in `personal`."""

    __tablename__ = "customer"
    __table_args__ = {"sqlite_strict": True}


class CustomerOrder(Fact, Record, kw_only=True):
    """An order, or a sale at the till; no customer means sold, not known to whom."""

    __tablename__ = "customer_order"
    __table_args__ = (
        one_of("channel", CHANNELS, "channel"),
        once_while_believed("uq_customer_order_number", "number"),
        Index("ix_customer_order_customer", "customer"),
        {"sqlite_strict": True},
    )

    number: Mapped[str]
    customer: Mapped[int | None] = mapped_column(ForeignKey("customer.id"))
    channel: Mapped[str]
    placed: Mapped[datetime]


class OrderLine(Fact, Record, kw_only=True):
    """What was promised of an order: so many of a colourway, of one lot if it was named.

    `what` is as it was said; colourway, base and put-up are what it was read as. `price` is for
    one, in the smallest unit of the studio's currency. `over` is the deed that called the rest off.
    """

    __tablename__ = "order_line"
    __table_args__ = (
        CheckConstraint("wanted > 0", name="wants_something"),
        Index("ix_order_line_order", "customer_order"),
        Index("ix_order_line_lot", "lot", sqlite_where=text("lot IS NOT NULL"),
              postgresql_where=text("lot IS NOT NULL")),
        {"sqlite_strict": True},
    )

    customer_order: Mapped[int] = mapped_column(ForeignKey("customer_order.id"))
    wanted: Mapped[int]
    what: Mapped[str]
    lot: Mapped[int | None] = mapped_column(ForeignKey("dye_lot.id"), default=None)
    price: Mapped[int | None] = mapped_column(default=None)
    colourway: Mapped[int | None] = mapped_column(ForeignKey("colourway.id"), default=None)
    base: Mapped[int | None] = mapped_column(ForeignKey("base.id"), default=None)
    put_up: Mapped[str | None] = mapped_column(default=None)
    over: Mapped[int | None] = mapped_column(by_deed(), default=None)


class KitPattern(Fact, Record, kw_only=True):
    """A kit as it is offered: its name, and its price in the smallest unit of the currency."""

    __tablename__ = "kit_pattern"
    __table_args__ = (once_while_believed("uq_kit_pattern_name", "name"), {"sqlite_strict": True})

    name: Mapped[str]
    price: Mapped[int | None] = mapped_column(default=None)


class KitPlace(Fact, Record, kw_only=True):
    """One place of a kit (A the main colour, B, C ...): so many of a colourway on a base."""

    __tablename__ = "kit_place"
    __table_args__ = (
        once_while_believed("uq_kit_place_letter", "pattern", "letter"),
        CheckConstraint("wanted > 0", name="wants_something"),
        {"sqlite_strict": True},
    )

    pattern: Mapped[int] = mapped_column(ForeignKey("kit_pattern.id"))
    letter: Mapped[str]
    wanted: Mapped[int]
    colourway: Mapped[int] = mapped_column(ForeignKey("colourway.id"))
    base: Mapped[int] = mapped_column(ForeignKey("base.id"))
    put_up: Mapped[str] = mapped_column(default="skein")


class KitSubstitute(Fact, Record, kw_only=True):
    """Another colourway that may stand in a place."""

    __tablename__ = "kit_substitute"
    __table_args__ = (
        once_while_believed("uq_kit_substitute", "place", "colourway"),
        {"sqlite_strict": True},
    )

    place: Mapped[int] = mapped_column(ForeignKey("kit_place.id"))
    colourway: Mapped[int] = mapped_column(ForeignKey("colourway.id"))


class Kit(Fact, Record, kw_only=True):
    """A kit bag with its own code, made by a pattern or by hand."""

    __tablename__ = "kit"
    __table_args__ = (
        Index("ix_kit_pattern", "pattern"),
        {"sqlite_strict": True},
    )

    code: Mapped[str] = mapped_column(unique=True)
    name: Mapped[str] = mapped_column(default="")
    pattern: Mapped[int | None] = mapped_column(ForeignKey("kit_pattern.id"), default=None)


class LineAgreed(Fact, Record, kw_only=True):
    """One line filled from two lots: the customer agreed, or a card says to alternate rows."""

    __tablename__ = "line_agreed"
    __table_args__ = (
        one_of("how", ("customer agreed", "rows card put in"), "how"),
        Index("ix_line_agreed_line", "line"),
        {"sqlite_strict": True},
    )

    line: Mapped[int] = mapped_column(ForeignKey("order_line.id"))
    how: Mapped[str]


class Offer(Fact, Record, kw_only=True):
    """What was offered to somebody who asked for more of a lot, and what they said.

    `centi_delta` is the CIEDE2000 that was named, in hundredths; none where nothing was measured.
    """

    __tablename__ = "offer"
    __table_args__ = (
        one_of("way", OFFERS, "way"),
        one_of("answer", ("taken", "thinks it over", "declined"), "answer"),
        CheckConstraint("wanted > 0", name="wants_something"),
        Index("ix_offer_lot", "lot"),
        Index("ix_offer_customer", "customer", sqlite_where=text("customer IS NOT NULL"),
              postgresql_where=text("customer IS NOT NULL")),
        {"sqlite_strict": True},
    )

    lot: Mapped[int] = mapped_column(ForeignKey("dye_lot.id"))
    wanted: Mapped[int]
    way: Mapped[str]
    other_lot: Mapped[int | None] = mapped_column(ForeignKey("dye_lot.id"), default=None)
    centi_delta: Mapped[int | None] = mapped_column(default=None)
    answer: Mapped[str]
    customer: Mapped[int | None] = mapped_column(ForeignKey("customer.id"), default=None)


class Price(Fact, Record, kw_only=True):
    """What a put-up of a base costs from now on; the newest believed row counts."""

    __tablename__ = "price"
    __table_args__ = (
        CheckConstraint("price >= 0", name="is_a_price"),
        Index("ix_price_base", "base", "put_up", "id"),
        {"sqlite_strict": True},
    )

    base: Mapped[int] = mapped_column(ForeignKey("base.id"))
    put_up: Mapped[str]
    price: Mapped[int]


class Second(Fact, Record, kw_only=True):
    """Sound yarn sold below price, with what is seen; it keeps its lot."""

    __tablename__ = "second"
    __table_args__ = (
        once_while_believed("uq_second_yarn", "yarn"),
        {"sqlite_strict": True},
    )

    yarn: Mapped[int] = mapped_column(ForeignKey("yarn.id"))
    why: Mapped[str]
