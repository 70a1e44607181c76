"""A weigh-out by a recipe in hand: fetch the jar that comes next, and no other by mistake."""

from decimal import Decimal

from app.calculations.measuring import Pouring
from app.exchange.weigh_sheets import to_weigh, weigh_pdf
from app.lookups.at_balance import AtBalance, Wanted
from app.lookups.jars import JarNow
from app.lookups.weigh_sources import StockNow
from app.problems import Refused
from app.window.bench import Around
from app.window.benches.weighing.bottles_page import BottlesPage
from app.window.benches.weighing.for_stock import ForStock, StockToMake, stock_of
from app.window.benches.weighing.line_hand import LineHand
from app.window.benches.weighing.weigh_words import (
    millilitres,
    mixture_words,
    plates,
    thousandths,
    too_heavy,
    way_out,
)
from app.window.cords.hand import Hand
from app.window.papers import put_on_paper
from app.window.session import Done
from app.work.weigh_lines import LineIn, begin_line, take_weight
from app.work.weighing import WeighingIn, begin_weighing, close_weighing

WRONG_JAR = "WRONG JAR"
_NO_JAR = Refused("No jar stands on the balance; nothing was saved.",
                  "Scan the jar, or type its number.")


class AtTheBalance(LineHand):
    """Takes the jars of the recipe, their stocks, and assistants from their bags."""

    def __init__(self, around: Around, weighing: int) -> None:
        super().__init__(around, weighing)
        self._refused = ""  # the jar that was refused: scanned again it is meant
        self._after = -1  # the line that was passed over with Another line
        self.cup.other.clicked.connect(self._another)
        self.cup.close_key.clicked.connect(self._close)
        self.head.paper_key.clicked.connect(self._print)

    def _print(self) -> None:
        """The weigh-out sheet, for a bench without a screen."""
        session = self.around.session
        put_on_paper(
            self, "weigh-outs", f"weigh-out-{self.weighing}.pdf",
            lambda person: weigh_pdf(
                session.ask(to_weigh, session.now(), weighing=self.weighing), person,
                *([self.now.balance] if self.now else [])),
            "The sheet")

    def take_jar(self, jar: JarNow) -> bool:
        """A jar comes to the balance; one that is not asked for is refused until scanned again."""
        now = self.now
        if now is None:
            return True
        line = now.open_line
        if line is not None and line.fill == jar.fill:
            self.say(f"jar {jar.shown} stands on the balance already")
            return True
        meant, self._refused = self._refused == jar.code, ""
        own, following = now.asks_for(jar.dye), self.next()
        asked = own or following
        if line is None and own is not None and own.is_taken and not meant:
            self._wrong(jar)
            self.around.trouble(_weighed_already(own, following))
        elif line is None and asked is not None and _too_little(now, asked, jar):
            self.around.trouble(Refused(
                f"{asked.substance} is not weighed on this balance; nothing was saved.",
                way_out(asked, now)))
        else:
            if line is None and own is None and not meant and now.wanted:
                self._wrong(jar)
            self.begin(LineIn(
                self.weighing, asked.component if asked else None, jar.fill,
                target_mg=_powder_mg(asked, jar), instead_of=meant and own is None))
        return True

    def take_bottle(self, stock: StockNow) -> bool:
        """A stock comes instead of the powder."""
        if self.now is not None:
            self._pour(next((one for one in self.now.wanted for bottle in one.bottles
                             if bottle.now.stock == stock.stock), None), stock)
        return True

    def go_on(self) -> None:
        """A thing without a jar stands on the balance; after the last line all is closed."""
        asked = self.next()
        if asked is None:
            self._close()
        elif isinstance(asked.way, Pouring) and not asked.jars:
            self._pour_mixture(asked, asked.way)
        elif isinstance(asked.way, Pouring):
            self._pour_next()
        elif asked.no_way:
            self.around.trouble(Refused(
                f"{asked.substance} is not weighed on this balance; nothing was saved.",
                way_out(asked, self.now) if self.now else ""))
        elif asked.jars:
            self.around.trouble(_NO_JAR)
        else:
            percent = asked.solution_percent
            ml = None if percent is None else asked.volume_ml(percent)
            self.begin(LineIn(
                self.weighing, asked.component,
                target_mg=None if ml else thousandths(asked.powder_g()),
                target_ul=thousandths(ml)))

    def after(self) -> Hand | None:
        """What was weighed for bottles goes into them."""
        out = self.now.out if self.now else None
        if out is None or out.purpose != "bottles" or out.recipe_version is None:
            return None
        return BottlesPage(self.around, self.weighing, out.recipe_version)

    def next(self) -> Wanted | None:
        """What is fetched next: the first line without anything, after one that was passed over."""
        left = [one for one in self.now.wanted if not one.is_taken] if self.now else []
        places = [one.component for one in left]
        at = places.index(self._after) + 1 if self._after in places else 0
        return left[at % len(left)] if left else None

    def here(self) -> int | None:
        """The line that is next."""
        asked = self.next()
        return asked.component if asked else None

    def show_next(self, now: AtBalance) -> None:
        """The jar to fetch, huge; below the balance's least the way out, in its place."""
        asked, cup = self.next(), self.cup
        cup.close_key.setVisible(asked is not None)
        cup.other.setVisible(len([one for one in now.wanted if not one.is_taken]) > 1)
        cup.show_way("")
        if asked is None:
            cup.take.say("Close: all is in")
            cup.take.allow()
            cup.show_line("All is in." if now.wanted else "Scan a jar.", "", "", None)
            return
        percent = asked.solution_percent
        ml = None if percent is None else asked.volume_ml(percent)
        strength = asked.jars[0].strength_permille if asked.jars else None
        cup.show_line(asked.substance, asked.form or (plates(asked.jars) if asked.jars else ""),
                      "fetch", asked.powder_g(strength) if ml is None else ml,
                      by_volume=ml is not None)
        if isinstance(asked.way, Pouring):
            self._show_pouring(now, asked, asked.way)
        elif asked.no_way:
            cup.show_way(way_out(asked, now))
        elif ml is None and (heavy := too_heavy(asked.powder_g(strength), now)):
            cup.show_way(heavy)
        elif asked.jars and strength is None:
            cup.show_way(f"The strength of {plates(asked.jars[:1])} is not known: it is weighed "
                         "as strong as the standard.")
        _show_take(self, asked)

    def _show_pouring(self, now: AtBalance, asked: Wanted, way: Pouring) -> None:
        self.cup.show_way(way_out(asked, now))
        make = stock_of(asked) if asked.jars else None
        if not asked.jars:
            self.cup.take.say(f"It is poured: {mixture_words(way)}")
            return
        if make is not None:
            self.cup.take.say(make.key_words)
            return
        self.cup.show_line(asked.substance, f"{way.stock_percent.normalize():f} % stock", "fetch",
                           way.take_ml, by_volume=True)
        self.cup.take.say(f"Pour {millilitres(way.take_ml)} mL of the stock")

    def _wrong(self, jar: JarNow) -> None:
        self._refused = jar.code
        self.cup.say(WRONG_JAR)

    def _another(self) -> None:
        asked = self.next()
        self._after = asked.component if asked else -1
        self._show(self.now)

    def _close(self) -> None:
        self.do(close_weighing, self.weighing, then=lambda _: self.leave())

    def _pour_next(self) -> None:
        """Out of the stock that the way names; where it does not stand ready it is made first."""
        asked = self.next()
        if asked is None or not isinstance(asked.way, Pouring):
            return
        percent, make = asked.way.stock_percent, stock_of(asked)
        if make is not None:
            self.do(begin_weighing, WeighingIn("stock"),
                    then=lambda done: self._make(done, make))
        else:
            ready = min(asked.bottles, key=lambda one: abs(one.percent - percent))
            self._pour(asked, ready.now)

    def _pour_mixture(self, asked: Wanted, way: Pouring) -> None:
        """An assistant that was thinned: what it held went in, and how is written beside it."""
        percent = asked.solution_percent
        powder = way.given_g if percent is None else None
        ml = None if percent is None else way.given_g * 100 / percent

        def poured(done: Done[int]) -> None:
            self.mine.add(done.answer)
            self.do(take_weight, done.answer, mg=thousandths(powder), ul=thousandths(ml),
                    why=mixture_words(way), then=self._over)

        self.do(begin_line, LineIn(self.weighing, asked.component, target_mg=thousandths(powder),
                                   target_ul=thousandths(ml)), then=poured)

    def _make(self, done: Done[int], make: StockToMake) -> None:
        back = self.weighing
        self.over.emit(ForStock(self.around, done.answer, make,
                                lambda: AtTheBalance(self.around, back)))

    def _pour(self, asked: Wanted | None, stock: StockNow) -> None:
        bottles = asked.bottles if asked else ()
        percent = next((one.percent for one in bottles if one.now.stock == stock.stock), None)
        ml: Decimal | None = asked.volume_ml(percent) if asked and percent else None
        self.begin(LineIn(self.weighing, asked.component if asked else None, stock=stock.stock,
                          target_ul=thousandths(ml)))


def _show_take(hand: AtTheBalance, asked: Wanted) -> None:
    """What Enter does next, or why it does nothing."""
    take = hand.cup.take
    take.allow()
    if isinstance(asked.way, Pouring):
        return
    if asked.jars:
        take.say("Take the weight")
        take.refuse("Scan the jar first.")
    else:
        take.say("It stands on the balance")


def _powder_mg(asked: Wanted | None, jar: JarNow) -> int | None:
    """What is still asked, for the strength of this jar; nothing where all of it is in."""
    return (thousandths(asked.powder_g(jar.strength_permille)) or None) if asked else None


def _too_little(now: AtBalance, asked: Wanted, jar: JarNow) -> bool:
    """Whether so little of this powder is asked that the balance cannot weigh it."""
    powder = asked.powder_g(jar.strength_permille)
    return not asked.is_taken and bool(powder) and not now.balance.can_weigh(powder or Decimal(0))


def _weighed_already(own: Wanted, following: Wanted | None) -> Refused:
    right = (f"Take {plates(following.jars)} for {following.substance}, or scan"
             if following else "Close the weigh-out, or scan")
    return Refused(f"{own.substance} was weighed already; nothing was weighed.",
                   f"{right} this one again to take more of it.")
