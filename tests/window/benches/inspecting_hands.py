"""The inspecting bench open in the real window on a real book."""

from tests.window.benches.at_work import AtWork, open_window


class AtWindow(AtWork):
    """The lead dyer at the north window."""

    @property
    def card(self):
        """The lot in hand."""
        assert self.bench.card.isVisible()
        return self.bench.card

    @property
    def number(self):
        """The number that decides, with its words, and what it means."""
        return f"{self.card.number.accessibleName()}: {self.card.means.text()}"

    @property
    def question(self):
        """What is asked, or nothing."""
        asked = self.card.question
        return "" if asked is None else asked.accessibleName()

    @property
    def page(self):
        """The pictures."""
        assert self.bench.showing.page.isVisible()
        return self.bench.showing.page

    def read(self, lightness, a, b, *keys):
        """Type a reading with the keyboard alone; keys are pressed before it is saved."""
        self.press("F7")
        for words in (lightness, a, b):
            self.type(words)
            self.press("Tab")
        self.press(*keys, "Enter")


def open_inspecting(qtbot, settings, book, studio=None):
    """The window with inspecting, the counter and the desk; closes it at the end."""
    settings.person, settings.station = "OW", "window"
    for window in open_window(AtWindow, qtbot, settings, book, (9, 10, 11), studio):
        window.enter("I")
        yield window
