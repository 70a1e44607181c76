"""Which tags are gone: tapped on the sheet they were printed on, or scanned."""

from collections.abc import Sequence

from PySide6.QtCore import Signal

from app.calculations.codes import shown
from app.documents.stocks import stock
from app.lookups.printed import TIED_ON, VOID, WAITING, PrintedTag
from app.window.benches.tagging.sheet_picture import SheetPicture, Shown
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words

SPOILED, FELL_OFF = "spoiled", "fell off"
_ASKS = {
    SPOILED: "Which tags are spoiled?",
    FELL_OFF: "Which tag fell off, or was lost?",
}
_HOW = {
    SPOILED: "Tap their cells, or scan them. They are void then, and as many are printed anew.",
    FELL_OFF: "Tap its cell. If it hung on a skein, another is printed in its place at once.",
}
_MAY_GO = {SPOILED: (WAITING,), FELL_OFF: (WAITING, TIED_ON)}


class Choosing(Card):
    """The sheet as it was printed; `chosen` gives the tags once they are all told."""

    chosen = Signal(tuple)  # of PrintedTag
    left = Signal()

    def __init__(self, why: str, tags: Sequence[PrintedTag]) -> None:
        super().__init__()
        self.why, self.tags = why, tags
        self.gone: list[PrintedTag] = []
        self._sheets = _sheets(tags, _MAY_GO[why])
        self._on = 0
        self.picture = SheetPicture(236)
        self.picture.tapped.connect(self._tapped)
        self.told = Words(bold=True)
        self.keep = KeyButton("", "Enter", strong=True)
        self.keep.clicked.connect(self.say_done)
        self.other = KeyButton("Other sheet", "N")
        self.other.clicked.connect(self._turn)
        leave = KeyButton("Leave it", "F8")
        leave.clicked.connect(self.left)
        self.add(Words(_ASKS[why], Size.LEAD, bold=True), Words(_HOW[why], ink=SECOND))
        self.add_row(self.picture, None)
        self.add(self.told)
        self.add_last(Actions(self.keep, self.other, leave))
        self.other.setHidden(len(self._sheets) < 2)
        self._show()

    def toggle(self, tag: PrintedTag) -> bool:
        """This one is gone, or is not gone after all; False if it cannot be."""
        if tag.state not in _MAY_GO[self.why]:
            return False
        if tag in self.gone:
            self.gone.remove(tag)
        else:
            self.gone.append(tag)
        self._show()
        return True

    def say_done(self) -> None:
        """All that are gone were told."""
        if self.gone:
            self.chosen.emit(tuple(self.gone))

    def _show(self) -> None:
        tags = self._here()
        if tags:
            name = tags[0].stock
            cells = {_cell(tag): tag for tag in tags}
            words = {cell: _mark(tag) for cell, tag in cells.items()}
            gone = {cell for cell, tag in cells.items() if tag in self.gone}
            fixed = {cell for cell, tag in cells.items() if tag.state not in _MAY_GO[self.why]}
            at = self.picture.at if self.picture.at in cells else min(cells)
            self.picture.show_sheet(Shown(stock(name), fixed, gone, words), at, _ASKS[self.why])
        marks = ", ".join(shown(tag.mark) for tag in self.gone)
        self.told.setText(marks or "None is told yet.")
        count = "1 tag" if len(self.gone) == 1 else f"{len(self.gone)} tags"
        self.keep.say(f"{count} {self.why}")
        if self.gone:
            self.keep.allow()
        else:
            self.keep.refuse("Tell which first." if tags else "No printed tag is left to go.")

    def _here(self) -> Sequence[PrintedTag]:
        return self._sheets[self._on] if self._sheets else ()

    def _turn(self) -> None:
        self._on = (self._on + 1) % len(self._sheets)
        self._show()

    def _tapped(self, cell: int) -> None:
        tag = next((tag for tag in self._here() if _cell(tag) == cell), None)
        if tag is not None:
            self.toggle(tag)


def _sheets(tags: Sequence[PrintedTag], may_go: Sequence[str]) -> list[Sequence[PrintedTag]]:
    """The tags page by page, the newest page first; only pages where one may go."""
    pages: dict[tuple[int, int], list[PrintedTag]] = {}
    for tag in tags:
        page = (tag.sheet, (tag.place - 1) // stock(tag.stock).cells)
        pages.setdefault(page, []).append(tag)
    return [page for page in reversed(pages.values()) if any(t.state in may_go for t in page)]


def _cell(tag: PrintedTag) -> int:
    return (tag.place - 1) % stock(tag.stock).cells + 1


def _mark(tag: PrintedTag) -> str:
    return "void" if tag.state == VOID else tag.mark[-2:]
