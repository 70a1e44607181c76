"""What is done with a kit's bag at the counter: it is sold whole, or opened on a shelf."""

from collections.abc import Callable
from typing import Any

from app.lookups.kits import KitNow
from app.window.benches.counter.asking import BuyerCard
from app.window.benches.counter.kit_card import KitCard
from app.window.benches.counter.till import Till
from app.work.kits import open_kit, sell_kit
from app.work.serving import Buyer, sell_kit_to


class Bags:
    """A bag is asked about as it is scanned, apart from what else lies on the counter."""

    def __init__(self, till: Till) -> None:
        self._till = till

    def scanned(self, kit: KitNow) -> None:
        """Ask whether it is sold or opened."""
        card = KitCard(kit, self._till.buyer)
        card.sold.connect(lambda named: self._sell(kit, named))
        card.answered.connect(lambda told: self._do(open_kit, kit.id, *told))
        self._till.asks.emit(card)

    def _sell(self, kit: KitNow, named: bool) -> None:
        if not named:
            self._do(sell_kit, kit.id)
        elif self._till.buyer is not None:
            self._do(sell_kit_to, kit.id, Buyer(self._till.buyer.id))
        else:
            card = BuyerCard(f"Kit {kit.shown}")
            card.answered.connect(lambda told: self._do(sell_kit_to, kit.id, *told))
            self._till.asks.emit(card)

    def _do(self, deed: Callable[..., Any], *args: Any) -> None:
        self._till.do(deed, *args, then=lambda _done: self._till.asks.emit(None))
