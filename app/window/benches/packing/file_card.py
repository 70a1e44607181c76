"""The web shop's file: looked at first, its whole orders taken in with one key."""

from PySide6.QtCore import Signal

from app.calculations.moments import short_day
from app.exchange.orders_file import OrderRead
from app.exchange.orders_in import OrdersSeen, stays_out
from app.window.benches.packing.packing_words import NOBODY, orders
from app.window.parts.card import Actions
from app.window.parts.key_button import KeyButton
from app.window.parts.list_in import ListIn
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.trouble_lines import TroubleLines
from app.work.selling import pieces


class FileCard(ListIn[OrdersSeen]):
    """What will be taken in, what not and why: an order stays out whole, no row is left out."""

    file_wanted = Signal()

    def __init__(self) -> None:
        super().__init__("the file in hand")
        self.doubts = TroubleLines()
        self.table = ThingTable(
            (Head("order", codes=True), "for", "of", Head("pieces", right=True), "what"),
            "orders of the file", most_rows=7)
        self.other = KeyButton("Another file", "F3")
        self.other.clicked.connect(self.file_wanted)
        self.add(self.title, self.wrong, self.number, self.notes, self.columns, self.troubles,
                 self.doubts, Actions(self.take_in, self.leave_out), self.table)
        self.add_last(Actions(self.again, self.columns_key, self.other, self.leave))

    def show_nothing(self) -> None:
        super().show_nothing()
        self.doubts.hide()
        self.table.hide()

    def show_list(self, seen: OrdersSeen) -> None:
        if seen.orders is None:
            return
        found, count = seen.orders, len(seen.orders.orders)
        self.show_number(count, "order to take in" if count == 1 else "orders to take in",
                         f"{pieces(sum(order.count for order in found.orders))} in all")
        self.show_notes(seen, *found.notes)
        self.troubles.show_lines("What stays out, and why:", list(stays_out(found)))
        self.doubts.show_lines("Kept as words, to be looked at when it is packed:",
                               list(found.doubts))
        self.table.show_rows([_row(order) for order in found.orders])
        self.table.setVisible(bool(found.orders))
        self.show_ways("Take in", orders(count), count, 0, "No order of it can be taken in.")


def _row(order: OrderRead) -> tuple[str, ...]:
    what = "; ".join(f"{line.wanted.count} × {line.wanted.what}" for line in order.lines)
    return (order.number, order.buyer.name if order.buyer else NOBODY, short_day(order.placed),
            str(order.count), what)
