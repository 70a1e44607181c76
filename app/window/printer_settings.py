"""What this computer knows of printers: which one prints which stock, and how far it is off."""

import json
from typing import Any

from PySide6.QtCore import QSettings

from app.problems import BadInput

Correction = tuple[float, float]  # mm to the right and down; as the stocks have it

_NONE: Correction = (0.0, 0.0)
LARGEST_CORRECTION_MM = 5.0  # as the stocks have it, which would bring in all of the papers
_LEAST_SCREEN, _MOST_SCREEN = 0.4, 2.5


class PrinterSettings:
    """Kept in the file of the computer's settings; nonsense there is no printer and no correction.

    No printer is the name '': then the sheet is opened as a file, for any program to print.
    """

    def __init__(self, file: QSettings) -> None:
        self._file = file

    @property
    def names(self) -> tuple[str, ...]:
        """The printers that were named here, in their order."""
        told = self._told("printers", list)
        return tuple(str(one) for one in told if one)

    def name(self, printer: str) -> None:
        """This printer stands at this computer."""
        if printer not in self.names:
            self._keep("printers", [*self.names, printer])

    def forget(self, printer: str) -> None:
        """It is gone; what it was off by is kept for the day it comes back."""
        self._keep("printers", [one for one in self.names if one != printer])

    def printer_for(self, stock: str) -> str:
        """The printer that prints this stock, or ''."""
        chosen = str(self._told("printer for", dict).get(stock, ""))
        return chosen if chosen in self.names else ""

    def choose(self, stock: str, printer: str) -> None:
        """From now on this stock is printed by this printer."""
        self._keep("printer for", {**self._told("printer for", dict), stock: printer})

    def correction(self, printer: str, stock: str) -> Correction:
        """The two numbers of this printer with this stock, in mm; none is (0, 0)."""
        told = self._told("corrections", dict).get(printer)
        pair = told.get(stock) if isinstance(told, dict) else None
        try:
            across, down = map(float, pair or _NONE)
        except (TypeError, ValueError):
            return _NONE
        largest = max(abs(across), abs(down))
        return (across, down) if largest <= LARGEST_CORRECTION_MM else _NONE

    def correct(self, printer: str, stock: str, correction: Correction) -> None:
        """Keep the two numbers; refused beyond the limit, because no printer is off so far."""
        if max(map(abs, correction)) > LARGEST_CORRECTION_MM:
            raise BadInput(
                f"That makes a correction of more than {LARGEST_CORRECTION_MM:.0f} mm: no "
                "printer's habit, but a wrong stock or a scaled page.",
                "Print the grid again at 100 % and read it again; nothing was changed.")
        every = {name: one for name, one in self._told("corrections", dict).items()
                 if isinstance(one, dict)}
        rounded = [round(length, 2) for length in correction]
        self._keep("corrections", {**every, printer: {**every.get(printer, {}), stock: rounded}})

    @property
    def screen(self) -> float:
        """How much larger this screen shows things than it says: 1 until somebody measured."""
        try:
            factor = float(str(self._file.value("screen", "1")))
        except ValueError:
            return 1.0
        return factor if _LEAST_SCREEN <= factor <= _MOST_SCREEN else 1.0

    @screen.setter
    def screen(self, factor: float) -> None:
        if not _LEAST_SCREEN <= factor <= _MOST_SCREEN:
            raise BadInput("So far off is no screen.", "Measure the line once more.")
        self._file.setValue("screen", f"{factor:.4f}")
        self._file.sync()

    def _told(self, key: str, kind: type) -> Any:
        try:
            told = json.loads(str(self._file.value(key, "")))
        except ValueError:
            return kind()
        return told if isinstance(told, kind) else kind()

    def _keep(self, key: str, told: Any) -> None:
        self._file.setValue(key, json.dumps(told))
        self._file.sync()
