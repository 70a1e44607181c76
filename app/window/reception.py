"""Takes what comes in by the scan line to the bench that has a use for it."""

from collections.abc import Callable
from contextlib import suppress
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from app.calculations.codes import Kind, bare_characters, code_of, shown
from app.problems import BadInput, NotFound
from app.scanning.balance_lines import is_weight
from app.window.bench import Bench
from app.window.deeds import Deeds
from app.window.floor import Floor
from app.window.head_and_foot import Foot, Head
from app.window.parts.action_plates import UNDO
from app.window.places import Place

if TYPE_CHECKING:
    from app.lookups.things import Found
    from app.scanning.resolve import Resolution


class Reception(QObject):
    """Bench plates open benches, UNDO LAST undoes, all else is for the bench that is open.

    What that bench has no use for is never opened by itself, because wet hands are at work there:
    a way to it is offered.
    """

    def __init__(self, head: Head, floor: Floor, foot: Foot, deeds: Deeds) -> None:
        super().__init__(floor)
        self._floor, self._foot, self._deeds = floor, foot, deeds
        self._here: Place | None = None
        floor.moved.connect(self._moved)
        scan_line = head.scan_line
        scan_line.scanned.connect(self.scanned)
        scan_line.scanned_again.connect(self.scanned_again)
        scan_line.asked.connect(self.asked)
        scan_line.pasted.connect(self.pasted)
        scan_line.pictured.connect(self.pictured)
        scan_line.filed.connect(self.filed)
        scan_line.garbled.connect(lambda sentence: floor.trouble(BadInput(sentence)))

    def scanned(self, text: str) -> None:
        """A scan is taken as it is, never guessed at.

        What is no code of ours may still stand in the book: lots from before it keep their codes.
        """
        code = None if is_weight(text) else code_of(bare_characters(text))
        bench = self._floor.bench()
        if code is not None:
            self._take(code.text, code.kind)
        elif bench is not None and self._finding():
            self._put_away()
            bench.take(text)
        elif bench is not None and not bench.take_other(text):
            from app.scanning.resolve import resolve  # here, because the window is there before it

            bench.ask(self._resolved, resolve, text, False)

    def scanned_again(self, text: str) -> None:
        """A bounce of the trigger, unless the bench means it twice."""
        bench = self._floor.bench()
        if bench is None or not bench.take_again(text):
            self._foot.show_note(f"{text} was scanned twice and taken once")

    def asked(self, text: str) -> None:
        """Typed: a code if it is one, else words for the bench, or for the one that finds.

        The one that finds has all that was typed as words: it forgives, and shows what is near.
        """
        code = code_of(bare_characters(text))
        plate = code is not None and code.kind in (Kind.BENCH, Kind.ACTION)
        if code is not None and (plate or not self._finding()):
            self._take(code.text, code.kind)
        else:
            self._put_away()
            self._first_that(lambda bench: bench.seek(text), f"“{text}” was not found.")

    def pasted(self, codes: list[str]) -> None:
        """A list of codes."""
        self._first_that(
            lambda b: b.take_list(codes), f"No bench takes {len(codes)} codes at once."
        )

    def pictured(self, picture: bytes) -> None:
        """A photo of a tag."""
        bench = self._floor.bench()
        if bench is None or bench.in_front is None or not bench.in_front.takes_picture(picture):
            self._first_that(lambda one: one.take_picture(picture), "No bench takes a picture.")

    def filed(self, paths: list[Path]) -> None:
        """Files are for the bench that is open: it opens none by itself, and one at a time."""
        bench, first = self._floor.bench(), paths[0]
        if bench is None or not bench.take_file(first):
            self._floor.trouble(NotFound(
                f"This bench has no use for {first.name}; nothing was read.",
                "Open the bench it is for, and drop it there."))
        elif len(paths) > 1:
            self._foot.show_note(f"one file at a time: {first.name} was opened")

    def show(self, code: str) -> None:
        """Open what a code stands for, here or where it is found; a stop may have none."""
        if code:
            self._first_that(lambda bench: _takes(bench, code), f"{code} was not found.")

    def _take(self, code: str, kind: str) -> None:
        self._put_away()
        place = next((p for p in self._floor.places if p.plate == code), None)
        bench = self._floor.bench()
        if place is not None:
            self._floor.open_place(place)
        elif code == UNDO:
            self._deeds.undo_last()
        elif bench is not None and _takes(bench, code):
            return
        elif kind == Kind.ACTION:
            self._floor.trouble(_does_nothing(code))
        elif bench is not None and kind == Kind.SKEIN:
            from app.lookups.things import by_code  # here too

            bench.ask(partial(self._no_use, code, kind), by_code, code)
        else:
            self._no_use(code, kind)

    def _no_use(self, code: str, kind: str, found: "Found | None" = None) -> None:
        """The bench has no use for it; a void tag says at every bench that it is void."""
        from app.scanning.saying import a_kind, void_words

        if found is not None and found.void:
            self._floor.trouble(BadInput(void_words(found), "Throw this tag away."))
        else:
            self._floor.trouble(
                NotFound(f"{shown(code)} is {a_kind(kind)}, and this bench has no use for it."),
                "Show it",
                lambda: self.show(code),
            )

    def _resolved(self, answer: "Resolution") -> None:
        """What the book says of a scan that is no code of ours."""
        if answer.found is None:
            self._floor.trouble(BadInput(answer.sentence, answer.next_step))
        else:
            self._take(answer.found.code, answer.found.kind)

    def _finding(self) -> bool:
        return self._here is not None and self._here.finds

    def _moved(self, place: Place) -> None:
        self._here = place
        self._foot.show_note("")

    def _put_away(self) -> None:
        """What was said was about the scan before."""
        self._floor.problem.hide()
        self._foot.show_note("")

    def _first_that(self, takes: Callable[[Bench], bool], otherwise: str) -> None:
        bench = self._floor.bench()
        if bench is not None and takes(bench):
            return
        for place in self._floor.places:
            if place.finds:
                found = self._floor.open_place(place)
                if found is not None and takes(found):
                    return
        self._floor.trouble(NotFound(otherwise))


def _takes(bench: Bench, code: str) -> bool:
    """Whether a bench has a use for a code; one that reads our codes only has none for others."""
    if bench.in_front is not None and bench.in_front.takes(code):
        return True
    with suppress(BadInput):
        return bench.take(code)
    return False


def _does_nothing(code: str) -> NotFound:
    """An action plate is no thing to look at: it acts where something is in hand for it."""
    from app.documents.plates import action_plates  # here, because paper is seldom wanted

    words = {plate.code: f"{plate.word} {plate.number}".strip() for plate in action_plates()}
    return NotFound(f"{words.get(code, shown(code))} does nothing here; nothing was saved.",
                    "Scan it where a key says the same.")
