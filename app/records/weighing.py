"""The weigh bench: what was weighed for which bath, stock or bottles, line by line, by jar fill."""

from sqlalchemy import CheckConstraint, ForeignKey, Index, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from app.records.base import Fact, Record, by_deed, once_while_believed, one_of

PURPOSES = ("bath", "bottles", "stock")
DRY_BASES = ("wound", "weighed dry", "weighed damp")
LINE_KINDS = ("taken", "instead of", "tipped back", "thrown", "addition")


class Weighing(Fact, Record, kw_only=True):
    """One weigh-out: for a bath, for a set of bottles, or for a stock solution.

    `dry_mg` is the fibre it was reckoned for, `dry_basis` how that was known; a damp weight is a
    fallback, with its pick-up. `closed` is the deed that ended it.
    """

    __tablename__ = "weighing"
    __table_args__ = (
        one_of("purpose", PURPOSES, "purpose"),
        one_of("dry_basis", DRY_BASES, "dry_basis"),
        CheckConstraint("(purpose = 'stock') = (recipe_version IS NULL)", name="has_its_recipe"),
        CheckConstraint("(dry_basis = 'weighed damp') = (pick_up_permille IS NOT NULL)",
                        name="damp_has_its_pick_up"),
        Index("ix_weighing_recipe_version", "recipe_version"),
        {"sqlite_strict": True},
    )

    purpose: Mapped[str]
    recipe_version: Mapped[int | None] = mapped_column(ForeignKey("recipe_version.id"))
    dry_mg: Mapped[int | None] = mapped_column(default=None)
    dry_basis: Mapped[str] = mapped_column(default="wound")
    pick_up_permille: Mapped[int | None] = mapped_column(default=None)
    bath_ml: Mapped[int | None] = mapped_column(default=None)
    closed: Mapped[int | None] = mapped_column(by_deed(), init=False, default=None)


class WeighedFor(Fact, Record, kw_only=True):
    """This yarn was meant to go into what was weighed; what went in stands with the bath."""

    __tablename__ = "weighed_for"
    __table_args__ = (
        once_while_believed("uq_weighed_for_once", "weighing", "yarn"),
        Index("ix_weighed_for_yarn", "yarn"),
        {"sqlite_strict": True},
    )

    weighing: Mapped[int] = mapped_column(ForeignKey("weighing.id"))
    yarn: Mapped[int] = mapped_column(ForeignKey("yarn.id"))


class WeighLine(Fact, Record, kw_only=True):
    """One jar or stock bottle at the balance: begun, and taken when the weight stands.

    `mg` is powder (negative where it was tipped back), `ul` volume of a stock; `taken` is empty
    while the line is open, so that a power cut leaves the question what became of the cup. All
    lines of a fill add up to what left it; what was thrown never reached the bath. An addition at
    the pot names its bath.
    """

    __tablename__ = "weigh_line"
    __table_args__ = (
        one_of("kind", LINE_KINDS, "kind"),
        CheckConstraint("fill IS NULL OR stock IS NULL", name="from_one_source"),
        CheckConstraint("(weighing IS NULL) <> (bath IS NULL)", name="for_one_thing"),
        CheckConstraint("(kind = 'addition') = (bath IS NOT NULL)", name="addition_at_the_pot"),
        Index("ix_weigh_line_weighing", "weighing"),
        Index("ix_weigh_line_bath", "bath"),
        Index("ix_weigh_line_fill", "fill"),
        Index("ix_weigh_line_stock", "stock"),
        {"sqlite_strict": True},
    )

    weighing: Mapped[int | None] = mapped_column(ForeignKey("weighing.id"), default=None)
    bath: Mapped[int | None] = mapped_column(ForeignKey("bath.id"), default=None)
    component: Mapped[int | None] = mapped_column(ForeignKey("component.id"), default=None)
    fill: Mapped[int | None] = mapped_column(ForeignKey("fill.id"), default=None)
    stock: Mapped[int | None] = mapped_column(ForeignKey("stock.id"), default=None)
    balance: Mapped[int | None] = mapped_column(ForeignKey("plate.id"), default=None)
    kind: Mapped[str]
    target_mg: Mapped[int | None] = mapped_column(default=None)
    target_ul: Mapped[int | None] = mapped_column(default=None)
    mg: Mapped[int | None] = mapped_column(default=None)
    ul: Mapped[int | None] = mapped_column(default=None)
    why: Mapped[str] = mapped_column(default="")
    taken: Mapped[int | None] = mapped_column(by_deed(), default=None)


class Stock(Fact, Record, kw_only=True):
    """A stock solution: so much of a fill in so much water; its age decides its life.

    One that was diluted keeps the fill that its powder came from; none means not known.
    """

    __tablename__ = "stock"
    __table_args__ = (
        CheckConstraint("mg_per_l > 0 AND ml > 0", name="is_a_solution"),
        Index("ix_stock_fill", "fill"),
        {"sqlite_strict": True},
    )

    fill: Mapped[int | None] = mapped_column(ForeignKey("fill.id"))
    weighing: Mapped[int | None] = mapped_column(ForeignKey("weighing.id"), default=None)
    from_stock: Mapped[int | None] = mapped_column(ForeignKey("stock.id"), default=None)
    plate: Mapped[int | None] = mapped_column(ForeignKey("plate.id"), default=None)
    mg_per_l: Mapped[int]
    ml: Mapped[int]
    life_days: Mapped[int | None] = mapped_column(default=None)


class BottleSet(Fact, Record, kw_only=True):
    """The bottles of one painted recipe; a refill of any bottle is a new set, and a new lot."""

    __tablename__ = "bottle_set"
    __table_args__ = (
        UniqueConstraint("recipe_version", "number"),
        Index("ix_bottle_set_weighing", "weighing"),
        Index("ix_bottle_set_after", "after"),
        {"sqlite_strict": True},
    )

    recipe_version: Mapped[int] = mapped_column(ForeignKey("recipe_version.id"))
    number: Mapped[int]
    after: Mapped[int | None] = mapped_column(ForeignKey("bottle_set.id"), default=None)
    refilled: Mapped[int | None] = mapped_column(ForeignKey("zone.id"), default=None)
    weighing: Mapped[int | None] = mapped_column(ForeignKey("weighing.id"), default=None)


class OnBoard(Fact, Record, kw_only=True):
    """This yarn lay on that board and was painted from that set; then it went to the steamer."""

    __tablename__ = "on_board"
    __table_args__ = (
        Index("ix_on_board_yarn", "yarn"),
        Index("ix_on_board_bath", "bath"),
        Index("ix_on_board_board", "board"),
        Index("ix_on_board_bottle_set", "bottle_set"),
        {"sqlite_strict": True},
    )

    yarn: Mapped[int] = mapped_column(ForeignKey("yarn.id"))
    board: Mapped[int | None] = mapped_column(ForeignKey("plate.id"), default=None)
    bottle_set: Mapped[int] = mapped_column(ForeignKey("bottle_set.id"))
    bath: Mapped[int | None] = mapped_column(ForeignKey("bath.id"), default=None)
