"""What belongs to this computer and not to the book: sizes, station, scanners, the way to it."""

import json
from pathlib import Path

from PySide6.QtCore import QByteArray, QSettings

from app.window.balance_settings import BalanceSettings
from app.window.look.look import LEAST_TEXT, MOST_TEXT
from app.window.printer_settings import PrinterSettings

OPTIONS = {
    "text": "Size of the text, 1.0 to 2.0; Ctrl and plus or minus change it.",
    "evening": "Dark surround for a room without daylight: yes or no.",
    "station": "What this place is called in the journal, such as till or pots.",
    "person": "Initials of who signed on last at this computer.",
    "scanners": "Prefix of each scanner and its name, so that two are told apart.",
    "book": "Where the studio's book lies.",
    "window": "Size and place of the window.",
}


class ComputerSettings:
    """Read and written as they are used; kept in an INI file that a person can read."""

    def __init__(self, path: Path) -> None:
        self._file = QSettings(str(path), QSettings.Format.IniFormat)
        self.balances = BalanceSettings(self._file)
        self.printers = PrinterSettings(self._file)

    @property
    def text(self) -> float:
        """Text factor."""
        try:
            factor = float(self._read("text", "1.0"))
        except ValueError:
            factor = 1.0
        return min(max(factor, LEAST_TEXT), MOST_TEXT)

    @text.setter
    def text(self, factor: float) -> None:
        self._file.setValue("text", f"{factor:.2f}")

    @property
    def evening(self) -> bool:
        """Whether the surround is dark."""
        return self._read("evening", "no") == "yes"

    @evening.setter
    def evening(self, dark: bool) -> None:
        self._file.setValue("evening", "yes" if dark else "no")

    @property
    def station(self) -> str:
        """What this place is called."""
        return self._read("station", "desk")

    @station.setter
    def station(self, name: str) -> None:
        self._file.setValue("station", name)

    @property
    def person(self) -> str:
        """Who signed on last."""
        return self._read("person", "")

    @person.setter
    def person(self, initials: str) -> None:
        self._file.setValue("person", initials)

    @property
    def scanners(self) -> dict[str, str]:
        """Names of the scanners by the character each begins with."""
        try:
            told = json.loads(self._read("scanners", "{}"))
        except ValueError:
            return {}
        return {str(k): str(v) for k, v in told.items()} if isinstance(told, dict) else {}

    @scanners.setter
    def scanners(self, names: dict[str, str]) -> None:
        self._file.setValue("scanners", json.dumps(names))

    @property
    def book(self) -> Path | None:
        """Where the book lies, if it was ever opened here."""
        path = self._read("book", "")
        return Path(path) if path else None

    @book.setter
    def book(self, path: Path) -> None:
        self._file.setValue("book", str(path))

    @property
    def window(self) -> QByteArray:
        """Size and place of the window; empty at the first start."""
        kept = self._file.value("window", QByteArray())
        return kept if isinstance(kept, QByteArray) else QByteArray()

    @window.setter
    def window(self, kept: QByteArray) -> None:
        self._file.setValue("window", kept)

    def store(self) -> None:
        """Write it to the disk now."""
        self._file.sync()

    def _read(self, name: str, default: str) -> str:
        return str(self._file.value(name, default))
