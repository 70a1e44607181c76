"""A disc that hangs on a live bundle: what it hangs on, and two ways out."""

from PySide6.QtCore import Signal

from app.lookups.bundles import WOUND
from app.lookups.reel import DiscNow
from app.window.benches.winding.winding_words import hangs_on
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words
from app.work.dividing import skeins


class LiveDiscCard(Card):
    """Refused in its place; the count stays. Another disc is scanned, or this one is taken off."""

    taken_off = Signal(object)  # DiscNow
    given_up = Signal()

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.disc: DiscNow | None = None
        self.what, self.kept = Words("", Size.LEAD, bold=True), Words(ink=SECOND)
        self._take_off, self._other = (
            KeyButton("", "O"),
            KeyButton("Take another disc", "Enter", strong=True),
        )
        self.add(self.what, self.kept, Actions(self._other, self._take_off))
        self._take_off.clicked.connect(lambda: self.taken_off.emit(self.disc))
        self._other.clicked.connect(self.given_up)

    def refuse(self, disc: DiscNow, counted_here: int) -> None:
        """Say what the disc hangs on."""
        assert disc.bundle is not None
        self.disc = disc
        self.what.setText(hangs_on(disc.number, disc.bundle))
        wet = "" if disc.bundle.stage == WOUND else " Only if it fell off that cord."
        stay = "stays" if counted_here == 1 else "stay"
        self.kept.setText(
            f"Nothing was saved; your {skeins(counted_here)} {stay} counted. Scan another disc, or "
            f"scan {disc.number} once more to take it off there first.{wet}"
        )
        self._take_off.say(f"Take {disc.number} off there")
