"""The story of the thing in hand: what was done, when and by whom."""

from app.lookups.recent import EntryRow
from app.window.benches.desk.desk_words import long_moment
from app.window.parts.card import Card
from app.window.parts.thing_table import ThingTable
from app.window.parts.words import SECOND, Words

MOST = 40


class StoryCard(Card):
    """Its entries in the journal, the newest first."""

    def __init__(self) -> None:
        super().__init__("Its story")
        self.table = ThingTable(("when", "who", "at", "what was done", ""), "its story",
                                "Nothing was done to it yet.", most_rows=MOST)
        self._earlier = Words(ink=SECOND)
        self.add(self.table, self._earlier)

    def show_story(self, entries: tuple[EntryRow, ...]) -> None:
        """Show the story of another thing."""
        self.table.show_rows([entry_cells(entry) for entry in entries[::-1][:MOST]])
        earlier = len(entries) - MOST
        self._earlier.setText(f"and {earlier:,} before these" if earlier > 0 else "")
        self._earlier.setVisible(earlier > 0)


def entry_cells(entry: EntryRow) -> tuple[str, ...]:
    """When, who, where, what, and what else is to be said of it."""
    more = [*(["taken back"] if entry.undone else []), *entry.findings,
            *([f"because {entry.reason}"] if entry.reason else [])]
    return (long_moment(entry.happened), entry.person, entry.station, entry.said,
            " · ".join(more))
