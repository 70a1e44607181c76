"""Listens to a balance on a wire: what stands on it, whether it stands still, what was printed.

Bytes in, with their moments; what a person must know out. No port and no window is needed.
"""

from collections import deque
from dataclasses import dataclass, field, replace
from enum import StrEnum

from app.problems import BadInput
from app.scanning.balance_lines import NoWeight, Weight, cut, read_line

STANDS_S = 0.8  # the same figure for so long stands still, where the balance does not say
SILENT_S = 3.0
_PRINT_GAP_S = 0.4  # lines closer than this were printed by no finger
_KEPT, _NOISE_ENOUGH = 8, 3


class Sends(StrEnum):
    """When a balance sends its weight."""

    ALWAYS = "all the time"
    ASKED = "when it is asked"
    PRINTED = "at its own print key"


@dataclass(frozen=True, slots=True)
class Wiring:
    """How the balance on this computer's wire talks, as its own booklet says."""

    port: str = ""
    speed: int = 9600
    frame: str = "8N1"
    sends: Sends = Sends.ALWAYS
    asks_with: str = ""
    """What asks it for a weight, with \\r and \\n as they are written."""
    moving_mark: str = ""
    """Stands in a line while the weight moves; none: it does not say."""
    balance: int = 0
    """The number on its plate; 0 where the studio has only this one, or none has a plate."""

    @property
    def question(self) -> bytes:
        """The bytes that ask it."""
        text = self.asks_with.replace("\\r", "\r").replace("\\n", "\n")
        return text.encode("ascii", "ignore")


@dataclass(frozen=True, slots=True)
class Heard:
    """What the balance says now. `sentence` is why no weight can be taken from it."""

    weight: Weight | None = None
    stands: bool = False
    sentence: str = ""
    lines: tuple[str, ...] = ()
    """The last lines as they came."""
    printed: Weight | None = None
    """Its own key was pressed for this one, just now."""


@dataclass(slots=True)
class BalanceEar:
    """Fed with what arrives; `heard` is the balance as it is at that moment."""

    wiring: Wiring
    heard: Heard = field(default_factory=Heard)
    _rest: str = ""
    _since: float = 0.0
    _last: float | None = None
    _had_unit: bool = False
    _noise: int = 0
    _lines: deque[str] = field(default_factory=lambda: deque(maxlen=_KEPT))

    def hear(self, received: bytes, at: float) -> None:
        """Bytes came at this moment (seconds); none say that nothing came until now."""
        self.heard = replace(self.heard, printed=None)
        lines, self._rest = cut(self._rest + received.decode("latin-1"))
        for line in lines:
            self._lines.append(line)
            self._take(read_line(line), at)
        if lines:
            self.heard = replace(self.heard, lines=tuple(self._lines))
        self._settle(at)

    def _take(self, said: Weight | NoWeight, at: float) -> None:
        gap, self._last = _PRINT_GAP_S if self._last is None else at - self._last, at
        if isinstance(said, NoWeight):
            self._noise = self._noise + 1 if said.is_noise else 0
            if not said.is_noise or self._noise >= _NOISE_ENOUGH:
                self.heard = replace(self.heard, weight=None, stands=False, sentence=said.sentence)
            return
        self._noise = 0
        said = self._with_marks(said)
        before = self.heard.weight
        if before is None or before.g != said.g:
            self._since = at
        by_key = self.wiring.sends is Sends.PRINTED
        printed = by_key and gap >= _PRINT_GAP_S and said.steady is not False
        sentence = _NOT_BY_KEY if by_key and gap < _PRINT_GAP_S else ""
        self.heard = replace(self.heard, weight=said, sentence=sentence,
                             printed=said if printed else None)

    def _with_marks(self, said: Weight) -> Weight:
        """Moving by the studio's own mark, or by the unit that a balance leaves out meanwhile."""
        mark = self.wiring.moving_mark
        moves = bool(mark) and mark in said.text or self._had_unit and not said.has_unit
        self._had_unit = self._had_unit or said.has_unit
        return replace(said, steady=False if moves else True if mark else said.steady)

    def _settle(self, at: float) -> None:
        weight = self.heard.weight
        if weight is None:
            return
        if (self.wiring.sends is not Sends.PRINTED and self._last is not None
                and at - self._last > SILENT_S):
            self.heard = replace(self.heard, weight=None, stands=False, sentence=_SILENT)
            return
        steady = weight.steady
        stands = at - self._since >= STANDS_S if steady is None else steady
        self.heard = replace(self.heard, stands=stands or self.wiring.sends is Sends.PRINTED)


_SILENT = (f"The balance has said nothing for {SILENT_S:.0f} seconds: look whether it is on. "
           "The weight can be typed.")
_NOT_BY_KEY = ("The balance sends all the time, not at its print key: say so on the page of the "
               "balances, F5. Nothing was taken.")


def read_frame(text: str) -> str:
    """Bits, parity and stop bits, like 8N1; raises BadInput."""
    frame = text.strip().upper().replace(" ", "")
    if (len(frame) != 3 or frame[0] not in "78" or frame[1] not in "NEO"
            or frame[2] not in "12"):
        raise BadInput(f"“{text.strip()}” says no bits and parity.",
                       "Write 8N1, 7E1 or 7O1 as the balance's booklet says.")
    return frame
