"""What is done where a customer wants more of a lot: it is asked, offered, answered and kept."""

from collections.abc import Callable

from app.lookups.counter import AtCounter
from app.lookups.reorder import Asked, Reorder, reorder
from app.lookups.reorder_ways import Way
from app.window.bench import Bench
from app.window.benches.counter.till import Till
from app.window.benches.counter.wanting import MoreCard, SaidCard, WaysCard
from app.work.offering import OfferIn, offered

HUNDREDTHS = 100


class More:
    """One customer's wish for more; `keep` puts by of the lot they took, `kit` looks at its bag."""

    def __init__(
        self, bench: Bench, till: Till, keep: Callable[[int, int], None],
        kit: Callable[[str], None],
    ) -> None:
        self._bench, self._till, self._keep, self._kit = bench, till, keep, kit
        self._lot: AtCounter | None = None
        self._asked: Asked | None = None

    def wanted(self, lot: AtCounter, count: int | None = None) -> None:
        """Ask how much is wanted; a number that was said already shows the ways at once."""
        self._lot = lot
        put_up = _put_up(lot)
        if count is not None:
            self._look(Asked(lot=lot.line.lot, put_up=put_up, skeins=count))
            return
        card = MoreCard(lot.line.lot, lot.line.shown, put_up)
        card.answered.connect(lambda told: self._look(*told))
        self._till.asks.emit(card)

    def _look(self, asked: Asked) -> None:
        self._asked = asked
        self._bench.ask(self._show, reorder, asked, self._bench.around.session.now())

    def _show(self, found: Reorder) -> None:
        if self._lot is None or self._asked is None:
            return
        card = WaysCard(self._lot.line.shown, self._asked.put_up, found)
        card.answered.connect(lambda told: self._said(found.wanted, *told))
        self._till.asks.emit(card)

    def _said(self, wanted: int, way: Way) -> None:
        card = SaidCard(way)
        card.answered.connect(lambda told: self._write(wanted, way, *told))
        self._till.asks.emit(card)

    def _write(self, wanted: int, way: Way, answer: str) -> None:
        if self._lot is None:
            return
        delta = None if way.difference is None else round(way.difference.ciede2000 * HUNDREDTHS)
        buyer = self._till.buyer
        offer = OfferIn(self._lot.line.lot, wanted, way.way, answer, way.lot, delta,
                        buyer.id if buyer else None)
        self._bench.do(offered, offer, then=lambda _done: self._after(wanted, way, answer))

    def _after(self, wanted: int, way: Way, answer: str) -> None:
        """What was taken is done next: its bag is looked at, or it is put by."""
        self._till.asks.emit(None)
        lot = self._lot
        if answer != "taken" or lot is None:
            return
        kit = next((one.kit for one in lot.skeins if one.state == "kit" and one.kit
                    and f"in kit {one.kit}," in way.words), "")
        if kit:
            self._kit(kit)
        elif way.lot is not None:
            self._keep(way.lot, min(wanted, way.skeins))
        elif way.way == "same lot" and lot.free and way.words.startswith(f"{way.skeins} free"):
            self._keep(lot.line.lot, min(wanted, way.skeins))


def _put_up(lot: AtCounter) -> str:
    return next((one.put_up for one in lot.free or lot.skeins), "skein")
