"""The shade card: colourways to choose from, nine at a time, and a new one in place."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QGridLayout, QLineEdit, QSizePolicy

from app.lookups.pots import Recipe
from app.window.benches.pots.lettering import draw_two_lines
from app.window.benches.pots.shade import NO_SWATCH, draw_swatch
from app.window.look.look import Gap, Size, look
from app.window.look.shapes import draw_key_cap, key_cap_width
from app.window.parts.card import Actions, Card
from app.window.parts.fields import TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.shade_field import ShadeField
from app.window.parts.swatch import SMALL, Swatch, Zone
from app.window.parts.words import SECOND, Words

SHOWN = 9
_ACROSS = 3


class ColourwayTile(QAbstractButton):
    """A colourway: its swatch, its name, and the key that chooses it."""

    def __init__(self, recipe: Recipe, key: str) -> None:
        super().__init__()
        self.recipe, self.key = recipe, key
        self.setCheckable(True)
        self.setAccessibleName(f"{recipe.colourway}, version {recipe.number}")
        self.setAccessibleDescription(f"key {key}")
        self.setToolTip(f"{recipe.colourway}, version {recipe.number}")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(look().grid(128), look().grid(104))

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colours, box = look().colours, QRectF(self.rect())
        marked = self.isChecked() or self.hasFocus()
        ground = colours.in_hand if self.isChecked() or self.underMouse() else colours.paper
        painter.setBrush(QColor(ground))
        painter.setPen(
            QPen(
                QColor(colours.ink if marked else colours.line),
                3 if self.isChecked() else 2 if marked else 1,
            )
        )
        painter.drawRoundedRect(box.adjusted(1.5, 1.5, -1.5, -1.5), 4, 4)
        inner = box.adjusted(Gap.SMALL, Gap.SMALL, -Gap.SMALL, -Gap.HAIR)
        swatch = QRectF(inner.left(), inner.top(), inner.width(), look().grid(48))
        draw_swatch(painter, swatch, self.recipe.swatch)
        self._draw_name(painter, inner, swatch.bottom() + Gap.HAIR)

    def _draw_name(self, painter: QPainter, inner: QRectF, top: float) -> None:
        small = look().font(Size.SMALL, bold=True)
        width, height = key_cap_width(self.key, small), QFontMetricsF(small).height() + 4
        cap = QRectF(inner.right() - width, top, width, height)
        draw_key_cap(painter, cap, self.key, small, QColor(look().colours.ink))
        painter.setFont(look().font(Size.SMALL, bold=self.isChecked()))
        words = QRectF(
            inner.left(), top, cap.left() - Gap.HAIR - inner.left(), inner.bottom() - top
        )
        draw_two_lines(painter, words, self.recipe.colourway)


class Colourways(Card):
    """Choose by a tap, by its figure, or type a part of its name; `chosen` gives the Recipe."""

    chosen = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("colourways")
        self.recipes: Sequence[Recipe] = ()
        self.tiles: list[ColourwayTile] = []
        self._from = 0
        self._taken: Recipe | None = None
        self.line = QLineEdit()
        self.line.setPlaceholderText("colourway: type a part of its name")
        self.line.setAccessibleName("colourway, a part of its name")
        self.line.textChanged.connect(self._narrow)
        self.line.returnPressed.connect(self.choose_first)
        self._grid = QGridLayout()
        self._grid.setSpacing(Gap.SMALL)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._none = Words(size=Size.SMALL, ink=SECOND)
        self.more = KeyButton("The next nine", "0")
        self.more.clicked.connect(self._go_on)
        self.add(self.line, self._grid)
        foot = self.add_row(self._none, self.more)
        foot.setStretch(0, 1)

    def show_recipes(self, recipes: Sequence[Recipe]) -> None:
        """All colourways, by name."""
        self.recipes = recipes
        self._show()

    def take(self, recipe: Recipe | None) -> None:
        """Mark what is chosen."""
        self._taken = recipe
        for tile in self.tiles:
            tile.setChecked(recipe is not None and tile.recipe.version == recipe.version)

    def choose(self, number: int) -> None:
        """The one with this figure; 10 shows the next nine."""
        if number == 10:
            self._go_on()
        elif 0 < number <= len(self.tiles):
            self._choose(self.tiles[number - 1].recipe)

    def choose_first(self) -> bool:
        """Enter in the line chooses the first that fits; False if the line has no focus."""
        if not (self.line.hasFocus() and self.line.text() and self.tiles):
            return False
        self._choose(self.tiles[0].recipe)
        return True

    def begin(self, letter: str) -> None:
        """A person begins to type a name."""
        self.line.setFocus()
        self.line.setText(letter)

    def _choose(self, recipe: Recipe) -> None:
        self.take(recipe)
        self.chosen.emit(recipe)

    def _narrow(self) -> None:
        self._from = 0
        self._show()

    def _go_on(self) -> None:
        self._from = self._from + SHOWN if self._from + SHOWN < len(self._fitting()) else 0
        self._show()

    def _fitting(self) -> list[Recipe]:
        wanted = self.line.text().casefold().split()
        return [
            recipe
            for recipe in self.recipes
            if all(word in recipe.colourway.casefold() for word in wanted)
        ]

    def _show(self) -> None:
        for tile in self.tiles:
            tile.hide()
            tile.deleteLater()
        fitting = self._fitting()
        shown = fitting[self._from : self._from + SHOWN]
        self.tiles = [ColourwayTile(recipe, str(n)) for n, recipe in enumerate(shown, 1)]
        for place, tile in enumerate(self.tiles):
            tile.clicked.connect(partial(self._choose, tile.recipe))
            self._grid.addWidget(tile, place // _ACROSS, place % _ACROSS)
        self.more.setVisible(len(fitting) > SHOWN)
        self._none.setText(self._words(fitting))
        self.take(self._taken)

    def _words(self, fitting: Sequence[Recipe]) -> str:
        if not self.recipes:
            return "No colourway is named yet: name the first one."
        if not fitting:
            return "No colourway is called so. Name a new one, or type another part."
        return "Swatches are chosen by eye, not measured."


class NewColourway(Card):
    """A colourway that has no name yet; `named` gives its name and swatch, or no swatch."""

    named = Signal(str, object)
    left = Signal()

    def __init__(self, name: str = "") -> None:
        super().__init__()
        self.setAccessibleName("a new colourway")
        self.name = TextField(
            "The new colourway is called", needed="Say what the colourway is called."
        )
        self.name.line.setText(name)
        self.field = ShadeField()
        self._shown = Swatch(size=SMALL, none=NO_SWATCH)
        self.field.chosen.connect(lambda colour: self._shown.show_zones([Zone(colour)]))
        keep = KeyButton("Name it", "Enter", strong=True)
        keep.clicked.connect(self.keep)
        leave = KeyButton("Leave it", "F8")
        leave.clicked.connect(self.left)
        by_eye = Words("Its swatch by eye, if you like: it is not measured.", ink=SECOND)
        self.add(self.name)
        swatch = self.add_row(self._shown, by_eye)
        swatch.setStretch(1, 1)
        self.add(self.field)
        self.add_last(Actions(keep, leave))

    def keep(self) -> None:
        """Name it, if it has a name."""
        name = self.name.value()
        if name:
            self.named.emit(name, self.field.colour)
