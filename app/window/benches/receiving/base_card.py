"""A base is described in place: its name, fibres, count and skein, and the words of its tag."""

from decimal import Decimal

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout

from app.calculations.fibre_text import composition_text, read_composition
from app.calculations.promised import Promised, promised
from app.calculations.units import metres, millimetres
from app.calculations.yarn_count import YarnCount, read_count
from app.exchange.written import readings
from app.problems import BadInput
from app.window.benches.receiving.hand import Hand, go_to
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions
from app.window.parts.fields import Field, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words
from app.work.bases import BaseWords, PutUpWords

OIL, RELAXATION = Decimal("0.02"), Decimal("0.03")
"""Spinning oil, and how much shorter after the wash, until measured; common practice, no source."""
_LEAST_TEX, _MOST_TEX = 10, 5_000
_LEAST_REEL_MM, _MOST_REEL_MM = 500, 3_000
_MOST_TURNS = 5_000


class BaseCard(Hand):
    """Six fields that are reckoned with, and the words of its tag; `described` gives BaseWords."""

    described = Signal(object)
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("a new base")
        self.first = False
        self.title, self.told = Words("", Size.TITLE, bold=True), Words(ink=SECOND)
        self.name = TextField("The base is called", "Tarnfield 4-ply", "Say what it is called.")
        self.fibre = Field("Its fibres", _fibres, "80 % wool, 20 % polyamide")
        self.count = Field("Count: tex or Nm", _count, "R 250 tex/4 or Nm 16/4")
        self.turns = Field("Turns of a skein", lambda text: _turns(text, needed=True), "275")
        self.reel = Field("Reel girth, m", _reel_mm, "1.5")
        self.mini = Field("Turns of a mini, if any", lambda text: _turns(text, needed=False))
        self.care = TextField("Care, on its tag", "Hand wash 30 °C, dry flat, do not tumble.")
        self.knit = TextField("Needles and gauge", "3.25 mm, 28 stitches × 36 rows = 10 cm.")
        self.origin = TextField("Origin, if its own", "Spun in …, dyed by hand at …")
        self.promise = Words(ink=SECOND)
        self.keep = KeyButton("Describe it", "Enter", strong=True)
        self.leave = KeyButton("Leave it", "F8")
        self._lay_out()
        self.keep.clicked.connect(self.done)
        self.leave.clicked.connect(self.left)

    def ask(self, name: str, *, first: bool) -> None:
        """Ask for a base, with what is known of its name; the first one of the studio cannot be
        left.
        """
        self.first = first
        self.title.setText("First the yarn itself" if first else "A new base")
        self.told.setText(
            "Cones come in as cones of a base, and none is described yet."
            if first else "From now on cones may come in as cones of it.")
        for field in (self.name, self.fibre, self.count, self.turns, self.mini, self.knit,
                      self.origin):
            field.clear()
        self.reel.line.setText(self.reel.line.text() or "1.5")
        self.name.line.setText(name)
        self.leave.setVisible(not first)
        self._say_promise()

    def begin(self) -> None:
        go_to((self.fibre if self.name.line.text() else self.name).line)

    def done(self) -> None:
        """Describe it, if all is said."""
        words = self.words()
        if words is not None:
            self.described.emit(words)

    def words(self) -> BaseWords | None:
        """The base as it was written, or none and what is wrong beside its field."""
        name, fibre, count = self.name.value(), self.fibre.value(), self.count.value()
        turns, reel_mm, mini = self.turns.value(), self.reel.value(), self.mini.value()
        if not (name and fibre and count and turns and reel_mm) or mini is None:
            fields = (self.name, self.fibre, self.count, self.turns, self.reel, self.mini)
            go_to(next(f for f in fields if f.wrong.isVisibleTo(f)).line)
            return None
        forms = {"skein": turns, **({"mini": mini} if mini else {})}
        said = {form: self._promised(wound, reel_mm, count) for form, wound in forms.items()}
        return BaseWords(
            name, fibre, round(count.tex * 1000), int(OIL * 1000), int(RELAXATION * 1000),
            tuple(PutUpWords(form, wound, reel_mm, said[form].g * 1000, said[form].m * 1000)
                  for form, wound in forms.items()),
            knit=self.knit.value() or "", care=self.care.value() or "",
            origin=self.origin.value() or "")

    def _promised(self, turns: int, reel_mm: int, count: YarnCount) -> Promised:
        tex = Decimal(count.tex.numerator) / count.tex.denominator
        return promised(metres(turns * reel_mm), tex, OIL, RELAXATION)

    def _say_promise(self) -> None:
        """What a tag will say, as soon as it can be reckoned."""
        try:
            count, reel_mm = _count(self.count.line.text()), _reel_mm(self.reel.line.text())
            turns = _turns(self.turns.line.text(), needed=True)
        except BadInput:
            self.promise.setText(
                f"Reckoned with {OIL * 100:f} % spinning oil and {RELAXATION * 100:f} % shorter "
                "after the wash, until you measure yours.".replace(".00", ""))
            return
        said = self._promised(turns, reel_mm, count)
        self.promise.setText(
            f"{count}. A skein is {metres(turns * reel_mm).normalize():f} m on the reel; its tag "
            f"says {said.g} g and {said.m} m, with {OIL * 100:f} % spinning oil and "
            f"{RELAXATION * 100:f} % shorter after the wash.".replace(".00", ""))

    def _lay_out(self) -> None:
        self.add(self.title, self.told)
        for fields in ((self.name, self.fibre, self.count), (self.turns, self.reel, self.mini),
                       (self.care, self.knit, self.origin)):
            row = QHBoxLayout()
            row.setSpacing(Gap.PART)
            for field in fields:
                field.line.setAcceptDrops(False)
                row.addWidget(field, 1, Qt.AlignmentFlag.AlignTop)
            self.add(row)
        for field in (self.count, self.turns, self.reel):
            field.line.textChanged.connect(self._say_promise)
        self.add(self.promise, Actions(self.keep, self.leave))


def _fibres(text: str) -> str:
    if not text.strip():
        raise BadInput("Say what it is made of.", "Write it like 80 % wool, 20 % polyamide.")
    return composition_text(read_composition(text))


def _count(text: str) -> YarnCount:
    if not text.strip():
        raise BadInput("Write its count, like R 250 tex/4 or Nm 16/4.")
    count = read_count(text)
    if not _LEAST_TEX <= count.tex <= _MOST_TEX:
        raise BadInput(f"{count} is no yarn that is wound in skeins.", "Is it tex or Nm?")
    return count


def _turns(text: str, *, needed: bool) -> int:
    """0 where none are written and none are needed."""
    words = text.strip()
    if not words and not needed:
        return 0
    if not words.isdecimal() or not 0 < int(words) <= _MOST_TURNS:
        raise BadInput("Write the turns in figures, like 275.")
    return int(words)


def _reel_mm(text: str) -> int:
    words = text.strip().removesuffix("m").strip()
    sizes = {millimetres(one) for one in readings(words).values()}
    possible = [mm for mm in sizes if _LEAST_REEL_MM <= mm <= _MOST_REEL_MM]
    if len(possible) != 1:
        raise BadInput("Write how long one turn is, like 1.5 m.")
    return possible[0]
