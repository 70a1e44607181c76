"""The web shop's file: looked at first, its whole orders taken in with one key."""

from pathlib import Path
from uuid import uuid4

from PySide6.QtCore import Signal

from app.calculations.moments import short_day
from app.exchange.order_headings import ORDERS
from app.exchange.orders_file import OrderRead, OrdersList
from app.exchange.orders_in import OrdersSeen, stays_out
from app.problems import Problem
from app.window.benches.packing.packing_words import NOBODY, orders
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.columns_panel import ColumnsPanel
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.trouble_lines import TroubleLines
from app.window.parts.words import SECOND, BigNumber, OneLine, Words
from app.work.selling import pieces


class FileCard(Card):
    """What will be taken in, what not and why; `complete` when the key is pressed."""

    complete = Signal()
    look_wanted = Signal()
    file_wanted = Signal()
    left = Signal()

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.setAccessibleName("the file in hand")
        self.path, self.token = Path(), ""
        self.said: dict[str, str] = {}
        self.seen: OrdersSeen | None = None
        self._all_columns, self._asked = False, ""
        self.title, self.wrong = OneLine("", Size.LEAD, bold=True), Words(bold=True)
        self.number, self.notes = BigNumber(), Words(ink=SECOND)
        self.columns, self.out, self.doubts = ColumnsPanel(), TroubleLines(), TroubleLines()
        self.table = ThingTable(
            (Head("order", codes=True), "for", "of", Head("pieces", right=True), "what"),
            "orders of the file", most_rows=7)
        self.take_in = KeyButton("", "Enter", strong=True)
        self.again = KeyButton("Read it again", "F5")
        self.columns_key = KeyButton("Columns", "F6")
        self.other = KeyButton("Another file", "F3")
        self.leave = KeyButton("Leave it", "F8")
        self._lay_out()
        self._connect()

    def open(self, path: Path) -> None:
        """Another file is in hand."""
        self.path, self.token = path, uuid4().hex
        self.said, self._all_columns, self._asked = {}, False, ""
        self.title.say(path.name)
        self.show_nothing()
        self.look_wanted.emit()

    def show_nothing(self) -> None:
        """It was not looked at yet."""
        self.seen = None
        for part in (self.wrong, self.number, self.notes, self.columns, self.out, self.doubts,
                     self.table, self.take_in, self.columns_key):
            part.hide()

    def show_problem(self, problem: Problem) -> None:
        """It cannot be read at all."""
        self.show_nothing()
        self.wrong.setText(str(problem))
        self.wrong.show()

    def show_seen(self, seen: OrdersSeen) -> None:
        """Show how it was understood."""
        self.show_nothing()
        self.seen = seen
        self.columns_key.show()
        self._show_columns(seen)
        if seen.orders is not None:
            self._show_orders(seen, seen.orders)

    def _show_columns(self, seen: OrdersSeen) -> None:
        given = set(seen.lacks)
        asked = {field: seen.match.what_lacks(given - {field}) for field in seen.lacks}
        if self._all_columns and self._asked:
            asked.setdefault(self._asked, f"In which column stands {ORDERS.fields[self._asked]}?")
        self.columns.show_match(seen.match, asked, {}, all_of=self._all_columns)
        self.columns.setVisible(bool(asked) or self._all_columns)

    def _show_orders(self, seen: OrdersSeen, found: OrdersList) -> None:
        count = sum(order.count for order in found.orders)
        self.number.show_number(
            str(len(found.orders)),
            "order to take in" if len(found.orders) == 1 else "orders to take in",
            f"{pieces(count)} in all")
        self.number.show()
        said = [*found.notes, *(["Columns as they were settled before."]
                                if seen.match.remembered else [])]
        self.notes.setText(" ".join(said))
        self.notes.setVisible(bool(said))
        self.out.show_lines("What stays out, and why:", list(stays_out(found)))
        self.doubts.show_lines("Kept as words, to be looked at when it is packed:",
                               list(found.doubts))
        self.table.show_rows([_row(order) for order in found.orders])
        self.table.setVisible(bool(found.orders))
        self.take_in.say(f"Take in {orders(len(found.orders))}" if found.orders else "Take in")
        self.take_in.show()
        if found.orders:
            self.take_in.allow()
        else:
            self.take_in.refuse("No order of it can be taken in.")

    def _choose(self, field: str, heading: str) -> None:
        self.said[field], self._asked = heading, ""
        self.look_wanted.emit()

    def _ask(self, field: str) -> None:
        self._asked = field
        if self.seen is not None:
            self._show_columns(self.seen)

    def _turn_columns(self) -> None:
        self._all_columns, self._asked = not self._all_columns, ""
        if self.seen is not None:
            self._show_columns(self.seen)

    def _connect(self) -> None:
        self.take_in.clicked.connect(self.complete)
        self.again.clicked.connect(self.look_wanted)
        self.columns_key.clicked.connect(self._turn_columns)
        self.other.clicked.connect(self.file_wanted)
        self.leave.clicked.connect(self.left)
        self.columns.chosen.connect(self._choose)
        self.columns.asked.connect(self._ask)

    def _lay_out(self) -> None:
        self.add(self.title, self.wrong, self.number, self.notes, self.columns, self.out,
                 self.doubts, Actions(self.take_in), self.table)
        self.add_last(Actions(self.again, self.columns_key, self.other, self.leave))


def _row(order: OrderRead) -> tuple[str, ...]:
    what = "; ".join(f"{line.wanted.count} × {line.wanted.what}" for line in order.lines)
    return (order.number, order.buyer.name if order.buyer else NOBODY, short_day(order.placed),
            str(order.count), what)
