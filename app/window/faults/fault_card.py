"""A fault as it is told or seen: what, where on the skein, at which distance, and who says so."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from uuid import uuid4

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent

from app.lookups.things import Found
from app.records.reports import FAULTS, WHERE_ON
from app.window.faults.distance import read_mm
from app.window.look.look import Size
from app.window.parts.action_plates import COUNTS
from app.window.parts.card import Actions, Card, SideBySide
from app.window.parts.fields import CountField, Field, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.sight import bring
from app.window.parts.words import SECOND, Words
from app.work.dividing import skeins

REPEATS_HINT = ("Every 1.5 m it is the reel, every 40 cm a tie; at random distances the spinning; "
                "at one end only the bath or a rail.")


@dataclass(frozen=True, slots=True)
class Seen:
    """What somebody looks at: skeins by their names, else a lot as it is stated.

    `at` is where, as the report keeps it; `order` is the one that it was sent with; `basis` how
    it is known which skeins they are: only a scan proves.
    """

    shown: str
    at: str
    skeins: Mapping[int, str] = field(default_factory=dict)
    """{yarn: its mark as people read it}."""
    lot: int | None = None
    """Where no skein is in hand."""
    order: str = ""
    basis: str = "scanned"


@dataclass(frozen=True, slots=True)
class Told:
    """What was written on the card; the order is looked up before it is saved."""

    fault: str
    where_on: str
    repeat_mm: int | None
    words: str
    order: str
    count: int | None
    yarn: tuple[int, ...]


class FaultCard(Card):
    """`said` gives a Told. Tags that are scanned meanwhile have the fault too."""

    said = Signal(object)  # Told
    left = Signal()

    def __init__(self, seen: Seen) -> None:
        super().__init__(f"A fault on {seen.shown}", in_hand=True)
        self.seen, self.token = seen, uuid4().hex  # a double press tells it once
        self.pictures: list[bytes] = []
        self.skeins = dict(seen.skeins)
        self.faults = [_choice(name, f"{n}  {name}" if n in COUNTS.values() else "")
                       for n, name in enumerate(FAULTS, 1)]
        self.where = [_choice(name) for name in WHERE_ON]
        self.repeat = Field("Distance from one place to the next", read_mm, "centimetres")
        self.count = CountField("How many skeins have it, as stated")
        self.field = TextField("What is seen, in a few words (no names)")
        self.setFocusProxy(self.field)
        self.order = TextField("Number of the order, if its buyer told", "leave it empty if not")
        self.order.line.setText(seen.order)
        self.on, self.taken = Words(), Words(ink=SECOND)
        self.does = KeyButton("Report the fault", "F9", strong=True)
        self.leave = KeyButton("Leave it", "F8")
        self._lay_out()
        self._join()
        self._show_skeins()
        self._untouched = self._warned = self._written()

    def add_skein(self, found: Found) -> None:
        """One more that has the fault."""
        self.skeins[found.id] = found.shown
        self._show_skeins()

    def add_picture(self, picture: bytes) -> None:
        """A photo that goes with it."""
        self.pictures.append(picture)
        self._show_skeins()

    def choose(self, number: int) -> bool:
        """The fault with this number, as the plate COUNT says it."""
        if not 1 <= number <= len(self.faults):
            return False
        self.faults[number - 1].click()
        return True

    def save(self) -> None:
        """Tell what stands there, or say in its place what is missing."""
        fault, where = _chosen(self.faults), _chosen(self.where)
        self.taken.setVisible(True)
        if not fault:
            self.taken.setText("Choose the fault first.")
            return
        repeats = where == "repeats"
        distance = self.repeat.value() if repeats else None
        if repeats and distance is None:
            return
        count = None
        if not self.skeins:
            count = self.count.value()
            if count is None:
                return
        self.said.emit(Told(
            fault, where or "not said", distance, self.field.value() or "",
            (self.order.value() or "").strip(), count, tuple(self.skeins)))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self._escape()
        else:
            super().keyPressEvent(event)

    def _escape(self) -> None:
        """Empty it is left at once; with something on it only when that was said, and again."""
        now = self._written()
        if now in (self._untouched, self._warned):
            self.left.emit()
        else:
            self._warned = now
            self.taken.setText("What stands here is not saved yet, and stays. F9 reports it; Esc "
                               "once more leaves it, and it is gone.")
            self.taken.show()
            bring(self.leave)

    def _written(self) -> tuple[object, ...]:
        """All that was chosen, typed, scanned and photographed."""
        lines = (field.line.text() for field in (self.repeat, self.count, self.field, self.order))
        return (_chosen(self.faults), _chosen(self.where), *lines, len(self.pictures),
                *self.skeins)

    def _lay_out(self) -> None:
        self.add(self.on, Actions(*self.faults), Words("Where on the skein", ink=SECOND),
                 Actions(*self.where), Words(REPEATS_HINT, Size.SMALL, ink=SECOND), self.repeat,
                 self.count, SideBySide(self.field, self.order, shares=(3, 2)), self.taken,
                 Actions(self.does, self.leave))
        self.repeat.hide()
        self.count.setVisible(not self.skeins)

    def _join(self) -> None:
        for group in (self.faults, self.where):
            for key in group:
                key.clicked.connect(lambda _=False, key=key, group=group: self._pick(key, group))
        self.does.clicked.connect(self.save)
        self.leave.clicked.connect(self.left)

    def _pick(self, key: KeyButton, group: Sequence[KeyButton]) -> None:
        for other in group:
            other.setChecked(other is key)
        self.repeat.setVisible(_chosen(self.where) == "repeats")

    def _show_skeins(self) -> None:
        lot = f"{self.seen.shown}, as stated: scan a tag of it if there is one."
        self.on.setText(
            f"On {skeins(len(self.skeins))}: {', '.join(self.skeins.values())}. "
            "Scan more tags that have it." if self.skeins else lot)
        photos = skeins(len(self.pictures), "photo")
        self.taken.setText(f"{photos} with it." if self.pictures else
                           "Drop a photo of it here, if there is one (JPEG or PNG).")


def _choice(words: str, shown: str = "") -> KeyButton:
    """A key that stays pressed; a number before its words is that of the plate COUNT."""
    key = KeyButton(shown or words)
    key.setAccessibleName(words)
    key.setCheckable(True)
    return key


def _chosen(keys: Sequence[KeyButton]) -> str:
    return next((key.accessibleName() for key in keys if key.isChecked()), "")
