"""Another thread for what is in hand, or the second thread of a skein over a join."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout

from app.calculations.codes import shown
from app.window.benches.winding.reel import Group, Join
from app.window.benches.winding.tie_keys import TieKeys
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.ties import threads_of
from app.window.parts.words import Words


class ThreadCard(Card):
    """All threads on their pegs; `chosen` gives the whole tie."""

    chosen = Signal(str)
    done = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.title = Words("", Size.LEAD, bold=True)
        self.keys: TieKeys | None = None
        self._place = QVBoxLayout()
        self._first = ""
        go_on = KeyButton("Go on", "Enter", strong=True)
        self.add(self.title, self._place, Actions(go_on))
        go_on.clicked.connect(self.done)

    def show_group(self, group: Group, colours: Sequence[str]) -> None:
        """Offer the threads for this group."""
        threads = threads_of(group.tie)
        if isinstance(group, Join):
            self._first = f"{threads[0]} and "
            self.title.setText(f"Its second thread, beside {threads[0]}: both colours are proposed")
            self._offer([one for one in colours if one != threads[0]], threads[-1])
        else:
            self._first = ""
            self.title.setText(f"Thread for {shown(group.cone.facts.code)}")
            self._offer(colours, group.tie)

    def _offer(self, colours: Sequence[str], worn: str) -> None:
        if self.keys is not None:
            self._place.removeWidget(self.keys)
            self.keys.hide()
            self.keys.deleteLater()
        self.keys = TieKeys(colours)
        self.keys.mark(worn)
        self.keys.chosen.connect(lambda word: self.chosen.emit(self._first + word))
        self._place.addWidget(self.keys)
