"""Tells what a scanner types from what a person types, by its speed or by its prefix.

A scanner types like a keyboard. Keys are held back until it is clear whose they are: a burst, or
what follows a prefix, is a scan and goes to no field; the rest is given back, in order and whole.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from app.calculations.codes import bare_characters, code_of

BURST_GAP_MS = 35  # keys further apart come from fingers
SLOW_GAP_MS = 100  # once it is surely a scanner, a slow radio is forgiven
AGAIN_MS = 2000
LEAST_SCANNED = 4
ENDS = ("\r", "\n", "\t")


@dataclass(frozen=True, slots=True)
class Typed:
    """A person typed this; it belongs to whatever has the focus."""

    text: str


@dataclass(frozen=True, slots=True)
class Scanned:
    """A scanner sent this; `scanner` is the name its prefix stands for."""

    text: str
    scanner: str = ""


@dataclass(frozen=True, slots=True)
class Again:
    """The same scanner sent the same twice running within two seconds: its trigger bounced."""

    text: str
    scanner: str = ""


@dataclass(frozen=True, slots=True)
class Garbled:
    """Two scanners typed into each other; no code is made of it."""

    text: str
    sentence: str = (
        "Two scanners typed at once, so no code was taken. Scan again, one after the other."
    )


Heard = Typed | Scanned | Again | Garbled


@dataclass(slots=True)
class _Piece:
    """What came from the start, or from the last Enter, up to the next Enter."""

    prefix: str = ""
    text: str = ""
    end: str = ""
    mixed: bool = False  # a prefix came in the middle

    def take(self, character: str, is_prefix: bool) -> None:
        if not is_prefix:
            self.text += character
            return
        self.mixed = self.mixed or bool(self.prefix or self.text)
        self.text += self.prefix
        self.prefix = character

    @property
    def from_scanner(self) -> bool:
        """Whether so much came so fast that no person typed it."""
        sure = bool(self.end or self.prefix) or any(c.isdigit() for c in self.text)
        return self.mixed or (len(self.text) >= LEAST_SCANNED and sure)

    @property
    def is_code(self) -> bool:
        return code_of(bare_characters(self.text)) is not None


@dataclass(slots=True)
class Keystrokes:
    """Fed with each key and its moment in milliseconds; answers what was heard once it is clear.

    `prefixes` names the scanner that begins with a character: `{"~": "pots"}`. A scan is answered
    by the silence after it, because only then nothing can have been mixed into it.
    """

    prefixes: Mapping[str, str] = field(default_factory=dict)
    _held: list[_Piece] = field(default_factory=list)
    _last_ms: int = 0
    _latest: dict[str, tuple[str, int]] = field(default_factory=dict)

    def press(self, character: str, at_ms: int) -> tuple[Heard, ...]:
        """One key with a character; Enter is `\\r`, Tab is `\\t`."""
        heard = self.silence(at_ms)
        self._last_ms = at_ms
        if character in ENDS:
            return heard + self._end(character)
        if not self._held or self._held[-1].end:
            self._held.append(_Piece())
        self._held[-1].take(character, character in self.prefixes)
        return heard

    def silence(self, at_ms: int) -> tuple[Heard, ...]:
        """Nothing more came until now: answer for what is held, if that was long enough."""
        waited = at_ms - self._last_ms
        return () if 0 <= waited <= self.patience_ms() else self.give_back()

    def give_back(self) -> tuple[Heard, ...]:
        """Answer for what is held without waiting, because something else comes between."""
        pieces, self._held = self._held, []
        if not pieces:
            return ()
        if not pieces[0].from_scanner:
            return (Typed("".join(p.prefix + p.text + p.end for p in pieces)),)
        if _ran_together(pieces):
            return (Garbled("".join(piece.text for piece in pieces)),)
        return tuple(self._scan(piece) for piece in pieces)

    def holds(self) -> bool:
        """Whether any key is held back."""
        return bool(self._held)

    def patience_ms(self) -> int:
        """How long the next key may take and still belong to what is held."""
        piece = self._held[-1] if self._held else _Piece()
        unfinished = (piece.prefix or piece.from_scanner) and not piece.end
        return SLOW_GAP_MS if unfinished else BURST_GAP_MS

    def _end(self, character: str) -> tuple[Heard, ...]:
        """Enter or Tab: it belongs to a scan, or to the few keys a person typed before it."""
        if not self._held:
            return (Typed(character),)
        self._held[-1].end += character
        return () if self._held[0].from_scanner else self.give_back()

    def _scan(self, piece: _Piece) -> Heard:
        scanner, at_ms = self.prefixes.get(piece.prefix, ""), self._last_ms
        text, then_ms = self._latest.get(scanner, ("", 0))
        self._latest[scanner] = piece.text, at_ms
        bounced = text == piece.text and 0 <= at_ms - then_ms <= AGAIN_MS
        return Again(piece.text, scanner) if bounced else Scanned(piece.text, scanner)


def _ran_together(pieces: Sequence[_Piece]) -> bool:
    """Whether two scanners typed into each other.

    Of two codes laid into each other the part after the first Enter lacks its beginning, so it
    is never a code and never has its prefix.
    """
    whole = all(piece.prefix or piece.is_code for piece in pieces)
    return any(piece.mixed for piece in pieces) or (len(pieces) > 1 and not whole)


def pasted_codes(text: str) -> list[str]:
    """The parts of a pasted list of codes, wrong ones too; nothing if it is words to search for."""
    parts = [part.strip() for part in re.split(r"[\r\n\t,;]+", text) if part.strip()]
    if len(parts) == 1 and not _is_code(parts[0]):
        parts = parts[0].split()
        if not all(any(c.isdigit() for c in part) for part in parts):
            return []
    return parts if len(parts) > 1 and any(map(_is_code, parts)) else []


def _is_code(text: str) -> bool:
    return code_of(bare_characters(text)) is not None
