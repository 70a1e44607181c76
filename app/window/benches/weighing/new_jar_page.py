"""A new jar, from its label: number, dye, maker, lot, weight and last day."""

from collections.abc import Callable
from datetime import datetime

from app.window.bench import Around
from app.window.benches.weighing.hand import WeighHand
from app.window.benches.weighing.jar_words import read_until
from app.window.cords.hand import Hand
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.fields import CountField, Field, GramsField, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words
from app.work.jars import NewJar, open_new_jar


class NewJarPage(WeighHand):
    """Opened jars and left ones both go `back`."""

    def __init__(self, around: Around, number: int, back: Callable[[], Hand]) -> None:
        super().__init__(around)
        self._back = back
        self.number = CountField("Number on its plate")
        self.number.line.setText(str(number))
        self.dye = TextField("The dye, as the recipes say it", "N1 navy", "Say which dye it is.")
        self.maker = TextField("Its maker", needed="Say who made it, or: not stated.")
        self.lot = TextField("The maker's lot, as on the label")
        self.amount = GramsField("What is in it")
        self.until: Field[datetime | None] = Field("Good until, as on the label", read_until,
                                                   "2027-03-31 or 2027-03")
        card = Card("A new jar", in_hand=True)
        for pair in ((self.number, self.dye), (self.maker, self.lot), (self.amount, self.until)):
            card.add_row(*pair)
        card.add(Words("Its strength counts as not known until a sample was dyed: Jars, F7.",
                       Size.PLAIN, ink=SECOND))
        keep = KeyButton("It is open", "Enter", strong=True)
        keep.clicked.connect(self.done)
        leave = KeyButton("Leave it", "F8")
        leave.clicked.connect(lambda: self.over.emit(self._back()))
        card.add_last(Actions(keep, leave))
        self.body.addWidget(card)
        self.setFocusProxy(self.dye)

    def weigh(self, reading: str) -> bool:
        """A balance typed what is in it."""
        self.amount.line.setText(reading)
        return True

    def done(self) -> None:
        """Open it, once everything that must be said is."""
        number, dye, maker = self.number.value(), self.dye.value(), self.maker.value()
        amount, until = self.amount.value(), self.until.value()
        unread = until is None and self.until.line.text().strip()
        if number is None or not dye or not maker or amount is None or unread:
            return
        new = NewJar(number, dye, maker, self.lot.line.text().strip() or None,
                     round(amount * 1000), expires=until)
        self.do(open_new_jar, new, then=lambda _: self.over.emit(self._back()))
