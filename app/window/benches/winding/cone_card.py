"""The card to be read from the reel: the tie, the turns, the count, and what the cone gives."""

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.calculations.codes import shown
from app.calculations.units import metres
from app.lookups.reel import OnReel
from app.window.benches.winding.reel import Group, Join, Reel, Skeins, left_on
from app.window.benches.winding.winding_words import code_of, gives, long, parts, rest_gives
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.hold_plate import HoldLine
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.ties import Ties
from app.window.parts.words import SECOND, CodeWords, Digits, Words
from app.work.dividing import skeins

_LARGE = 120  # of figures that are read across the room, however large the text is
_ROOM = 117  # height of what is read across the room


class ConeCard(Card):
    """The cone in hand, or the one skein over a join."""

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.setAccessibleName("on the reel")
        self.ties, self.turns, self.count = Ties(), Digits("", _LARGE), Digits("", _LARGE)
        self.tie_words, self.turn_words, self.count_words = (Words(ink=SECOND) for _ in range(3))
        self.other_thread = KeyButton("Other thread", "T")
        self.form = KeyButton("Wind minis", "M")
        self.total = Words(ink=SECOND)
        self.code, self.base = CodeWords(size=Size.TITLE), Words(ink=SECOND)
        self.gives, self.rest = Words("", Size.LEAD, bold=True), Words(ink=SECOND)
        self.doubt = Words(bold=True)
        self.next = Words("", Size.TITLE, bold=True)
        self._holds = QVBoxLayout()
        for digits in (self.turns, self.count):
            digits.setMaximumHeight(_ROOM)
            digits.setMinimumHeight(_ROOM)
        large = QHBoxLayout()
        large.setSpacing(Gap.BLOCK)
        large.addLayout(_column(self.tie_words, self.ties, Actions(self.other_thread)), 4)
        large.addLayout(_column(self.turn_words, self.turns, Actions(self.form)), 4)
        large.addLayout(_column(self.count_words, self.count, self.total), 3)
        facts = QHBoxLayout()
        facts.setSpacing(Gap.CARD)
        facts.addLayout(_column(self.code, self.base))
        facts.addLayout(_column(self.gives, self.rest), 1)
        self.add(self._holds, self.next, large, facts, self.doubt)

    def show_group(self, reel: Reel, group: Group) -> None:
        """Show what is in hand now."""
        cone = group.second if isinstance(group, Join) else group.cone
        self.ties.show_tie(group.tie)
        self.code.show_code(code_of(group))
        self.code.setVisible(isinstance(group, Skeins))
        self.base.setText(cone.facts.base_name)
        self.count.show_number(str(group.count))
        self.count_words.setText(
            "skein over the join"
            if isinstance(group, Join)
            else skeins(group.count, group.put_up).partition(" ")[2]
        )
        self.total.setText(f"{reel.total} in all" if reel.total != group.count else "")
        self._show_holds(cone)
        if isinstance(group, Join):
            self._show_join(group)
        else:
            self._show_skeins(reel, group)

    def _show_skeins(self, reel: Reel, group: Skeins) -> None:
        cone, form = group.cone, group.form
        self.tie_words.setText("tie with")
        self.turn_words.setText(
            f"turns × {metres(form.reel_mm):.2f} m" if form else "turns not known"
        )
        self.turns.show_number(str(form.turns) if form else "?")
        self.gives.setText(gives(cone, left_on(reel, cone)))
        self.rest.setText(_rest(cone, left_on(reel, cone)))
        self.rest.show()
        self._offer_form(group.other_form)
        worn = cone.tie_worn_by if group.tie == cone.tie else ""
        self.doubt.setText(f"{worn} wears {group.tie} too: keep the two out of one pot.")
        self.doubt.setVisible(bool(worn))

    def _show_join(self, join: Join) -> None:
        self.tie_words.setText("tie this one with both")
        self.turn_words.setText("one skein of two cones")
        self.turns.show_number(parts(join))
        self.gives.setText(
            f"{long(join.first_mm)} of {shown(join.first.facts.code)} and "
            f"{long(join.second_mm)} of {shown(join.second.facts.code)}"
        )
        self.rest.hide()
        self.form.refuse("A join is one skein.")
        self.doubt.hide()

    def _offer_form(self, other: str) -> None:
        self.form.say(f"Wind {other}s" if other else "Other form")
        if other:
            self.form.allow()
        else:
            self.form.refuse("This base has one form.")

    def _show_holds(self, cone: OnReel) -> None:
        take_down(self._holds)
        for one in cone.holds:
            self._holds.addWidget(HoldLine(f"{shown(cone.facts.code)}: {one.why}; ask {one.ask}."))


def _rest(cone: OnReel, left_mm: int) -> str:
    checked = "count checked" if cone.facts.checked else "count not checked"
    return " · ".join(filter(None, (rest_gives(cone, left_mm), checked)))


def _column(*widgets: QWidget) -> QVBoxLayout:
    column = QVBoxLayout()
    column.setSpacing(Gap.HAIR)
    for widget in widgets:
        column.addWidget(widget)
    column.addStretch(1)
    return column
