"""The end of the day: tags in hand are counted lot by lot, by scanner or by figure."""

from datetime import timedelta
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout

from app.calculations.codes import shown
from app.calculations.moments import day_words
from app.exchange.tag_stocks import tag_stocks
from app.lookups.tag_counts import LotTagCounts, TagDay, in_hand_with, tags_of_day
from app.lookups.things import Found, by_code
from app.problems import Refused
from app.scanning.saying import void_words
from app.window.bench import Around, Bench
from app.window.benches.tagging.day_table import DayTable
from app.window.in_turn import InTurn
from app.window.look.look import Gap, Size
from app.window.parts.big_code import BigCode
from app.window.parts.card import Actions, Card
from app.window.parts.fields import CountField, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.words import BigNumber, Words
from app.work.tag_counting import count_in_hand
from app.work.tagging import spoil_tags

_SCAN = "Scan each tag that lies here, then DONE. Or type how many."
_NOTHING = "No tag was printed today. One of another day lies here? Scan it."
_NONE = "No tag should be in hand: all that were printed today are tied on, spoiled or void."


class EndOfDay(Bench):
    """A bench for one day's tags; `left` when it is put away.

    `scanned` are the marks that were met, lot by lot; what was scanned before something else was
    taken in hand stays scanned.
    """

    left = Signal()

    def __init__(self, around: Around, scanned: dict[int, set[str]]) -> None:
        super().__init__(around)
        now = around.session.now().astimezone()
        self.began = now.replace(hour=0, minute=0, second=0, microsecond=0)
        self.day: TagDay | None = None
        self.lot: LotTagCounts | None = None
        self.scanned = scanned
        self._turn = InTurn(self)
        self.name = Words(f"Tags in hand, {day_words(now)}", Size.TITLE, bold=True)
        self.next, self.missing = Words(_SCAN, Size.LEAD, bold=True), Words()
        self.code, self.should = BigCode(size=48), BigNumber()
        self.colourway = Words("", bold=True)
        self.count = CountField("Counted in hand", "how many")
        self.why = TextField("Why it differs", "then Enter",
                             "Say what happened: the entry keeps it.")
        self.keep_key = KeyButton("Keep the count", "F9", strong=True)
        self.void_key = KeyButton("Void the missing", "F7")
        self.leave = KeyButton("Put away", "F8")
        self.table = DayTable()
        self._lay_out()
        self.look()

    def look(self) -> None:
        """Look up the day again."""
        self.ask(self.table.show_stocks, tag_stocks)
        self.ask(self._show, tags_of_day, self.began, self.began + timedelta(days=1),
                 tuple(self.scanned))

    def take_tag(self, mark: str) -> None:
        """A tag was scanned: it is in hand, or it is said why it cannot be."""
        self._turn.ask(partial(self._tag_came, mark), in_hand_with, mark)

    def choose(self, count: int) -> None:
        """So many are in hand of the lot that is asked about."""
        if self.lot is not None:
            self.count.line.setText(str(count))
            self._compare()

    def done(self) -> None:
        """DONE: the count is kept, with its reason where it differs."""
        lot, count = self.lot, self.count.value() if self.lot is not None else None
        if lot is None or count is None:
            return
        why = self.why.value() if count != lot.counts.in_hand else ""
        if why is None:
            self.why.line.setFocus()
        else:
            self.do(count_in_hand, lot.lot, count, why, then=lambda _done: self._kept(lot.lot))

    def void_missing(self) -> None:
        """Those that were not met are void; then the count fits."""
        why = self.why.value()
        if self.lot is None or not why:
            self.why.line.setFocus()
            return
        lot, met = self.lot, self._met(self.lot)
        gone = [tag for mark, tag in lot.waiting.items() if mark not in met]
        self.do(spoil_tags, gone, why)
        self.do(count_in_hand, lot.lot, len(met), then=lambda _done: self._kept(lot.lot))

    def _tag_came(self, mark: str, lot: LotTagCounts | None) -> None:
        if lot is None:
            self.around.trouble(Refused(f"{shown(mark)} was never printed; it was not counted.",
                                        "Scan it once more."))
        elif mark in lot.waiting:
            self.scanned.setdefault(lot.lot, set()).add(mark)
            self._take(lot)
            self.look()
        else:
            self._turn.ask(self._not_in_hand, by_code, mark)

    def _not_in_hand(self, tag: Found | None) -> None:
        if tag is None:
            return
        if tag.void:
            self.around.trouble(Refused(void_words(tag), "Throw it away: it is not counted."))
        else:
            self.around.trouble(Refused(
                f"{tag.shown} hangs on a skein by the book; it was not counted.",
                "Look for the skein that lost it, and tie it on again."))

    def _show(self, day: TagDay) -> None:
        self.day = day
        self.table.show_day(day)
        self.table.setVisible(bool(day.lots))
        same = next((lot for lot in day.lots if self.lot and lot.lot == self.lot.lot), None)
        if same is None or self._is_counted(same):
            same = next((lot for lot in day.lots if self._asks(lot)), None)
        self._take(same)

    def _take(self, lot: LotTagCounts | None) -> None:
        """This lot is asked about now."""
        other = lot is None or self.lot is None or self.lot.lot != lot.lot
        self.lot = lot
        if other:
            self.count.clear()
            self.why.clear()
        for widget in (self.code, self.colourway, self.should, self.count, self.keep_key):
            widget.setVisible(lot is not None)
        if lot is None:
            lots = self.day.lots if self.day else ()
            self.next.setText("All tags in hand are counted." if any(map(self._is_counted, lots))
                              else _NONE if lots else _NOTHING)
        else:
            self.next.setText(_SCAN)
            self.code.show_code(shown(lot.code))
            self.colourway.setText(lot.colourway)
            self.should.show_number(str(lot.counts.in_hand), "should be here")
            if self._met(lot):
                self.count.line.setText(str(len(self._met(lot))))
            if other:
                self.count.line.setFocus()
        self._compare()

    def _compare(self) -> None:
        """The reason is asked for where the count differs, and the missing are named."""
        lot, text = self.lot, self.count.line.text().strip()
        differs = lot is not None and bool(text) and text != str(lot.counts.in_hand)
        met = self._met(lot) if lot is not None else set()
        gone = [mark[-2:] for mark in lot.waiting if mark not in met] if lot and met else []
        self.missing.setText(f"Not scanned yet: {', '.join(gone)}." if gone else "")
        self.missing.setVisible(bool(gone))
        self.why.setVisible(differs)
        self.void_key.setVisible(differs and bool(gone))

    def _kept(self, lot: int) -> None:
        self.scanned[lot] = set()  # it stays in the table
        self.lot = None
        self.look()  # what was kept may have been looked at before this

    def _met(self, lot: LotTagCounts) -> set[str]:
        return self.scanned.get(lot.lot, set()) & lot.waiting.keys()

    def _asks(self, lot: LotTagCounts) -> bool:
        return bool(lot.counts.in_hand) and not self._is_counted(lot)

    def _is_counted(self, lot: LotTagCounts) -> bool:
        """It was counted today, and nothing of it was printed or tied on since."""
        last = lot.last
        return (last is not None and last.counted >= self.began
                and last.by_the_book == lot.counts.in_hand and not self._met(lot))

    def _settled(self) -> None:
        """Enter after the figure: kept where it fits, else the reason is asked for."""
        if self.why.isVisible():
            self.why.line.setFocus()
        else:
            self.done()

    def _lay_out(self) -> None:
        card = Card(in_hand=True)
        card.add(self.name)
        name = QVBoxLayout()
        name.setSpacing(Gap.HAIR)
        for widget in (self.code, self.colourway):
            name.addWidget(widget)
        row = card.add_row()
        row.addLayout(name)
        row.addWidget(self.should, 1)
        card.add(self.next, self.missing)
        card.add_row(self.count, self.why).setStretch(1, 1)
        card.add_last(Actions(self.keep_key, self.void_key, self.leave))
        self.body.addWidget(card)
        self.body.addWidget(self.table)
        self.body.addStretch(1)
        self.count.line.textEdited.connect(lambda _text: self._compare())
        self.count.line.returnPressed.connect(self._settled)
        self.why.line.returnPressed.connect(self.done)
        self.keep_key.clicked.connect(self.done)
        self.void_key.clicked.connect(self.void_missing)
        self.leave.clicked.connect(self.left)
        self.table.hide()
        self._take(None)
        self.next.setText(_SCAN)
