"""A delivery by weight: cone after cone, gross weight and Enter."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout

from app.exchange.delivery_note import NOT_STATED
from app.lookups.door import CameBefore
from app.window.benches.receiving.cone_form import ConeForm, number_taken
from app.window.benches.receiving.cone_table import ConeTable, Listed
from app.window.benches.receiving.delivery import InHand
from app.window.benches.receiving.door_words import came_words, cones, g
from app.window.benches.receiving.hand import Hand, go_to
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions
from app.window.parts.key_button import KeyButton
from app.window.parts.words import BigNumber, OneLine, Words


class WeighingCard(Hand):
    """The cone on the scales above, the cones so far below; `complete` when DONE was said."""

    complete = Signal()
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("the delivery in hand")
        self.hand: InHand | None = None
        self._in_book: frozenset[int] = frozenset()
        self._batches: Sequence[str] = ()
        self._again: int | None = None  # place of a cone that is put right
        self.title, self.told = OneLine("", Size.TITLE, bold=True), OneLine(second=True)
        self.so_far = BigNumber()
        self.before, self.asks = Words(bold=True), Words("", Size.LEAD, bold=True)
        self.off = Words(bold=True)
        self.form = ConeForm()
        self.form.taken = self._taken
        self.add_key = KeyButton("Next cone", "Enter", strong=True)
        self.not_stated = KeyButton("Batch not stated", "F4")
        self.more = KeyButton("More of this cone", "F6")
        self.back = KeyButton("", "F7")
        self.take_in = KeyButton("", "F10")
        self.leave = KeyButton("Leave it", "F8")
        self.table = ConeTable("cones of this delivery", opens=True, most_rows=6)
        self._lay_out()
        self._connect()

    def weigh(self, hand: InHand) -> None:
        """These cones are weighed now."""
        self.hand, self._again = hand, None
        self.title.say(hand.heading.base.name)
        self.told.say(hand.heading.words)
        self.show_batches(())
        self.show_before(())
        self.form.clear()
        self._show()

    @property
    def on_the_scales(self) -> bool:
        """A weight is written that is not in the list yet."""
        return bool(self.form.gross.line.text().strip())

    def show_taken(self, numbers: frozenset[int]) -> None:
        """These numbers were given to cones already."""
        self._in_book = numbers

    def show_batches(self, batches: Sequence[str]) -> None:
        """Offer what this supplier sent before."""
        self._batches = batches
        self._offer_batches()

    def show_before(self, before: Sequence[CameBefore]) -> None:
        """A note of the same number with the same base was taken in before."""
        said = [came_words(self.hand.heading.note_no, one) for one in before] if self.hand else []
        self.before.setVisible(bool(said))
        self.before.setText(" ".join([*said, "What is weighed now comes on top."]))

    def begin(self) -> None:
        go_to(self.form.gross.line)

    def take_cone(self, number: int) -> bool:
        """A card that has its number already was scanned."""
        self.form.number.line.setText(str(number))
        self.form.more.show()
        self.form.number.value()
        self.begin()
        return True

    def write(self, key: str) -> bool:
        """A figure begins the weight of the next cone."""
        go_to(self.form.gross.line)
        self.form.gross.line.insert(key)
        return True

    def add_cone(self) -> bool:
        """The cone on the scales goes to the list; False and the reason if it cannot."""
        cone = self.form.cone()
        if cone is None or self.hand is None:
            return False
        place = len(self.hand.cones) if self._again is None else self._again
        self.hand.cones.insert(place, cone)
        self._again = None
        self.form.next_cone()
        self._show(place)
        return True

    def done(self) -> None:
        """Take them in; what stands on the scales is one of them."""
        if self.on_the_scales and not self.add_cone():
            return
        if self.hand is None or not self.hand.cones:
            self.form.gross.complain("No cone is weighed yet.")
            self.begin()
            return
        self.complete.emit()

    def reopen(self, place: int) -> None:
        """A cone of the list comes back on the scales."""
        if self.hand is None or (self.on_the_scales and not self.add_cone()):
            return
        self.form.show_cone(self.hand.cones.pop(place))
        self._again = place
        self._show()

    def _back(self) -> None:
        """The last cone comes back; one that is back already is left out."""
        if self.hand is None:
            return
        if self._again is None and self.hand.cones:
            self.reopen(len(self.hand.cones) - 1)
        elif self._again is not None:
            self._again = None
            self.form.next_cone()
            self._show()

    def _show(self, last: int | None = None) -> None:
        hand = self.hand
        if hand is None:
            return
        count = len(hand.cones)
        self.so_far.show_number(str(count), "cone" if count == 1 else "cones",
                                f"{g(hand.net_mg)} net" if count else "none yet")
        self.table.show_cones([self._listed(hand, place) for place in reversed(range(count))])
        said = [*(hand.off(last) if last is not None else ()), *filter(None, [hand.apart()])]
        self.off.setText("\n".join(said))
        self.off.setVisible(bool(said))
        self.take_in.say(f"Take in {cones(count)}")
        self._allow(count)
        self._offer_batches()
        self._ask()

    def _listed(self, hand: InHand, place: int) -> Listed:
        """A cone as it is listed; one that is back on the scales keeps its place free."""
        beyond = self._again is not None and place >= self._again
        return Listed(hand.cones[place], bool(hand.off(place)), place=str(place + 1 + beyond))

    def _allow(self, count: int) -> None:
        self.take_in.setVisible(bool(count))
        self.back.setVisible(bool(count) or self._again is not None)
        self.back.say("Leave this cone out" if self._again is not None else "Last cone again")

    def _ask(self) -> None:
        """Which cone is on the scales, and what it holds as far as is written."""
        hand, draft = self.hand, self.form.draft()
        if hand is None:
            return
        place = len(hand.cones) if self._again is None else self._again
        if draft is None or draft[1] >= draft[0]:
            self.asks.setText(f"Cone {place + 1}: weigh it with its centre.")
        else:
            self.asks.setText(f"Cone {place + 1} holds {g(draft[0] - draft[1])} net.")

    def _offer_batches(self) -> None:
        mine = [cone.batch for cone in reversed(self.hand.cones) if cone.batch] if self.hand else []
        self.form.batch.offer(tuple(dict.fromkeys([*mine, *self._batches])))

    def _taken(self, number: int) -> str:
        mine = [cone.number for cone in self.hand.cones if cone.number] if self.hand else []
        return number_taken(number, self._in_book, mine)

    def _say_not_stated(self) -> None:
        self.form.batch.take_up(NOT_STATED)
        self.begin()

    def _turn_more(self) -> None:
        self.form.more.setVisible(not self.form.more.isVisible())
        go_to((self.form.number if self.form.more.isVisible() else self.form.gross).line)

    def _connect(self) -> None:
        self.add_key.clicked.connect(self.add_cone)
        self.not_stated.clicked.connect(self._say_not_stated)
        self.more.clicked.connect(self._turn_more)
        self.back.clicked.connect(self._back)
        self.take_in.clicked.connect(self.done)
        self.leave.clicked.connect(self.left)
        self.table.opened.connect(
            lambda row: self.reopen(len(self.hand.cones) - 1 - row) if self.hand else None)
        for field in (self.form.gross, self.form.centre):
            field.line.textChanged.connect(self._ask)

    def _lay_out(self) -> None:
        words = QVBoxLayout()
        words.setSpacing(Gap.HAIR)
        words.addWidget(self.title)
        words.addWidget(self.told)
        words.addStretch(1)
        head = QHBoxLayout()
        head.setSpacing(Gap.PART)
        head.addLayout(words, 1)
        head.addWidget(self.so_far, 0, Qt.AlignmentFlag.AlignTop)
        self.add(head, self.before, self.form, self.asks, self.off,
                 Actions(self.add_key, self.not_stated, self.more), self.table)
        self.add_last(Actions(self.take_in, self.back, self.leave))
