"""What the recall page asks of the book, keeps in it, and puts on paper."""

import re
from collections.abc import Callable
from datetime import datetime

from PySide6.QtCore import QObject, Signal

from app.exchange.recall_papers import recall_pdf, recall_workbook
from app.exchange.recalls import Recalled, as_csv, letters, recalled
from app.lookups.holds import HoldFacts
from app.lookups.past_recalls import past_recalls
from app.window.bench import Bench
from app.window.benches.desk.recall_page import RecallPage
from app.window.papers import put_on_paper
from app.work.recalling import keep_recall


class Recalls(QObject):
    """`asked_for` comes when a list is wanted, `left` when it is done with."""

    asked_for = Signal()
    left = Signal()

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench)
        self._bench, self.page = bench, RecallPage()
        self._of: tuple[str, int, str, datetime] | None = None
        page = self.page
        page.practice_key.clicked.connect(lambda: self._keep(practice=True))
        page.earnest_key.clicked.connect(lambda: self._keep(practice=False))
        page.away_key.clicked.connect(self.left)
        makers: dict[str, tuple[str, Callable[[Recalled, str], bytes]]] = {
            "PDF": ("pdf", recall_pdf), "CSV": ("csv", lambda one, _: as_csv(one.found.rows)),
            "XLSX": ("xlsx", lambda one, _: recall_workbook(one)),
            "letters": ("txt", lambda one, _: letters(one).encode("utf-8-sig")),
        }
        for name, (ending, made) in makers.items():
            page.paper_keys[name].clicked.connect(
                lambda _=False, ending=ending, made=made: self._paper(ending, made))

    def open(self, kind: str, thing: int, on: str) -> None:
        """The clock runs from here: list all who have something of it."""
        self._of = kind, thing, on, self._bench.around.session.now()
        self.asked_for.emit()
        self.look_again()

    def open_hold(self, hold: HoldFacts) -> None:
        """The list of what is held."""
        self.open(*hold.source, hold.on)

    def look_again(self) -> None:
        """The list as it is now."""
        if self._of is not None:
            kind, thing, on, began = self._of
            self._bench.ask(self._show, recalled, kind, thing, on, began,
                            self._bench.around.session.now())
            self._bench.ask(self.page.kept.show_recalls, past_recalls, kind, thing)

    def _show(self, one: Recalled) -> None:
        shown = self.page.shown
        if shown is None or (shown.found, shown.holds, shown.on, shown.began) != (
                one.found, one.holds, one.on, one.began):
            self.page.show_list(one)

    def _keep(self, *, practice: bool) -> None:
        one = self.page.shown
        if one is None:
            return
        hold = one.holds[0].id if one.holds else None
        self._bench.do(keep_recall, one.found.kind, one.found.thing, one.began,
                       practice=practice, hold=hold,
                       then=lambda done: self.page.say_kept(done.said))

    def _paper(self, ending: str, made: Callable[[Recalled, str], bytes]) -> None:
        one = self.page.shown
        if one is not None:
            put_on_paper(self._bench, "recalls", f"recall-{_file_words(one.on)}.{ending}",
                         lambda person: made(one, person), "The recall list")


def _file_words(on: str) -> str:
    """'cone-C0114F', 'wash-load-116-washing-machine-3-Mar'."""
    return "-".join(re.findall(r"[^\W_]+", on.replace("·", "")))
