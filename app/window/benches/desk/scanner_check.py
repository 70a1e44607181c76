"""The scanner check: whether a scanner types what it reads."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout

from app.documents.scanner_plate import SCANNER_TEST_TEXTS, judge_scan
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, CodeWords, Words

WAITING = "not scanned yet"
_SLOW = ("Its keys came as slowly as a person's, so it was not known as a scanner: take the "
         "pause between its keys out, or make it 5 to 10 ms.")
_CURES = "The page of the test codes says what to set."


class ScannerCheck(Card):
    """While it is open, every scan is compared with the test plate and goes nowhere else."""

    def __init__(self) -> None:
        super().__init__("Scanner check")
        self.open = False
        self.paper_key = KeyButton("Test codes as paper")
        self.start_key = KeyButton("Check a scanner", strong=True)
        self.verdict = Words("Print the test codes once, then scan all four with every scanner.",
                             ink=SECOND)
        self.said = Words("", Size.LEAD, bold=True)
        self.states = {text: Words(WAITING, ink=SECOND) for text in SCANNER_TEST_TEXTS}
        self._right: set[str] = set()
        grid = QGridLayout()
        grid.setHorizontalSpacing(Gap.CARD)
        grid.setVerticalSpacing(Gap.HAIR)
        grid.setColumnStretch(1, 1)
        self._codes = [CodeWords(text) for text in SCANNER_TEST_TEXTS]
        for row, (code, state) in enumerate(zip(self._codes, self.states.values(), strict=True)):
            grid.addWidget(code, row, 0, Qt.AlignmentFlag.AlignTop)
            grid.addWidget(state, row, 1)
        self.add(self.verdict, self.said, grid)
        self.add_last(Actions(self.start_key, self.paper_key))
        self.start_key.clicked.connect(self._turn)
        self.shut()

    def shut(self) -> None:
        """Scans are scans again."""
        self._show(False)

    def judge(self, typed: str, *, slow: bool = False) -> None:
        """Say whether this scan came through as printed."""
        verdict = judge_scan(typed)
        if verdict.right:
            self._right.add(verdict.expected)
            self.states[verdict.expected].setText("right")
        else:
            self._right.discard(verdict.expected)
            self.states[verdict.expected].setText(verdict.says)
        self.said.setText(self._sum_up(verdict.right, slow))

    def _sum_up(self, right: bool, slow: bool) -> str:
        if not right:
            return f"This scanner types something else than it reads. {_CURES}"
        if slow:
            return _SLOW
        left = len(self.states) - len(self._right)
        return ("All four came through: this scanner is right." if not left
                else f"Right. {left} more to scan.")

    def _turn(self) -> None:
        self._show(not self.open)

    def _show(self, opened: bool) -> None:
        self.open = opened
        self._right = set()
        for state in self.states.values():
            state.setText(WAITING)
        self.said.setText("Scan it now: all four, in any order." if opened else "")
        for part in (self.said, *self._codes, *self.states.values()):
            part.setVisible(opened)
        self.verdict.setVisible(not opened)
        self.start_key.say("Check is over" if opened else "Check a scanner")
