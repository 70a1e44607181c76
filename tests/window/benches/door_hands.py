"""Hands at the door: a delivery begun, cones put on the scales, a list dropped."""

from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication

from app import paths
from app.lookups.cones import cones_on_hand
from app.lookups.recent import head
from tests.window.benches.at_work import begin_work

NOTES = paths.DEMO_DATA / "notes"


class AtTheDoor:
    """Someone at the receiving bench."""

    def __init__(self, at_work):
        self.at_work, self.studio = at_work, at_work.studio

    def __getattr__(self, name):
        return getattr(self.at_work, name)

    @property
    def cards(self):
        return self.bench.cards

    @property
    def form(self):
        return self.cards.weighing.form

    def begin(self, note="2263", base="Tarnfield 4-ply", supplier="Aske Mill"):
        """Say whose it is, and weigh."""
        start = self.cards.start
        start.supplier.line.setText(supplier)
        start.note_no.line.setText(note)
        start.base.line.setText(base)
        self.press("Enter")

    def write(self, **words):
        """Write into fields of the cone on the scales."""
        for name, text in words.items():
            getattr(self.form, name).line.setText(text)

    def weigh(self, gross, **words):
        """One cone, and Enter."""
        self.write(gross=str(gross), **words)
        self.press("Enter")

    def drop(self, path):
        """Drop a file on the window."""
        dropped = QMimeData()
        dropped.setUrls([QUrl.fromLocalFile(str(path))])
        keys = (Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier)
        entered = QDragEnterEvent(QPointF(50, 50).toPoint(), Qt.DropAction.CopyAction, dropped,
                                  *keys)
        QApplication.sendEvent(self.window, entered)
        assert entered.isAccepted()
        QApplication.sendEvent(
            self.window, QDropEvent(QPointF(50, 50), Qt.DropAction.CopyAction, dropped, *keys))
        self.quiet()

    @property
    def rows(self):
        """What the list of this delivery shows, the last cone first."""
        table = self.cards.weighing.table.table
        return [] if self.cards.weighing.table.isHidden() else [list(row) for row in table._rows]

    @property
    def in_book(self):
        """(code, net grams, batch) of all cones in the book."""
        return [(cone.code, cone.net_mg / 1000, cone.batch)
                for cone in self.studio.book.ask(cones_on_hand)]

    @property
    def deeds(self):
        """How many entries the journal has."""
        return self.studio.book.ask(head)[0]


def at_the_door(qtbot, settings, studio):
    """Open the window at the door; closes it at the end."""
    for at_work in begin_work(qtbot, settings, studio, 1):
        yield AtTheDoor(at_work)
