"""What this computer knows of balances: which one is used here, and how the one on the wire talks.
"""

import json
from dataclasses import asdict

from PySide6.QtCore import QSettings

from app.problems import BadInput
from app.scanning.balance_ear import Sends, Wiring, read_frame


class BalanceSettings:
    """Kept in the file of the computer's settings; nonsense there is no wire."""

    def __init__(self, file: QSettings) -> None:
        self._file = file

    @property
    def used(self) -> int:
        """The number on the plate of the balance that is used here; 0 for none."""
        number = str(self._file.value("balance", "0"))
        return int(number) if number.isdecimal() else 0

    @used.setter
    def used(self, number: int) -> None:
        self._file.setValue("balance", number)
        self._file.sync()

    @property
    def wiring(self) -> Wiring:
        """How the balance on the wire talks; no port is no wire."""
        try:
            told = json.loads(str(self._file.value("wiring", "{}")))
            return Wiring(**{**told, "sends": Sends(told.get("sends", Sends.ALWAYS)),
                             "speed": int(told.get("speed", Wiring().speed)),
                             "frame": read_frame(told.get("frame", Wiring().frame))})
        except (ValueError, TypeError, AttributeError, BadInput):
            return Wiring()

    @wiring.setter
    def wiring(self, wiring: Wiring) -> None:
        self._file.setValue("wiring", json.dumps(asdict(wiring)))
        self._file.sync()
