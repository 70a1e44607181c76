"""The cones are in the book: the codes to write on their cards."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from app.calculations.codes import shown
from app.exchange.delivery_note import NOT_STATED
from app.lookups.door import ConeCard
from app.window.benches.receiving.door_words import g, kg
from app.window.benches.receiving.hand import Hand, go_to
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, BigNumber, CodeWords, Words

_MOST = 96  # cells; more cones than any carton holds


class CodesCard(Hand):
    """Every new code, large, in the order the cones were weighed or listed."""

    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("codes for the cone cards")
        self.cones: Sequence[ConeCard] = ()
        self.number = BigNumber()
        self.next = KeyButton("Next delivery", "Enter", strong=True)
        self.next.clicked.connect(self.left)
        self.rest = Words(ink=SECOND)
        self._cells = QVBoxLayout()
        head = self.add_row(self.number, self.next)
        head.setStretch(0, 1)
        head.setAlignment(self.next, Qt.AlignmentFlag.AlignTop)
        self.add(self._cells, self.rest)

    def show_cones(self, cones: Sequence[ConeCard]) -> None:
        """Show the codes of these cones."""
        self.cones = cones
        bases = " and ".join(dict.fromkeys(cone.base for cone in cones))
        net_mg = sum(cone.gross_mg - cone.tare_mg for cone in cones)
        count = len(cones)
        self.number.show_number(
            str(count), f"{'cone' if count == 1 else 'cones'} of {bases}",
            f"{kg(net_mg)} net. Write each code on a card inside its cone and on the outside.")
        take_down(self._cells)
        several = len({cone.base for cone in cones}) > 1
        if cones:
            self._cells.addWidget(Actions(*(_Cell(cone, several) for cone in cones[:_MOST])))
        more = count - _MOST
        self.rest.setVisible(more > 0)
        self.rest.setText(f"and {more} more, to {shown(cones[-1].code)}" if more > 0 else "")
        go_to(self.next)

    def begin(self) -> None:
        go_to(self.next)

    def done(self) -> None:
        """On to the next delivery."""
        self.left.emit()


class _Cell(QWidget):
    """One code, and by what its cone is told from the others."""

    def __init__(self, cone: ConeCard, with_base: bool) -> None:
        super().__init__()
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        said = [g(cone.gross_mg), f"batch {cone.batch or NOT_STATED}"]
        words = Words(", ".join(said), Size.SMALL, ink=SECOND, wrap=False)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, Gap.PART, 0)
        column.setSpacing(0)
        row = QHBoxLayout()
        row.addWidget(CodeWords(shown(cone.code), Size.TITLE), 0, Qt.AlignmentFlag.AlignLeft)
        row.addStretch(1)
        column.addLayout(row)
        column.addWidget(words)
        if with_base:
            column.addWidget(Words(cone.base, Size.SMALL, ink=SECOND, wrap=False))
