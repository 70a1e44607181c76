"""A stock solution in hand: one jar, or part of another stock, made up with water."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from decimal import Decimal

from app.calculations.cautions import Step
from app.calculations.measuring import Pouring
from app.lookups.at_balance import AtBalance, Wanted, same
from app.lookups.jars import JarNow
from app.lookups.things import Found
from app.lookups.weigh_sources import StockNow
from app.lookups.weighings import LineThen
from app.problems import BadInput, Refused
from app.window.bench import Around
from app.window.benches.weighing.line_hand import LineHand
from app.window.benches.weighing.stock_words import percent_words, read_life, strength_aloud
from app.window.benches.weighing.weigh_words import (
    bare,
    millilitres,
    read_millilitres,
    thousandths,
)
from app.window.cords.hand import Hand
from app.window.look.look import Size
from app.window.parts.cautions_card import CautionsCard
from app.window.parts.fields import Field
from app.window.parts.words import Words
from app.work.stocks import LIFE_OF_ACID_STOCK, StockIn, make_stock
from app.work.weigh_lines import LineIn


@dataclass(frozen=True, slots=True)
class StockToMake:
    """What is made: of which dye, out of its jar (grams) or of a stock (mL), up to how much."""

    dye: str
    take: Decimal
    of: StockNow | None
    to_ml: Decimal

    @property
    def key_words(self) -> str:
        """'Make the stock: 1 g to 100 mL'."""
        taken = f"{bare(self.take)} g" if self.of is None else f"{millilitres(self.take)} mL"
        return f"Make the stock: {taken} up to {bare(self.to_ml)} mL"


def stock_of(asked: Wanted) -> StockToMake | None:
    """The stock that must be made before this line can be poured; none: it stands ready."""
    way = asked.way
    if not isinstance(way, Pouring):
        return None
    if way.make_up is not None:
        return StockToMake(asked.substance, way.make_up.powder_g, None, way.make_up.to_ml)
    if not way.dilutions:
        return None
    of = min(asked.bottles, key=lambda one: abs(one.percent - way.stock_percent)).now
    return StockToMake(asked.substance, way.dilutions[0].take_ml, of, way.dilutions[0].to_ml)


def _made_of(lines: Sequence[LineThen], of: StockNow | None) -> Decimal | None:
    """Milligrams of powder that stayed in the cup; none where nobody knows the stock's strength."""
    kept = [line for line in lines if line.kind != "thrown" and not line.is_open]
    ul = sum(line.ul or 0 for line in kept)
    if ul and of is None:
        return None
    return Decimal(sum(line.mg or 0 for line in kept)) + (
        Decimal(ul * of.mg_per_l) / 1_000_000 if of else 0)


