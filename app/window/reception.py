"""Takes what comes in by the scan line to the bench that has a use for it."""

from collections.abc import Callable

from PySide6.QtCore import QObject

from app.calculations.codes import Code, Kind, numbered, read
from app.problems import BadInput, NotFound
from app.window.bench import Bench
from app.window.deeds import Deeds
from app.window.floor import Floor
from app.window.head_and_foot import Foot, Head

UNDO = numbered(Kind.ACTION, 2).text


class Reception(QObject):
    """Bench plates open benches, UNDO LAST undoes, all else is for the bench that is open.

    What that bench has no use for is never opened by itself, because wet hands are at work there:
    a way to it is offered.
    """

    def __init__(self, head: Head, floor: Floor, foot: Foot, deeds: Deeds) -> None:
        super().__init__(floor)
        self._floor, self._foot, self._deeds = floor, foot, deeds
        scan_line = head.scan_line
        scan_line.scanned.connect(self.scanned)
        scan_line.scanned_again.connect(self.scanned_again)
        scan_line.asked.connect(self.asked)
        scan_line.pasted.connect(self.pasted)
        scan_line.pictured.connect(self.pictured)
        scan_line.garbled.connect(lambda sentence: floor.trouble(BadInput(sentence)))

    def scanned(self, text: str) -> None:
        """A scan is taken as it is, never guessed at."""
        try:
            code = read(text)
        except BadInput as problem:
            self._floor.trouble(problem)
            return
        self._take(code)

    def scanned_again(self, text: str) -> None:
        """A bounce of the trigger, unless the bench means it twice."""
        bench = self._floor.bench()
        if bench is None or not bench.take_again(text):
            self._foot.show_note(f"{text} was scanned twice and taken once")

    def asked(self, text: str) -> None:
        """Typed: a code if it is one, else words for the bench, or for the one that finds."""
        try:
            code = read(text)
        except BadInput:
            self._first_that(lambda bench: bench.seek(text), f"“{text}” was not found.")
        else:
            self._take(code)

    def pasted(self, codes: list[str]) -> None:
        """A list of codes."""
        self._first_that(
            lambda b: b.take_list(codes), f"No bench takes {len(codes)} codes at once."
        )

    def pictured(self, picture: bytes) -> None:
        """A photo of a tag."""
        self._first_that(lambda bench: bench.take_picture(picture), "No bench takes a picture.")

    def show(self, code: str) -> None:
        """Open what a code stands for, here or where it is found."""
        self._first_that(lambda bench: bench.take(code), f"{code} was not found.")

    def _take(self, code: Code) -> None:
        self._floor.problem.hide()  # it was about the scan before
        place = next((p for p in self._floor.places if p.plate == code.text), None)
        bench = self._floor.bench()
        if place is not None:
            self._floor.open_place(place)
        elif code.text == UNDO:
            self._deeds.undo_last()
        elif bench is None or not bench.take(code.text):
            self._floor.trouble(
                NotFound(f"{code.grouped} is a {code.kind}, and this bench has no use for it."),
                "Show it",
                lambda: self.show(code.text),
            )

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
