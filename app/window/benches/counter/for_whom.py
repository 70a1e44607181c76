"""For whom: a name, of someone known or new; who is meant is chosen by the person alone."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.moments import day_words
from app.lookups.customers import Known
from app.window.look.look import Gap
from app.window.parts.fields import TextField
from app.window.parts.offer_rows import Offer, OfferRows
from app.work.serving import Buyer

MOST = 5


class ForWhom(QWidget):
    """A name, and below it the customers who are called so.

    `asked` wants to know who is called so; `settled` comes when it is clear who is meant.
    """

    asked = Signal(str)
    settled = Signal()

    def __init__(self, buyer: Known | None = None, title: str = "For whom") -> None:
        super().__init__()
        self.field = TextField(title, "a name", f"Say {title.lower()}.")
        self.rows = OfferRows()
        self._meant: Buyer | None = None
        self._known: tuple[Known, ...] = ()
        self._looked_up = ""
        self._wanted = False
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.HAIR)
        column.addWidget(self.field)
        column.addWidget(self.rows)
        self.rows.hide()
        self.field.line.textEdited.connect(self._edited)
        if buyer is not None:
            self.field.line.setText(buyer.name)
            self._meant = Buyer(buyer.id)

    def show_known(self, words: str, known: Sequence[Known]) -> None:
        """Who is called so, as the book says."""
        if words != self.field.line.text().strip():
            return
        self._looked_up, self._known = words, tuple(known[:MOST])
        self._show([self._offer(one) for one in self._known])
        if self._wanted:
            self._settle()

    def buyer(self) -> Buyer | None:
        """Who is meant; none where a person has to choose or to write first."""
        if self._meant is not None:
            return self._meant
        name = self.field.value()
        if not name:
            self.field.line.setFocus()
            return None
        if name != self._looked_up:
            self._wanted = True
            self.asked.emit(name)
            return None
        if not self._known:
            return Buyer(name=name)
        self._show([
            *(self._offer(one) for one in self._known),
            Offer(name, "someone new", "", lambda: self._mean(Buyer(name=name)), coloured=False,
                  is_code=False)])
        self.rows.begin()
        return None

    def _show(self, offers: Sequence[Offer]) -> None:
        self.rows.setVisible(bool(offers))
        self.rows.show_offers(offers)

    def _offer(self, one: Known) -> Offer:
        last = f"bought last on {day_words(one.last)}" if one.last else "bought nothing yet"
        return Offer(one.name, last, "", lambda: self._mean(Buyer(one.id), one.name),
                     coloured=False, is_code=False)

    def _mean(self, buyer: Buyer, name: str = "") -> None:
        self._meant = buyer
        if name:
            self.field.line.setText(name)
        self._show([])
        self.settled.emit()

    def _edited(self, text: str) -> None:
        self._meant, self._wanted = None, False
        self.asked.emit(text.strip())

    def _settle(self) -> None:
        self._wanted = False
        if self.buyer() is not None:
            self.settled.emit()
