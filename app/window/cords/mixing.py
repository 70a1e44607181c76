"""MIXED: cords that were cut or pushed together; how a skein of them is told from now on."""

from collections.abc import Sequence

from app.calculations.codes import Kind, numbered
from app.lookups.loads import InPlace
from app.lookups.meeting import Heap, heap, rows_in_bath
from app.lookups.now import NOW
from app.lookups.pot_plates import PotPlate
from app.lookups.reel import DiscNow
from app.lookups.trails import trail_of
from app.problems import NotFound, Refused
from app.window.bench import Around
from app.window.cords.hand import Hand
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words
from app.window.session import Done
from app.work.dividing import skeins
from app.work.mixing import mix

_SCAN = "Scan every disc that met, or the pot or place they met in."


class Mixing(Hand):
    """Gathers what met, by its discs or its place; DONE makes one row of it with exact counts."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.rows: list[int] = []
        self.heap: Heap | None = None
        self.what = Words(_SCAN, Size.TITLE, bold=True)
        self.told = Words("", Size.LARGE, bold=True)
        self.how = Words(ink=SECOND)
        self.mix = KeyButton("They are mixed", "Enter", strong=True)
        self.mix.clicked.connect(self.done)
        card = Card("Mixed", in_hand=True)
        card.add(self.what, self.told, self.how)
        card.add_last(Actions(self.mix, self.put_away("Leave it")))
        self.body.addWidget(card)
        self._show(None)

    def take_disc(self, disc: DiscNow) -> bool:
        """Its yarn is in the heap."""
        if disc.bundle is None:
            self.around.trouble(
                NotFound(
                    f"Disc {disc.number} hangs on nothing.", "Scan the discs that are in the heap."
                )
            )
        else:
            self._add(disc.bundle.rows)
        return True

    def take_pot(self, pot: PotPlate) -> bool:
        """All that lies in this pot is in the heap."""
        if pot.bath is None:
            self.around.trouble(
                NotFound(f"Nothing lies in pot {pot.number}.", "Scan the discs that met instead.")
            )
        else:
            self.ask(self._add, rows_in_bath, pot.bath)
        return True

    def take_place(self, place: InPlace) -> bool:
        """All that is in this tub, machine or steamer or on this rail is in the heap."""
        if not place.cords:
            self.around.trouble(
                NotFound(f"Nothing is {place.where} by the book.", "Scan the discs that met.")
            )
        else:
            self._add([row for wet in place.cords for row in wet.cord.rows])
        return True

    def done(self) -> None:
        """One row from now on: nobody can tell them apart."""
        if len(self.rows) < 2:
            self.around.trouble(
                Refused(
                    "Only one thing was scanned, so nothing is mixed; nothing was saved.",
                    "Scan all that met, then DONE.",
                )
            )
        else:
            self.do(mix, tuple(self.rows), then=self._mixed)

    def _add(self, rows: Sequence[int]) -> None:
        self.rows = list(dict.fromkeys([*self.rows, *rows]))
        self.ask(self._show, heap, tuple(self.rows))

    def _show(self, found: Heap | None) -> None:
        self.heap = found
        several = found is not None and len(found.rows) > 1 and found.bases == 1
        for widget in (self.told, self.how):
            widget.setVisible(found is not None)
        if found is not None:
            self.what.setText(_made_of(found))
            apart = "Their bases differ: they can be told apart."
            alone = apart if found.bases > 1 else "What else met it?"
            self.told.setText(_each(found) if several else alone)
            self.how.setText("The counts stay exact, also when nobody can tell which is which.")
            self.how.setVisible(several)
        if several:
            self.mix.allow()
        else:
            self.mix.refuse("Scan all that met first.")

    def _mixed(self, done: Done[int]) -> None:
        discs = self.heap.discs if self.heap else ()

        def show(found: Heap) -> None:
            self.over.emit(Told(self.around, found, discs))

        self.ask(show, heap, (done.answer,))


class Told(Hand):
    """A heap that was mixed: how its skeins are told, and which disc is free now."""

    def __init__(self, around: Around, found: Heap, discs: Sequence[str]) -> None:
        super().__init__(around)
        self.told = Words(_each(found), Size.LARGE, bold=True)
        if found.discs:
            code = numbered(Kind.DISC, int(found.discs[0])).text
            self.ask(self.around.show_trail, trail_of, code, NOW)
        free = [disc for disc in discs if disc not in found.discs]
        card = Card("Mixed", in_hand=True)
        card.add(Words(_on(found), Size.TITLE, bold=True), self.told)
        if free:
            which = "Disc" if len(free) == 1 else "Discs"
            card.add(
                Words(f"{which} {' and '.join(free)} can hang on another cord now.", ink=SECOND)
            )
        card.add_last(Actions(self.put_away()))
        self.body.addWidget(card)


def _made_of(found: Heap) -> str:
    parts = " + ".join(map(str, found.counts))
    discs = "disc" if len(found.discs) == 1 else "discs"
    return f"{parts} on {discs} {' and '.join(found.discs)}" if found.discs else parts


def _on(found: Heap) -> str:
    where = f" on disc {found.discs[0]}" if found.discs else ""
    return f"{skeins(sum(found.counts))}{where}"


def _each(found: Heap) -> str:
    return f"Each is {found.told}" if found.told.startswith("one of") else found.told.capitalize()
