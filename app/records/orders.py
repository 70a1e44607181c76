"""Who buys, what was promised, kits, prices and seconds."""

from datetime import datetime

from sqlalchemy import CheckConstraint, ForeignKey, Index, text
from sqlalchemy.orm import Mapped, mapped_column

from app.records.base import Fact, Record, by_deed, once_while_believed, one_of

CHANNELS = ("shop", "web", "fair")


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


class Kit(Fact, Record, kw_only=True):
    """A kit bag with its own code."""

    __tablename__ = "kit"
    __table_args__ = {"sqlite_strict": True}

    code: Mapped[str] = mapped_column(unique=True)
    name: Mapped[str] = mapped_column(default="")


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
