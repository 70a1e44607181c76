"""What the cord in hand is: its swatch, colourway, lot, base and disc."""

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.lookups.bundles import BundleFacts
from app.window.look.look import Gap, Size
from app.window.parts.hold_plate import HoldPlate
from app.window.parts.swatch import Swatch, Zone
from app.window.parts.words import SECOND, CodeWords, Words
from app.work.dividing import skeins


class CordHead(QWidget):
    """Two lines beside the swatch, with HOLD where it lies on the yarn."""

    def __init__(self, cord: BundleFacts) -> None:
        super().__init__()
        name = cord.colourway or "not dyed yet"
        zones = [Zone(cord.swatch)] if cord.swatch else []
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Gap.PART)
        row.addWidget(Swatch(zones, name, none="no swatch chosen"))
        words = QVBoxLayout()
        words.setSpacing(0)
        words.addWidget(Words(name, Size.LEAD, bold=True))
        words.addWidget(
            Words(f"{cord.base} · disc {cord.number} · {skeins(cord.count)}", ink=SECOND)
        )
        row.addLayout(words, 1)
        if cord.held:
            row.addWidget(HoldPlate(here=False))
        if cord.lot:
            row.addWidget(CodeWords(cord.lot, Size.TITLE))
