"""What is done at the counter: sold, kept, promised, laid on a shelf, taken back."""

from collections.abc import Callable, Sequence
from datetime import datetime
from typing import Any
from uuid import uuid4

from PySide6.QtCore import QObject, Signal

from app.lookups.counter import AtCounter
from app.lookups.customers import Known
from app.lookups.put_bys import Over
from app.problems import Refused
from app.window.bench import Bench
from app.window.benches.counter.asking import (
    BuyerCard,
    ElsewhereCard,
    FoundCard,
    ShelfCard,
    YesCard,
)
from app.window.benches.counter.basket import Basket, Item
from app.window.benches.counter.keeping import KeepCard, PromiseCard
from app.window.benches.counter.words import pieces
from app.work.matching import find
from app.work.moving import To, end_put_bys, move
from app.work.selling import sell
from app.work.serving import Buyer, keep_for, promise, sell_to


class Till(QObject):
    """The basket, who is served, and the deeds; `changed` when the basket is another."""

    changed = Signal()
    asks = Signal(object)  # a question, or None when it is answered

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench)
        self._bench = bench
        self.basket = Basket()
        self.buyer: Known | None = None
        self._token = uuid4().hex
        self.asks.connect(self._begin)

    def do(self, deed: Callable[..., Any], *args: Any, then: Callable[[Any], None],
           **more: Any) -> None:
        """Do what was answered. A key pressed twice, or two keys at once, answer once."""
        self._bench.do(deed, *args, token=self._token, then=then, **more)

    def put(self, item: Item) -> None:
        """A tag was scanned: its skein lies on the counter."""
        self.basket.put(item)
        self.changed.emit()

    def take_out(self, mark: str) -> None:
        """It goes back to where it was."""
        self.basket.take_out(mark)
        self.asks.emit(None)
        self.changed.emit()

    def clear(self) -> None:
        """The next customer."""
        self.basket.empty()
        self.buyer = None
        self.asks.emit(None)
        self.changed.emit()

    def serve(self, buyer: Known | None) -> None:
        """It is they who are served."""
        self.buyer = buyer
        self.changed.emit()

    def sell(self) -> None:
        """Sold to nobody known."""
        self._served(sell, self.basket.yarn)

    def sell_to(self) -> None:
        """Sold to who is served; asked for where nobody is."""
        if self.buyer is not None:
            self._sell_to(Buyer(self.buyer.id))
            return
        card = BuyerCard(self.basket.sum_words())
        card.answered.connect(lambda told: self._sell_to(*told))
        self.asks.emit(card)

    def done_plate(self) -> None:
        """DONE: sell what lies there, to who is served."""
        trouble = self.basket.trouble(self.buyer.id if self.buyer else None)
        if trouble:
            self._bench.around.trouble(_not_sold(trouble))
        elif self.buyer is not None:
            self.sell_to()
        else:
            self.sell()

    def put_by(self, lot: AtCounter | None, now: datetime, count: int | None = None) -> None:
        """Ask for whom and until when; those on the counter are meant, else some that lie free.

        `count` was said already: that many free ones are meant, whatever lies on the counter.
        """
        chosen = [item.skein for item in self.basket.items] if count is None else []
        card = KeepCard(lot, chosen, self.buyer, now.astimezone().date())
        if count is not None:
            card.count(count)
        card.answered.connect(lambda told: self._served(keep_for, *told))
        self.asks.emit(card)

    def promise(self, lot: AtCounter) -> None:
        """Ask for whom, and how many."""
        card = PromiseCard(lot, self.buyer)
        card.answered.connect(lambda told: self._do(promise, lot.line.lot, *told))
        self.asks.emit(card)

    def shelve(self, place: int) -> None:
        """What lies on the counter is laid on a shelf."""
        self._served(move, self.basket.yarn, To("shelf", place=place))

    def elsewhere(self) -> None:
        """Ask why these are not for sale any more."""
        card = ElsewhereCard(self.basket.sum_words())
        card.answered.connect(
            lambda told: self._served(move, self.basket.yarn, To(told[0])))
        self.asks.emit(card)

    def ask_out(self, item: Item) -> None:
        """The same tag once more, later: it may be meant to go back."""
        card = YesCard(f"Take {item.shown} out?", "It lies on the counter already.", "Take it out")
        card.answered.connect(lambda _told: self.take_out(item.skein.mark))
        self.asks.emit(card)

    def end_over(self, over: Sequence[Over]) -> None:
        """Put-bys that are over go back on their shelf; where they lie apart, it is asked for."""
        places = {one.place for one in over}
        if len(places) == 1 and None not in places:
            self._do(end_put_bys, *places, "stated")  # by a key: no plate was scanned
            return
        card = ShelfCard(f"{pieces(len(over), 'put-by')} back on the shelf")
        card.answered.connect(lambda told: self._do(end_put_bys, *told))
        self.asks.emit(card)

    def found(self, bases: Sequence[tuple[int, str]], base: str) -> None:
        """A skein without a tag was found here."""
        card = FoundCard("Found without a tag",
                         "Its lot stays not known until something says what it is.", bases, base)
        card.answered.connect(lambda told: self._do(find, *told))
        self.asks.emit(card)

    def _sell_to(self, buyer: Buyer) -> None:
        trouble = self.basket.trouble(buyer.customer)
        if trouble:
            self._bench.around.trouble(_not_sold(trouble))
        else:
            self._served(sell_to, self.basket.yarn, buyer)

    def _do(self, deed: Callable[..., Any], *args: Any) -> None:
        self.do(deed, *args, then=lambda _done: self.asks.emit(None))

    def _served(self, deed: Callable[..., Any], *args: Any) -> None:
        """Do it; then the counter is free for the next."""
        self.do(deed, *args, then=lambda _done: self.clear())

    def _begin(self) -> None:
        """Another question, or none: what is answered from here on is another deed."""
        self._token = uuid4().hex


def _not_sold(trouble: str) -> Refused:
    """Why nothing was sold, as a sentence."""
    return Refused(f"{trouble.removesuffix('.')}.", "Nothing was sold.")
