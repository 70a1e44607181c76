"""The scanners of this computer: each begins with a sign of its own, so that two are told apart."""

from collections.abc import Mapping

from app.problems import BadInput
from app.scanning.keystrokes import Keystrokes
from app.window.computer_settings import ComputerSettings


class Scanners:
    """Their names by the sign each begins with; kept here and heard at once."""

    def __init__(self, settings: ComputerSettings, keystrokes: Keystrokes) -> None:
        self._settings, self._keystrokes = settings, keystrokes

    @property
    def names(self) -> Mapping[str, str]:
        """{sign: name}."""
        return self._settings.scanners

    def name(self, sign: str, name: str) -> None:
        """The scanner that begins with this sign is called so."""
        self._keep({**self.names, sign: name})

    def forget(self, sign: str) -> None:
        """No scanner begins with this sign any more: it is typed like any other."""
        self._keep({other: name for other, name in self.names.items() if other != sign})

    def _keep(self, names: dict[str, str]) -> None:
        self._settings.scanners = names
        self._settings.store()
        self._keystrokes.prefixes = names


def read_sign(text: str) -> str:
    """The sign that a scanner begins with; raises BadInput where it could begin a code or a word.
    """
    sign = text.strip()
    if len(sign) != 1 or not sign.isprintable():
        raise BadInput("A scanner begins with one sign, such as ~ or #.",
                       "Set it in the scanner by its own booklet, then write it here.")
    if sign.isalnum() or sign in "-·.,?+":
        raise BadInput(f"“{sign}” is written in codes, counts or words.",
                       "Take a sign that nobody types here, such as ~ or #.")
    return sign
