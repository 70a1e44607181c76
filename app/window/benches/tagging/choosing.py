"""Which tags are gone: tapped on the sheet they were printed on, or scanned."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout

from app.calculations.codes import shown
from app.documents.stocks import Stock
from app.lookups.printed import TIED_ON, VOID, WAITING, PrintedTag
from app.window.benches.tagging.sheet_picture import SheetPicture, Shown
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words

SPOILED, FELL_OFF, JAMMED = "spoiled", "fell off", "jammed"
_ASKS = {
    SPOILED: "Which tags are spoiled?",
    FELL_OFF: "Which tag fell off, or was lost?",
    JAMMED: "Which cells of the sheet jammed?",
}
_HOW = {
    SPOILED: "Tap their cells, or scan them. They are void then, and as many are printed anew.",
    FELL_OFF: "Tap its cell. If it hung on a skein, another is printed in its place at once.",
    JAMMED: "Tap them: their tags are void, their cells are used, and as many are printed anew.",
}
_MAY_GO = {SPOILED: (WAITING,), FELL_OFF: (WAITING, TIED_ON), JAMMED: (WAITING, TIED_ON)}


class Choosing(Card):
    """The sheet as it was printed; `chosen` gives the tags once they are all told."""

    chosen = Signal(tuple)  # of PrintedTag
    left = Signal()

    def __init__(
        self, why: str, tags: Sequence[PrintedTag], stock: Callable[[str], Stock]
    ) -> None:
        super().__init__()
        self.why, self.tags = why, tags
        self.gone: list[PrintedTag] = []
        self._stock = stock  # of this name
        self._sheets = _sheets(tags, _MAY_GO[why], stock)
        self._on = 0
        self.picture = SheetPicture(272)
        self.picture.tapped.connect(self._tapped)
        self.told = Words(bold=True)
        self.keep = KeyButton("", "Enter", strong=True)
        self.keep.clicked.connect(self.say_done)
        self.other = KeyButton("Other sheet", "N")
        self.other.clicked.connect(self._turn)
        self.row = KeyButton("Its whole row", "W")
        self.row.clicked.connect(self.whole_row)
        leave = KeyButton("Leave it", "F8")
        leave.clicked.connect(self.left)
        beside = QVBoxLayout()
        beside.setSpacing(Gap.LINE)
        for words in (Words(_ASKS[why], Size.LEAD, bold=True), Words(_HOW[why], ink=SECOND),
                      self.told):
            beside.addWidget(words)
        beside.addStretch(1)
        self.add_row(self.picture).addLayout(beside, 1)
        self.add_last(Actions(self.keep, self.row, self.other, leave))
        self.row.setHidden(why != JAMMED or all(stock(tag.stock).across == 1 for tag in tags))
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

    def whole_row(self) -> None:
        """All that wait in the row where the keys stand, or that was tapped last, are gone."""
        for tag in (one for one in self._here() if one.state == WAITING):
            across = self._stock(tag.stock).across
            if (self._cell(tag) - 1) // across == (self.picture.at - 1) // across and (
                    tag not in self.gone):
                self.toggle(tag)

    @property
    def count_words(self) -> str:
        """'2 tags jammed'."""
        count = "1 tag" if len(self.gone) == 1 else f"{len(self.gone)} tags"
        return f"{count} {self.why}"

    def say_done(self) -> None:
        """All that are gone were told."""
        if self.gone:
            self.chosen.emit(tuple(self.gone))

    def _show(self) -> None:
        tags = self._here()
        if tags:
            name = tags[0].stock
            cells = {self._cell(tag): tag for tag in tags}
            words = {cell: _mark(tag) for cell, tag in cells.items()}
            gone = {cell for cell, tag in cells.items() if tag in self.gone}
            fixed = {cell for cell, tag in cells.items() if tag.state not in _MAY_GO[self.why]}
            at = self.picture.at if self.picture.at in cells else min(cells)
            of = Shown(self._stock(name), fixed, gone, words)
            self.picture.show_sheet(of, at, _ASKS[self.why])
        marks = ", ".join(shown(tag.mark) for tag in self.gone)
        self.told.setText(marks or "None is told yet.")
        self.keep.say(self.count_words)
        if self.gone:
            self.keep.allow()
        else:
            self.keep.refuse("Tell which first." if tags else "No printed tag is left to go.")

    def _cell(self, tag: PrintedTag) -> int:
        return (tag.place - 1) % self._stock(tag.stock).cells + 1

    def _here(self) -> Sequence[PrintedTag]:
        return self._sheets[self._on] if self._sheets else ()

    def _turn(self) -> None:
        self._on = (self._on + 1) % len(self._sheets)
        self._show()

    def _tapped(self, cell: int) -> None:
        tag = next((tag for tag in self._here() if self._cell(tag) == cell), None)
        if tag is not None:
            self.toggle(tag)


def _sheets(
    tags: Sequence[PrintedTag], may_go: Sequence[str], stock: Callable[[str], Stock]
) -> list[Sequence[PrintedTag]]:
    """The tags page by page, the newest page first; only pages where one may go."""
    pages: dict[tuple[int, int], list[PrintedTag]] = {}
    for tag in tags:
        page = (tag.sheet, (tag.place - 1) // stock(tag.stock).cells)
        pages.setdefault(page, []).append(tag)
    return [page for page in reversed(pages.values()) if any(t.state in may_go for t in page)]


def _mark(tag: PrintedTag) -> str:
    return "void" if tag.state == VOID else tag.mark[-2:]
