"""What the page of faults asks of the book and does in it."""

from dataclasses import replace
from functools import partial
from typing import Any

from PySide6.QtCore import QObject, Signal

from app.calculations.codes import shown
from app.calculations.suspects import Ranked
from app.lookups.met_untagged import met_untagged
from app.lookups.reports import ReportRow, reports
from app.lookups.skeins import named_by_tag
from app.lookups.suspects import Suspects, suspects
from app.lookups.thread import Thing
from app.lookups.winder_days import WINDER_DAY
from app.window.bench import Bench
from app.window.benches.desk.case_card import still_open
from app.window.benches.desk.faults_page import FaultsPage
from app.window.benches.desk.questions import (
    why_by_mistake,
    why_closed,
    why_erased,
    why_hold_suspect,
)
from app.window.benches.desk.report_card import large_of, thumbs_of
from app.window.parts.why_card import Why, WhyCard
from app.work.closing_cases import close_with_it
from app.work.holding import hold
from app.work.photos import erase_photo
from app.work.reporting import decide_cause, told_by_mistake

UNTAGGED = "one without a tag"


def looked_into(connection: Any, fault: str, report: int) -> Suspects | None:
    """The suspects of a report's fault, with the skeins to look at by what their tags say."""
    asked = suspects(connection, fault, report=report)
    if asked is None:
        return None
    row = asked.asked.row
    tags = named_by_tag(connection, {row[name] for look in asked.looks for name in look.skeins})
    return replace(asked, looks=tuple(
        replace(look, skeins=tuple(sorted(
            (shown(tags[row[name]].mark) if row[name] in tags else UNTAGGED
             for name in look.skeins), key=UNTAGGED.__eq__)))
        for look in asked.looks))


class Faults(QObject):
    """`opened` gives the code of a suspect; `listed` its kind, number and name."""

    opened = Signal(str)
    listed = Signal(str, int, str)

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench)
        self._bench, self.page = bench, FaultsPage()
        self.report: ReportRow | None = None
        self._last = 0  # the report told last of those that were ever in sight
        self.page.chosen.connect(self.open)
        self.page.suspects.acted.connect(self._act)
        self.page.report.opened.connect(
            lambda photo: bench.ask(self.page.report.show_large, large_of, photo))
        self.page.report.erase.connect(self._ask_erase)
        self.page.report.mistaken.connect(self._ask_mistaken)
        self.page.case.close_too.connect(self._close_too)
        self.page.suspects.met.connect(self._ask_bare)

    def look_again(self) -> None:
        """The reports, and the suspects that are in sight, as they are now."""
        self._bench.ask(self._show_reports, reports)

    def open(self, report: ReportRow) -> None:
        """Look into the fault of this report."""
        self.page.report.show_large((0, None))
        self.page.report.show()
        self.page.suspects.begin(report.fault)
        self._look_into(report)

    def _look_into(self, report: ReportRow) -> None:
        self.report = report
        self.page.report.show_report(report)
        self._bench.ask(self.page.report.show_thumbs, thumbs_of, report.id)
        self._bench.ask(self.page.case.show_open, still_open, report.id)
        self._bench.ask(self.page.suspects.show_suspects, looked_into, report.fault, report.id)

    def _show_reports(self, rows: tuple[ReportRow, ...]) -> None:
        self.page.show_reports(rows)
        last = max((one for one in rows if one.cause is None), key=lambda one: one.id, default=None)
        told_since = last is not None and last.id > self._last and self.page.fresh
        now = next((one for one in rows if self.report and one.id == self.report.id), None)
        if now is None:  # nothing was opened yet, or what was open is taken back
            self.report = None
            self.page.put_away()
        if last is not None and self.page.isVisible() and (now is None or told_since):
            self.open(last)
        elif now is not None:
            self._look_into(now)
        self._last = max(self._last, last.id if last is not None else 0)
        self.page.fresh = False

    def _ask_bare(self, one: Ranked) -> None:
        asked = self.page.suspects.asked
        kind, number = asked.asked.thing.get(one.suspect, ("", None)) if asked else ("", None)
        if number is not None and kind != WINDER_DAY:
            self._bench.ask(self.page.suspects.show_bare, met_untagged, kind, number)

    def _act(self, what: str, one: Ranked | None) -> None:
        if what == "not found":
            self._ask(why_closed("not found"), partial(self._close, "not found", None,
                                                       named="not found"))
            return
        asked = self.page.suspects.asked
        thing = asked.asked.thing.get(one.suspect) if asked and one else None
        if one is None or thing is None or thing[1] is None:
            return
        if what == "open":
            self.opened.emit(one.suspect.name)
        elif what == "list":
            self.listed.emit(*thing, str(one.suspect))
        elif what == "hold":
            self._ask(why_hold_suspect(one.suspect), partial(self._hold, thing))
        else:
            self._ask(why_closed(str(one.suspect)),
                      partial(self._close, thing[0], thing, named=str(one.suspect)))

    def _ask(self, why: Why, answered: partial[None]) -> None:
        card = WhyCard(why)
        card.said.connect(answered)
        card.left.connect(self._answered)
        self.page.ask_why(card)

    def _answered(self) -> None:
        """The question goes; letters are keys of the page again."""
        self.page.ask_why(None)
        self._bench.setFocus()

    def _ask_erase(self, photo: int) -> None:
        self._ask(why_erased(), partial(self._erase, photo))

    def _erase(self, photo: int, why: str) -> None:
        def gone(_done: Any) -> None:
            self._answered()
            self.page.report.show_large((0, None))

        self._bench.do(erase_photo, photo, reason=why, then=gone)

    def _ask_mistaken(self) -> None:
        if self.report is not None:
            self._ask(why_by_mistake(self.report.fault), partial(self._mistaken, self.report.id))

    def _mistaken(self, report: int, why: str) -> None:
        self._bench.do(told_by_mistake, report, reason=why,
                       then=lambda _done: self._answered())

    def _hold(self, thing: Thing, why: str) -> None:
        assert thing[1] is not None
        self._bench.do(hold, thing[0], thing[1], why,
                       then=lambda _done: self._answered())

    def _close(self, kind: str, thing: Thing | None, why: str, *, named: str) -> None:
        if self.report is None:
            return
        number = thing[1] if thing is not None and kind != WINDER_DAY else None
        self._bench.do(decide_cause, self.report.id, kind, number, f"{named}: {why}",
                       then=lambda _done: self._answered())

    def _close_too(self, others: tuple[int, ...]) -> None:
        if self.report is not None and others:
            self._bench.do(close_with_it, self.report.id, others)
