"""Put by and promise: how many of a lot, for whom, and of a put-by until when."""

from collections.abc import Sequence
from datetime import date

from app.lookups.counter import AtCounter, Tagged
from app.lookups.customers import Known
from app.problems import BadInput
from app.window.benches.counter.asking import Ask
from app.window.benches.counter.for_whom import ForWhom
from app.window.benches.counter.words import fetch_words
from app.window.parts.card import SideBySide
from app.window.parts.days import day_said, end_of
from app.window.parts.fields import CountField, Field
from app.window.parts.words import SECOND, Words

KEPT_DAYS = 7
"""How long something is put by unless another day is said; common practice, no source."""


class KeepCard(Ask):
    """Put by: how many, for whom, until when; the marks that are to be fetched are named.

    Answers with the skeins, the end, the buyer, the place if a shelf was scanned, and the basis:
    stated where their tags were not scanned.
    """

    def __init__(
        self, lot: AtCounter | None, chosen: Sequence[Tagged], buyer: Known | None, today: date
    ) -> None:
        super().__init__(_keeps(lot, chosen), "", "Put by")
        self._lot, self._scanned = lot, tuple(chosen)
        self._place: int | None = None
        self.how_many, self.whom = CountField("How many"), ForWhom(buyer)
        self.until = Field("Until", lambda text: end_of(day_said(text, today)), "Friday, 4 May")
        self.until.line.setText(f"{KEPT_DAYS} days")
        self.fetch, self.there = Words(bold=True), Words(ink=SECOND)
        row = SideBySide(self.how_many, self.whom, self.until)
        self.lay_out(row, self.fetch, self.there)
        self.how_many.line.setText(str(len(chosen) or 1))
        self.how_many.line.textEdited.connect(lambda _text: self._show_fetch())
        self.whom.settled.connect(self.save)
        self._show_fetch()

    def begin(self) -> None:
        first = self.whom.field if self._scanned else self.how_many
        first.line.setFocus()
        first.line.selectAll()

    def count(self, number: int) -> bool:
        self.how_many.line.setText(str(number))
        self._show_fetch()
        return True

    def shelf(self, place: int, words: str) -> bool:
        self._place = place
        self.there.setText(f"{'It is' if len(self.chosen()) == 1 else 'They are'} laid on {words}.")
        return True

    def choose_skeins(self, chosen: Sequence[Tagged]) -> None:
        self._scanned = tuple(chosen)
        self.how_many.line.setText(str(len(chosen) or 1))
        self._show_fetch()

    def chosen(self) -> tuple[Tagged, ...]:
        """Those that were scanned, else so many of the free ones, lowest place first."""
        if self._scanned:
            return self._scanned
        text = self.how_many.line.text().strip()
        return self._lot.free[:int(text)] if self._lot and text.isdecimal() else ()

    def save(self) -> None:
        count = self.how_many.value()
        if count is None or not self._enough(count):
            return
        buyer, until = self.whom.buyer(), self.until.value()
        if buyer is not None and until is not None:
            yarn = tuple(one.yarn for one in self.chosen())
            basis = "scanned" if self._scanned else "stated"
            self.answered.emit((yarn, until, buyer, self._place, basis))

    def _enough(self, count: int) -> bool:
        there = len(self._scanned) if self._scanned else self._lot.left.count if self._lot else 0
        if self._scanned and count != there:
            self.how_many.complain(f"{there} were scanned: take some out, or scan more.")
        elif not 1 <= count <= there:
            self.how_many.complain(f"{there} can be put by, not {count}.")
        else:
            return True
        return False

    def _show_fetch(self) -> None:
        chosen = self.chosen()
        verb = "On the counter: " if self._scanned else "Fetch "
        self.fetch.setText(f"{verb}{fetch_words(chosen)}." if chosen else "")
        self.fetch.setVisible(bool(chosen))
        if self._place is None:
            few = len(chosen) == 1
            self.there.setText(f"{'It stays where it lies' if few else 'They stay where they lie'} "
                               f"in the book; scan a shelf to lay {'it' if few else 'them'} there.")


class PromiseCard(Ask):
    """Promise so many of the lot, to be fetched later. Answers with count, buyer and put-up."""

    def __init__(self, lot: AtCounter, buyer: Known | None) -> None:
        super().__init__(f"Promise some of {lot.line.shown}",
                         "An order by hand: that many are not left to sell any more.", "Promise")
        self._lot = lot
        self._forms = tuple(dict.fromkeys(one.put_up for one in lot.free)) or ("skein",)
        self.how_many, self.whom = CountField("How many"), ForWhom(buyer)
        self.form = Field("Of what", self._read_form, " or ".join(self._forms))
        self.form.line.setText(self._forms[0])
        self.lay_out(SideBySide(self.how_many, *self._form_if_asked(), self.whom))
        self.how_many.line.setText("1")
        self.whom.settled.connect(self.save)

    def begin(self) -> None:
        self.how_many.line.setFocus()
        self.how_many.line.selectAll()

    def count(self, number: int) -> bool:
        self.how_many.line.setText(str(number))
        return True

    def save(self) -> None:
        count, form = self.how_many.value(), self.form.value()
        if count is None or form is None:
            return
        free = sum(one.put_up == form for one in self._lot.free)
        left = min(free, self._lot.left.count)
        if not 1 <= count <= left:
            self.how_many.complain(f"{left} can still be promised, not {count}.")
            return
        buyer = self.whom.buyer()
        if buyer is not None:
            self.answered.emit((count, buyer, form))

    def _form_if_asked(self) -> tuple[Field[str], ...]:
        """Which put-up is asked only where several lie free."""
        return (self.form,) if len(self._forms) > 1 else ()

    def _read_form(self, text: str) -> str:
        said = text.strip().casefold()
        fits = [form for form in self._forms if said and form.casefold().startswith(said)]
        if len(fits) != 1:
            raise BadInput(f"Which is it: {' or '.join(self._forms)}?")
        return fits[0]


def _keeps(lot: AtCounter | None, chosen: Sequence[Tagged]) -> str:
    if chosen or lot is None:
        return "Put by what lies on the counter"
    return f"Put by some of {lot.line.shown}"
