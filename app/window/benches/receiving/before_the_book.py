"""What lay here before the book began: old lots, one by one or by a list."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject

from app.exchange.old_lots import open_from_list, see_old_lots
from app.lookups.old_lots import can_be_old, opened_last
from app.window.bench import Bench
from app.window.benches.receiving.hand import Hand
from app.window.benches.receiving.old_list_card import OldListCard
from app.window.benches.receiving.old_lots_card import OldLotsCard
from app.window.list_look import look_at
from app.work.opening_stock import LayHere, open_lots


class BeforeTheBook(QObject):
    """Asks and does for the two cards of old lots; `turn_to` brings a card into the hand."""

    def __init__(
        self, bench: Bench, lots: OldLotsCard, listed: OldListCard, turn_to: Callable[[Hand], None]
    ) -> None:
        super().__init__(bench)
        self._bench, self.lots, self.listed, self._turn_to = bench, lots, listed, turn_to
        lots.laid.connect(self._lay)
        listed.look_wanted.connect(self._look)
        listed.complete.connect(self._open_all)
        listed.left.connect(self.begin)

    def begin(self) -> None:
        """Old lots are entered one by one."""
        self.look_again()
        self._turn_to(self.lots)

    def look_again(self) -> None:
        """What is described, and what was opened last."""
        self._bench.ask(self.lots.show_now, can_be_old)
        self._bench.ask(self.lots.show_last, opened_last)

    def takes_lists(self, hand: Hand) -> bool:
        """Whether a list that is dropped now is one of old lots."""
        return hand in (self.lots, self.listed)

    def open_list(self, path: Path) -> None:
        """A list of old lots is in hand."""
        self._turn_to(self.listed)
        self.listed.open(path)

    def _lay(self, lot: LayHere) -> None:
        self._bench.do(open_lots, [lot], then=lambda _done: self.lots.again())

    def _open_all(self, leave_out: bool) -> None:
        seen = self.listed.seen
        if seen is not None:
            self._bench.do(open_from_list, seen, leave_out, token=self.listed.token,
                           then=lambda _done: self.begin())

    def _look(self) -> None:
        card, session = self.listed, self._bench.around.session
        path, said = card.path, card.said
        look_at(self._bench, card, lambda: session.ask(see_old_lots, path, said))
