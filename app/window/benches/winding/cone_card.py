"""The card to be read from the reel: the tie, the turns, and what the cone still gives."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.calculations.codes import shown
from app.calculations.units import metres
from app.lookups.reel import OnReel
from app.window.benches.winding.reel import Group, Join, Reel, Skeins
from app.window.benches.winding.winding_words import code_of, gives, long, parts, rest_gives
from app.window.look.look import Gap, Size
from app.window.parts.card import Card
from app.window.parts.hold_plate import HoldLine
from app.window.parts.ties import Ties
from app.window.parts.words import SECOND, CodeWords, Digits, Words

TURNS = 120.0


class ConeCard(Card):
    """The cone in hand, or the one skein over a join."""

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.setAccessibleName("on the reel")
        self.ties = Ties()
        self.turns, self.reel = Digits("", TURNS), Words(ink=SECOND)
        self.code, self.base = CodeWords(size=Size.TITLE), Words(ink=SECOND)
        self.gives, self.rest = Words("", Size.LEAD, bold=True), Words(ink=SECOND)
        self.left, self.doubt = Words(ink=SECOND), Words(bold=True)
        self._holds = QVBoxLayout()
        self._tie_words, self._turn_words = Words(ink=SECOND), Words(ink=SECOND)
        row = QHBoxLayout()
        row.setSpacing(Gap.CARD)
        row.addLayout(_column(self._tie_words, self.ties, self.doubt), 5)
        row.addLayout(_column(self._turn_words, self.turns, self.reel), 4)
        row.addLayout(_column(self.code, self.base, self.gives, self.rest, self.left), 5)
        self.add(self._holds, row)

    def show_group(self, reel: Reel, group: Group) -> None:
        """Show what is in hand now."""
        cone = group.second if isinstance(group, Join) else group.cone
        self.ties.show_tie(group.tie)
        self.code.show_code(code_of(group))
        self.base.setText(cone.facts.base_name)
        self._show_holds(cone)
        if isinstance(group, Join):
            self._show_join(group)
        else:
            self._show_skeins(reel, group)

    def _show_holds(self, cone: OnReel) -> None:
        while item := self._holds.takeAt(0):
            if line := item.widget():
                line.hide()
                line.deleteLater()
        for one in cone.holds:
            self._holds.addWidget(HoldLine(f"{shown(cone.facts.code)}: {one.why}; ask {one.ask}."))

    def _show_skeins(self, reel: Reel, group: Skeins) -> None:
        cone, form = group.cone, group.form
        self._tie_words.setText("tie with")
        self._turn_words.setText("turns")
        self.turns.show_number(str(form.turns) if form else "?")
        self.reel.setText(
            f"for a {form.name} on the reel of {metres(form.reel_mm):.2f} m"
            if form
            else f"{cone.facts.base_name} is not described as a {group.put_up}"
        )
        self.gives.setText(gives(cone))
        self.rest.setText(rest_gives(cone))
        self.rest.setVisible(bool(rest_gives(cone)))
        self.left.setText(_left(reel, group))
        worn = cone.tie_worn_by if group.tie == cone.tie else ""
        self.doubt.setText(f"{worn} wears {group.tie} too: keep the two out of one pot.")
        self.doubt.setVisible(bool(worn))

    def _show_join(self, join: Join) -> None:
        self._tie_words.setText("tie this one skein with both")
        self._turn_words.setText("one skein of two cones")
        self.turns.show_number(parts(join))
        self.reel.setText(
            f"{long(join.first_mm)} of {shown(join.first.facts.code)} and "
            f"{long(join.second_mm)} of {shown(join.second.facts.code)}"
        )
        self.gives.setText("")
        self.left.setText("")
        for words in (self.rest, self.doubt):
            words.hide()


def _left(reel: Reel, group: Skeins) -> str:
    left_mm = reel.left_mm(group.cone)
    if left_mm < 0:
        return f"{long(-left_mm)} more than the book leaves on it: count again"
    checked = "checked count" if group.cone.facts.checked else "count as described"
    return f"{long(left_mm)} left, {checked}"


def _column(*widgets: QWidget) -> QVBoxLayout:
    column = QVBoxLayout()
    column.setSpacing(Gap.HAIR)
    for widget in widgets:
        column.addWidget(widget)
    column.addStretch(1)
    column.setAlignment(Qt.AlignmentFlag.AlignTop)
    return column
