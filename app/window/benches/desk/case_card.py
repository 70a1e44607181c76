"""Open reports of the case that was just closed: what is said of one may be said of all."""

from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import Signal

from app.calculations.moments import short_day
from app.lookups.fault_cases import open_of_case
from app.lookups.reports import ReportRow, report
from app.window.benches.desk.desk_words import how_many
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.words import Words

NAMED = 4


def still_open(connection: Any, number: int) -> tuple[ReportRow, ...]:
    """The open reports of the same case as this closed one."""
    rows = (report(connection, one) for one in open_of_case(connection, number))
    return tuple(row for row in rows if row is not None)


class CaseCard(Card):
    """`close_too` gives the numbers of the reports that get the same cause."""

    close_too = Signal(object)

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.title, self.told = Words("", Size.LEAD, bold=True), Words()
        self.key = KeyButton("", "Alt+A", strong=True)
        self._open: tuple[int, ...] = ()
        self.add(self.title, self.told, Actions(self.key))
        self.key.clicked.connect(lambda: self.close_too.emit(self._open))
        self.hide()

    def show_open(self, rows: Sequence[ReportRow]) -> None:
        """Show them; without any there is nothing to ask."""
        self._open = tuple(one.id for one in rows)
        self.setVisible(bool(rows))
        if not rows:
            return
        are = "is" if len(rows) == 1 else "are"
        self.title.setText(f"{how_many(len(rows), 'report')} of “{rows[0].fault}” {are} still open")
        named = [f"{on_words(one)}, told {short_day(one.at)}" for one in rows[:NAMED]]
        more = [f"and {len(rows) - NAMED} more"] if len(rows) > NAMED else []
        self.told.setText("Their yarn went, or may have gone, through the same: "
                          f"{'; '.join(named + more)}.")
        self.key.say("Close this one too, with its cause" if len(rows) == 1 else
                     f"Close these {len(rows)} too, with its cause")


def on_words(one: ReportRow) -> str:
    """What a report is on: '26·14·Y51 7M, 26·14·Y51 2C and 2 more', or a lot as stated."""
    if one.marks:
        more = f" and {len(one.marks) - 2} more" if len(one.marks) > 2 else ""
        return ", ".join(one.marks[:2]) + more
    if one.lot:
        return f"{one.lot}: {how_many(one.count or 1)}, as stated"
    return how_many(one.faulty)