class ForStock(LineHand):
    """The weigh-out of a stock; made up, it gives way to `back`."""

    def __init__(
        self, around: Around, weighing: int, plan: StockToMake | None = None,
        back: Callable[[], Hand] | None = None,
    ) -> None:
        self.plan, self._back = plan, back
        super().__init__(around, weighing)
        self.volume: Field[Decimal] = Field("Made up with water to", read_millilitres,
                                            "millilitres")
        self.life: Field[int | None] = Field("Keeps, days", read_life, "with alkali 1")
        self.life.line.setText(str(LIFE_OF_ACID_STOCK))
        self.aloud = Words("", Size.LEAD, bold=True)
        for part in (self.volume, self.life, self.aloud):
            part.hide()
        self.volume.line.textChanged.connect(self._say_strength)
        self._of: StockNow | None = plan.of if plan else None
        self.bottle: Found | None = None
        self.cup.add_row(self.volume, self.life)
        self.cup.add(self.aloud)
        self.body.addWidget(CautionsCard("While a stock is made", Step.STOCK))

    @property
    def wants_bottle(self) -> bool:
        """Whether a bottle's plate says where the stock will stand."""
        return self.last_taken() is not None

    def stand_in(self, bottle: Found | None) -> None:
        """The stock will stand in this bottle."""
        self.bottle = bottle
        if bottle is not None:
            self.say(f"the stock will stand in {bottle.shown}")

    def take_jar(self, jar: JarNow) -> bool:
        """The jar whose powder is made up."""
        plan = self.plan
        if self.last_taken() is not None:
            self.around.trouble(Refused("A stock is made of one jar; nothing was weighed.",
                                        "Make this one up first."))
        elif plan is not None and plan.of is None and not same(plan.dye, jar.dye):
            self.cup.say("WRONG JAR")
            self.around.trouble(Refused(
                f"Jar {jar.shown} holds {jar.dye}, and the stock is made of {plan.dye}; nothing "
                "was weighed.", f"Take the jar with {plan.dye}."))
        else:
            of_jar = plan if plan and plan.of is None else None
            self.begin(LineIn(self.weighing, fill=jar.fill,
                              target_mg=thousandths(of_jar.take) if of_jar else None))
        return True

    def take_bottle(self, stock: StockNow) -> bool:
        """The stock of which a part is made up again."""
        plan = self.plan if self.plan and self.plan.of == stock else None
        self._of = stock
        self.begin(LineIn(self.weighing, stock=stock.stock,
                          target_ul=thousandths(plan.take) if plan else None))
        return True

    def go_on(self) -> None:
        """Made up: the stock stands on the shelf. Before that a part of a stock is measured."""
        if self.last_taken() is not None:
            ml, life = self.volume.value(), self.life.value()
            plate = self.bottle.id if self.bottle else None
            if ml is not None and (life is not None or not self.life.line.text().strip()):
                self.do(make_stock, StockIn(self.weighing, round(ml), plate, life),
                        then=lambda _: self.leave())
        elif self.plan is not None and self.plan.of is not None:
            self.take_bottle(self.plan.of)
        else:
            self.around.trouble(Refused("No jar stands on the balance; nothing was saved.",
                                        "Scan the jar, or type its number."))

    def show_next(self, now: AtBalance) -> None:
        """The jar to fetch, or how far it is made up."""
        taken, plan, cup = self.last_taken(), self.plan, self.cup
        for field in (self.volume, self.life):
            field.setVisible(taken is not None)
        for key in (cup.other, cup.close_key):
            key.hide()
        cup.show_way("")
        cup.take.allow()
        if taken is not None:
            cup.take.say("It is made up")
            cup.show_line(taken.asked, taken.source, "make up to" if plan else "",
                          plan.to_ml if plan else None, by_volume=True)
            if plan and not self.volume.line.text():
                self.volume.line.setText(bare(plan.to_ml))
            self.volume.setFocus()
        elif plan is not None:
            cup.take.say("Measure it" if plan.of else "Take the weight")
            if plan.of is None:
                cup.take.refuse("Scan the jar first.")
            cup.show_line(plan.dye, "out of its stock" if plan.of else "", "fetch", plan.take,
                          by_volume=plan.of is not None)
        else:
            cup.take.say("Take the weight")
            cup.take.refuse("Scan the jar first.")
            cup.show_line("Scan the jar.", "", "", None)
        self._say_strength()

    def _say_strength(self) -> None:
        """How strong it becomes, as soon as the millilitres are written."""
        taken = self.last_taken()
        try:
            ml = read_millilitres(self.volume.line.text()) if taken else Decimal(0)
        except BadInput:
            ml = Decimal(0)
        found = _made_of(self.now.out.lines, self._of) if taken and self.now else None
        strength = found * 1000 / ml if found and ml else None
        self.aloud.setText("" if strength is None else f"{strength_aloud(strength)}.")
        self.aloud.setVisible(bool(self.aloud.text()))
        if taken and self.plan is None:
            self.cup.wanted.show_number(percent_words(strength) if strength else "")
            self.cup.unit.setText("w/v" if strength else "")

    def write_figure(self, figure: str) -> bool:
        """A figure begins the weight, or the millilitres."""
        if self.volume.isVisible() and not self.tipping:
            self.volume.line.setFocus()
            self.volume.line.insert(figure)
            return True
        return super().write_figure(figure)

    def after(self) -> Hand | None:
        """Back to the weigh-out that wanted it."""
        return self._back() if self._back else None
