"""The pile in hand: its lot as printed, what it is, and its counts."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QVBoxLayout

from app.calculations.codes import shown
from app.lookups.finishing import NO_TIE
from app.lookups.printed import PrintedTag
from app.lookups.tag_table import OnTable
from app.window.benches.tagging.figures import Figures
from app.window.look.look import Gap, Size, look
from app.window.parts.big_code import BigCode
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.swatch import Swatch, Zone
from app.window.parts.words import SECOND, CodeWords, Words

_SCAN = "Scan each tag when it is tied on."


class PileCard(Card):
    """All counts in large figures; below them the tag that was scanned last."""

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.lot = BigCode(size=64 / look().text ** 0.75)
        self.colourway = Words("", Size.TITLE, bold=True)
        self.about = Words(ink=SECOND)
        self.figures = Figures()
        self._had_disc = False
        self.next = Words(_SCAN, Size.LEAD, bold=True)
        self.tag, self.tag_words = CodeWords(size=Size.TITLE), Words()
        self.anew = KeyButton("Print another in its place", "R")
        self.open = KeyButton("Open the sheet", "O")
        self.leave = KeyButton("Put away", "F8")
        self.weigh = KeyButton("Weigh", "F7")
        self.lot_card = KeyButton("Lot card", "L")
        self.fault, self.good = KeyButton("A fault", "F1"), KeyButton("Seen good", "F9")
        self._swatch = Swatch(size=QSize(96, 128), none="no swatch chosen")
        head = QVBoxLayout()
        head.setSpacing(Gap.HAIR)
        head.addWidget(self.lot)
        head.addWidget(self.colourway)
        head.addWidget(self.about)
        row = self.add_row(self._swatch)
        row.addLayout(head, 1)
        row.setAlignment(self._swatch, Qt.AlignmentFlag.AlignTop)
        self.add(self.figures, self.next)
        last = self.add_row(self.tag, self.tag_words)
        last.setStretch(1, 1)
        self.add_last(Actions(self.leave, self.weigh, self.lot_card, self.open, self.anew,
                              self.fault, self.good))
        self.show_tag(None, "")
        self.open.hide()

    def show_table(self, table: OnTable) -> None:
        """Show another pile, or the same with other counts."""
        facts = table.facts
        name = facts.colourway or "Colourway not known"
        self._swatch.show_zones([Zone(facts.swatch)] if facts.swatch else (), name)
        self.colourway.setText(name)
        disc = f" · disc {facts.disc}" if facts.disc else ""
        ties = f" · {table.ties}{'' if table.ties == NO_TIE else ' ties'}" if table.ties else ""
        self.about.setText(f"{facts.base} · {facts.put_up}{ties}{disc}")
        self.lot.show_code(shown(facts.lot) if facts.lot else "lot not known")
        self.figures.show_facts(facts)
        self._had_disc = self._had_disc or facts.disc is not None
        self.next.setText(_next(table, had_disc=self._had_disc))

    def show_tag(self, tag: PrintedTag | None, words: str) -> None:
        """The tag that was scanned last, and what came of it."""
        self.tag.show_code(shown(tag.mark) if tag else "")
        self.tag_words.setText(words)
        self.anew.setHidden(tag is None or tag.skein is None)
        self.good.setHidden(tag is None)


def _next(table: OnTable, *, had_disc: bool) -> str:
    facts = table.facts
    if not facts.left:
        free = " Its disc is free again." if had_disc and not facts.disc else ""
        return f"All {facts.counted} wear their tags.{free} Scan the shelf they go to."
    if facts.holds or (facts.to_print and not facts.waiting):
        return "Print the tags (P), then tie them on." if not facts.holds else "Ask about the hold."
    return _SCAN
