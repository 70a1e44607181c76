"""A list of old lots: looked at first, opened with one key."""

from app.exchange.list_file import gathered
from app.exchange.old_lots import OldLots
from app.window.benches.receiving.hand import Hand, go_to
from app.window.parts.card import Actions
from app.window.parts.list_in import ListIn, cannot_be_taken
from app.window.parts.thing_table import Head, ThingTable
from app.work.dividing import skeins


class OldListCard(ListIn[OldLots], Hand):
    """The lots of the list, and which colourways are named with them."""

    def __init__(self) -> None:
        super().__init__("the list of old lots in hand")
        self.table = ThingTable(
            (Head("lot", codes=True), "colourway", "base", Head("lies here", right=True)),
            "lots of the list", most_rows=8)
        self.add(self.title, self.wrong, self.number, self.notes, self.troubles, self.columns,
                 Actions(self.take_in, self.leave_out), self.table)
        self.add_last(Actions(self.again, self.columns_key, self.leave))

    def begin(self) -> None:
        go_to(self.take_in if self.take_in.isEnabled() else self.again, sight=self.title)

    def show_nothing(self) -> None:
        super().show_nothing()
        self.table.hide()

    def show_list(self, seen: OldLots) -> None:
        count, new = len(seen.lots), ", ".join(seen.new_colourways)
        self.show_number(count, "old lot" if count == 1 else "old lots", f"{seen.in_all:,} in all")
        self.table.show_rows([
            (one.code, one.colourway, one.base, skeins(one.count, one.put_up))
            for one in seen.lots])
        self.table.setVisible(bool(seen.lots))
        self.show_notes(seen, f"New colourways, named with them: {new}." if new else "")
        self.troubles.show_lines(cannot_be_taken(seen.bad_rows), gathered(seen.troubles))
        self.show_ways("Open", f"{count} {'lot' if count == 1 else 'lots'}", count, seen.bad_rows,
                       "No row of it is an old lot yet.")
