"""A card that was read with an instrument, typed in: L*, a*, b*, and how it was looked at."""

from collections.abc import Callable

from PySide6.QtCore import Signal

from app.calculations.shade import MOST_CHROMA, Colour, Lamp, Observer, Viewing
from app.problems import BadInput
from app.window.benches.inspecting.asks import Question
from app.window.parts.card import Actions
from app.window.parts.fields import CountField, Field, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words
from app.work.inspecting import ShadeIn


class ReadingCard(Question):
    """`read` gives the card; how it was looked at stays as it was said for the card before."""

    read = Signal(object)  # ShadeIn

    def __init__(self, lot: int, standard: tuple[int, int], last: Colour | None) -> None:
        """A card of the lot, unless it is said to be the standard's."""
        super().__init__("What does the instrument say?")
        self._lot, self._standard = lot, standard
        self.l_star = Field("L*", _between(0, 100), "25.1")
        self.a_star = Field("a*", _between(-MOST_CHROMA, MOST_CHROMA), "8.0")
        self.b_star = Field("b*", _between(-MOST_CHROMA, MOST_CHROMA), "-20.5")
        self.readings = CountField("Mean of so many", "4")
        self.spread = Field("Two farthest apart", _between(0, MOST_CHROMA), "0.4, if known")
        self.zone = TextField("Zone", "of painted yarn")
        self.lamp = Field("Lamp", _lamp, ", ".join(Lamp))
        self.observer = Field("Observer, °", _observer, "2 or 10")
        self.wet, self.kept = KeyButton("The card is wet", "F3"), KeyButton(
            "It is the standard's card", "F4")
        self.save = KeyButton("Save the reading", "Enter", strong=True)
        self.lamp.line.setText(last.viewing.lamp if last else Lamp.D65)
        self.observer.line.setText(f"{last.viewing.observer}" if last else "2")
        self.readings.line.setText(f"{last.readings}" if last else "4")
        self._lay_out()

    def begin(self) -> None:
        self.l_star.line.setFocus()

    def done(self) -> None:
        colour = self._colour()
        if colour is not None:
            zone = self.zone.line.text()
            self.read.emit(ShadeIn(colour, standard=self._standard, zone=zone)
                           if self.kept.isChecked() else ShadeIn(colour, self._lot, zone=zone))

    def _colour(self) -> Colour | None:
        """What was typed; none where a field says what is wrong with it."""
        lab = [field.value() for field in (self.l_star, self.a_star, self.b_star)]
        readings, lamp, observer = (self.readings.value(), self.lamp.value(),
                                    self.observer.value())
        spread = self.spread.value() if self.spread.line.text().strip() else None
        lightness, a, b = lab
        wrong = spread is None and bool(self.spread.line.text().strip())
        if wrong or lightness is None or a is None or b is None or lamp is None:
            return None
        if readings is None or observer is None:
            return None
        return Colour(lightness, a, b, Viewing(lamp, observer, self.wet.isChecked()), readings,
                      spread)

    def _lay_out(self) -> None:
        for key in (self.wet, self.kept):
            key.setCheckable(True)
        self.save.clicked.connect(self.done)
        self.add(Actions(self.l_star, self.a_star, self.b_star, self.readings),
                 Actions(self.lamp, self.observer, self.spread, self.zone),
                 Actions(self.wet, self.kept),
                 Words("Dry and rested for 2 hours: wet yarn reads 5 to 10 L* darker, and wet is "
                       "held against wet alone.", ink=SECOND),
                 Actions(self.save, self.leave))


def _between(least: float, most: float) -> Callable[[str], float]:
    """Reads a number with point or comma, and a minus of either kind."""
    def read(text: str) -> float:
        plain = text.strip().replace("−", "-").replace(",", ".")
        try:
            number = float(plain)
        except ValueError:
            raise BadInput(f"“{text.strip()}” is no number.") from None
        if not least <= number <= most:
            raise BadInput(f"It must be between {least:g} and {most:g}.")
        return number
    return read


def _lamp(text: str) -> Lamp:
    found = next((lamp for lamp in Lamp if lamp.casefold() == text.strip().casefold()), None)
    if found is None:
        raise BadInput(f"It is none of {', '.join(Lamp)}.")
    return found


def _observer(text: str) -> Observer:
    degrees = text.strip().rstrip("°")
    if degrees not in ("2", "10"):
        raise BadInput("It is neither 2 nor 10 degrees.")
    return Observer(int(degrees))
