"""Cards of the dry rooms: a lot's card with its own yarn wound round, and a shelf's card."""

from dataclasses import dataclass

from app.calculations.codes import shown
from app.documents.paper import HAIR, Paper, Pen
from app.documents.signs import bar_foot, lot_over_bar
from app.documents.square_codes import Symbol
from app.documents.typesetting import Face, Type

_WOUND = 17.0  # the strip, from the left, that the yarn is wound round
_EDGE = 6.2
_LOT_FOOT, _LOT_PT = 7.6, 17.0
_SHELF_MODULE_MM = 1.4
_CUT = Pen(0.1, dash=(1, 1))


@dataclass(frozen=True, slots=True, kw_only=True)
class LotCard:
    """A lot's card: two metres of its yarn are wound round the left part, the words stay free."""

    code: str
    colourway: str
    base: str
    fibre: str
    dyed: str = ""
    """When its bath was begun, in words."""

    def draw(self, paper: Paper, size: tuple[float, float]) -> None:
        """The strip to wind round with its notches, then what it is, then the lot and its code."""
        for y in (6.0, size[1] - 6.0):  # the yarn lies between two notches
            paper.rule((2.5, y), (5.0, y), HAIR)
        paper.rule((_WOUND, 2.5), (_WOUND, size[1] - 2.5), _CUT)
        left, room = _WOUND + 2, size[0] - _EDGE - _WOUND - 2
        y = paper.lines(left, 9.0, self.colourway, Type(11, Face.BOLD), room, 4.4) + 0.4
        for said in (self.base, self.fibre, self.dyed):
            y = paper.lines(left, y, said, Type(8), room, 3.4) if said else y
        base_line = size[1] - _LOT_FOOT
        lot_over_bar(paper, (left, base_line), shown(self.code), "", _LOT_PT)
        paper.code((size[0] - _EDGE, bar_foot(base_line, _LOT_PT)), self.code)
        paper.text(left, base_line - 5, "Dye lot", Type(6.5, Face.BOLD))


@dataclass(frozen=True, slots=True, kw_only=True)
class ShelfCard:
    """A shelf's card: what the studio calls it, its number, and its code.

    No lot stands on it: a shelf is not a lot, and what lies there today is asked of the book.
    """

    code: str
    name: str = ""
    """What the studio calls the shelf, as its plate bears it; '' where it has only a number."""

    def draw(self, paper: Paper, size: tuple[float, float]) -> None:
        """Its name or else its number, large; below it the number, and the code to scan."""
        left, room, number = _EDGE, size[0] - 2 * _EDGE, f"Shelf {self.code[1:-1]}"
        paper.lines(left, 10.5, self.name or number, Type(16, Face.BOLD), room, 6.4)
        foot = bar_foot(size[1] - _LOT_FOOT, _LOT_PT)
        dark = paper.code((size[0] - _EDGE, foot), self.code, Symbol.DATA_MATRIX, _SHELF_MODULE_MM)
        beside = dark.left - 3 - left
        if self.name:
            paper.text(left, foot - 5.2, number, Type(12, Face.BOLD), room=beside)
        paper.text(left, foot, shown(self.code), Type(9, Face.CODE), room=beside)
