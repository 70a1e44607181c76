"""The desk open in the real window on a real book, and ways to read what it shows."""

from app.store.copies import last_copy
from tests.window.benches.at_work import AtWork, open_window


class AtDesk(AtWork):
    """The owner at the desk."""

    @property
    def hand(self):
        """The first view."""
        return self.bench.hand

    @property
    def name(self):
        """The card of the thing in hand."""
        return self.hand.page.name

    @property
    def sums(self):
        """Where to: (skeins, state, grams), the sum last."""
        return self.hand.page.where_to.lines

    @property
    def origins(self):
        """Where from: (code, how sure)."""
        return [(row.origin.code, row.sure) for row in self.hand.page.where_from.rows]

    @property
    def choices(self):
        """(code, words, swatch) of what may be chosen."""
        assert self.hand.choices.isVisible()
        return [(row.thing.code, row.thing.words, row.thing.swatch)
                for row in self.hand.choices.rows.rows]

    @property
    def notes(self):
        """What is written over the yarn, with its certainty, for every stop that has a note."""
        tags = self.window.floor.trail.tags
        return [(tag.station.certainty, tag.station.note) for tag in tags if tag.station.note]

    @property
    def held(self):
        """{kind of stop: here or below} for every tag that wears HOLD."""
        tags = self.window.floor.trail.tags
        return {tag.station.kind: tag.station.held for tag in tags if tag.station.held}


def open_desk(qtbot, settings, studio, other=4):
    """The window with one working bench and the desk in front; closes it at the end."""
    settings.person, settings.station = "OW", "desk"

    def copied():
        copy = last_copy(studio.book.path)
        return "no copy yet" if copy is None else copy.path.name

    for desk in open_window(
            AtDesk, qtbot, settings, studio.book, (other, 10), studio, copied):
        desk.enter(0)
        yield desk
