"""Readings from a file of the instrument: looked at first, taken in with one key."""

from app.exchange.list_file import gathered
from app.exchange.shades_in import ShadeList
from app.window.parts.card import Actions
from app.window.parts.list_in import ListIn, cannot_be_taken


class ReadingsList(ListIn[ShadeList]):
    """The cards that its readings make, and of how many lots."""

    def __init__(self) -> None:
        super().__init__("readings from a file")
        self.add(self.title, self.wrong, self.number, self.notes, self.troubles, self.columns,
                 Actions(self.take_in, self.leave_out),
                 Actions(self.again, self.columns_key, self.leave))

    def show_list(self, seen: ShadeList) -> None:
        count, lots = len(seen.cards), len({card.lot for card in seen.cards})
        cards = "card" if count == 1 else "cards"
        self.show_number(count, cards, "of 1 lot" if lots == 1 else f"of {lots} lots")
        self.show_notes(seen)
        self.troubles.show_lines(cannot_be_taken(seen.bad_rows), gathered(seen.troubles))
        self.show_ways("Take in", f"{count} {cards}", count, seen.bad_rows,
                       "No row of it is a reading of a lot yet.")
