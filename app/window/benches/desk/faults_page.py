"""The owner's page of faults: what was told, and for one fault its suspects and the next look."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.moments import day_words
from app.lookups.reports import ReportRow
from app.window.benches.desk.case_card import CaseCard, on_words
from app.window.benches.desk.desk_words import how_many
from app.window.benches.desk.report_card import ReportCard
from app.window.benches.desk.suspects_card import SuspectsCard
from app.window.look.look import Gap, Size
from app.window.parts.card import Card
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.why_card import WhyCard, in_place_of
from app.window.parts.words import SECOND, Words

_HEADS = ("fault", Head("on", codes=True), "told", "by", "cause")


class FaultsPage(QWidget):
    """`chosen` gives the report whose fault is to be looked into."""

    chosen = Signal(object)  # ReportRow

    def __init__(self) -> None:
        super().__init__()
        self.reports: Sequence[ReportRow] = ()
        self.why: WhyCard | None = None
        self.fresh = True  # it came into sight just now: nobody is reading it yet
        self.case, self.report, self.suspects = CaseCard(), ReportCard(), SuspectsCard()
        self.table = ThingTable(_HEADS, "reports of faults", opens=True, most_rows=6)
        self._none = Card(in_hand=True)
        self._none.add(
            Words("No fault was reported.", Size.TITLE, bold=True),
            Words("When a buyer or an inspection finds one, bring the skein or the lot in hand "
                  "and press F. Say too what was seen good: it tells as much.", ink=SECOND))
        self._listed = Card("Faults that were told or seen")
        self._listed.add(self.table)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(Gap.PART)
        for part in (self._none, self.case, self.suspects, self.report, self._listed):
            self._column.addWidget(part)
        self._column.addStretch(1)
        self.report.hide()
        self.suspects.hide()
        self.table.opened.connect(lambda row: self.chosen.emit(self.reports[row]))

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.fresh = True

    def show_reports(self, reports: Sequence[ReportRow]) -> None:
        """Show the reports, those without a cause first."""
        self.reports = reports
        self.table.show_rows([
            (_fault(one), on_words(one), day_words(one.at), _by(one), one.cause or "open")
            for one in reports])
        self._none.setVisible(not reports)
        self._listed.setVisible(bool(reports))

    def put_away(self) -> None:
        """No report is looked into."""
        self.case.hide()
        self.report.hide()
        self.suspects.hide()

    def ask_why(self, card: WhyCard | None) -> None:
        """Put a question above the suspects, or take it away."""
        in_place_of(self._column, 1, self.why, card)
        self.why = card


def _fault(one: ReportRow) -> str:
    where = (f"every {one.repeat_mm / 10:g} cm" if one.repeat_mm else
             "" if one.where_on == "not said" else one.where_on)
    return f"{one.fault}, {where}" if where else one.fault


def _by(one: ReportRow) -> str:
    photos = f", {how_many(one.photos, 'photo')}" if one.photos else ""
    return f"{one.seen_at}{photos}"
