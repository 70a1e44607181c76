"""How far two shades may be apart for each word that is said of them."""

from dataclasses import replace
from decimal import Decimal, InvalidOperation

from PySide6.QtCore import Signal

from app.calculations.shade_words import USUAL, Bands
from app.problems import BadInput
from app.window.parts.card import Actions, Card, SideBySide
from app.window.parts.fields import Field
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words

_NAMES = {
    "same": "Looks the same up to", "same_in_greys": "in greys and pales",
    "same_by_zone": "in each zone of many colours", "two_rows": "Alternate two rows up to",
    "throughout": "Alternate throughout up to", "second": "As a second colour up to",
}
MOST = 20
"""No limit is wider; beyond it two lots have different names."""


class LimitsCard(Card):
    """`kept` gives the limits when all of them can be read and rise."""

    kept = Signal(object)  # Bands

    def __init__(self) -> None:
        super().__init__("How far shades may be apart")
        self.fields = {key: Field(name, _number, f"{getattr(USUAL, key):g}")
                       for key, name in _NAMES.items()}
        self.keep_key = KeyButton("Keep the limits")
        self.wrong = Words(bold=True)
        self.wrong.hide()
        first, second = list(self.fields.values())[:3], list(self.fields.values())[3:]
        self.add(Words("In CIEDE2000, for the words at the Counter, at Packing and at Inspecting. "
                       "Usual where nothing was chosen; what was said before stays as it was said.",
                       ink=SECOND),
                 SideBySide(*first), SideBySide(*second), self.wrong, Actions(self.keep_key))
        self.keep_key.clicked.connect(self._keep)
        for field in self.fields.values():
            field.line.returnPressed.connect(self._keep)

    def show_bands(self, bands: Bands) -> None:
        """Show what stands, but never over what is being written."""
        for key, field in self.fields.items():
            if not field.line.isModified():
                field.line.setText(f"{getattr(bands, key):g}")

    def is_kept(self) -> None:
        """What was written stands now."""
        for field in self.fields.values():
            field.line.setModified(False)

    def _keep(self) -> None:
        read = {key: value for key, field in self.fields.items()
                if (value := field.value()) is not None}
        if len(read) < len(self.fields):
            return  # the field says what is wrong
        self.wrong.hide()
        try:
            self.kept.emit(replace(USUAL, **read))
        except BadInput as problem:
            self.wrong.setText(str(problem))
            self.wrong.show()


def _number(text: str) -> float:
    try:
        number = Decimal(text.strip().replace(",", "."))
    except InvalidOperation:
        number = Decimal(0)
    if not 0 < number <= MOST:
        raise BadInput(f"“{text.strip()}” is no number above 0 and up to {MOST}.")
    return float(number)
