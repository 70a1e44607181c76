"""What looks wrong, in at most three sentences, each answered in one tap."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from app.window.look.look import Gap, look
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import Words

MOST_SHOWN, MOST_LARGE = 3, 1  # the second where the text is so large that the bench needs room
_LARGE_TEXT = 1.5


@dataclass(frozen=True, slots=True)
class Finding:
    """A warning as a sentence, and the answers a person may give to it."""

    sentence: str
    answers: tuple[str, ...] = ("Go on",)


class Findings(QWidget):
    """Warnings on the bench; `answered` gives the Finding and the answer, and the next moves up."""

    answered = Signal(object, str)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("what looks wrong")
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        self._open: list[Finding] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(Gap.SMALL)
        self.hide()

    def show_findings(self, findings: Sequence[Finding]) -> None:
        """Show the first three, or one where the text is large; say how many more there are."""
        self._open = list(findings)
        take_down(self._column)
        most = MOST_LARGE if look().text > _LARGE_TEXT else MOST_SHOWN
        for finding in findings[:most]:
            self._column.addWidget(self._strip(finding))
        if len(findings) > most:
            self._column.addWidget(Words(f"and {len(findings) - most} more", ink="surround"))
        self.setVisible(bool(findings))

    def _strip(self, finding: Finding) -> QWidget:
        strip = QFrame()
        strip.setProperty("ground", "finding")
        row = QHBoxLayout(strip)
        row.setContentsMargins(Gap.PART, Gap.SMALL, Gap.SMALL, Gap.SMALL)
        row.setSpacing(Gap.SMALL)
        row.addWidget(Words(finding.sentence, bold=True), 1)
        for answer in finding.answers:
            key = KeyButton(answer)
            key.setAccessibleDescription(finding.sentence)
            key.clicked.connect(partial(self._answer, finding, answer))
            row.addWidget(key)
        return strip

    def _answer(self, finding: Finding, answer: str) -> None:
        self.show_findings([other for other in self._open if other is not finding])
        self.answered.emit(finding, answer)
