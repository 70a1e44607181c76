"""The bath card: it stands at a pot, is read at a metre, and has room to write.

Lot codes are the largest thing; each stands with its square code.
"""

from dataclasses import dataclass

from app.calculations.codes import read
from app.documents.cautions_box import draw_cautions
from app.documents.paper import Pen
from app.documents.sheet import LEFT, RIGHT, Sheet, SheetFoot, SheetHead
from app.documents.signs import lot_over_bar
from app.documents.typesetting import Face, Type, break_lines, spelled_out

_STEP, _BUNDLE = Type(15), Type(13)
_LABEL, _LINE = Type(10), Pen(0.2)
_READINGS = (("time", 0), ("°C", 30), ("pH", 55), ("clear, tinted, coloured", 80),
             ("by", 150))
_READING_ROWS = 6


@dataclass(frozen=True, slots=True)
class CardLot:
    """A lot in the bath; no code while the clock was in doubt."""

    code: str
    base: str
    skeins: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BathCard:
    """All that stands at one pot."""

    head: SheetHead
    foot: SheetFoot
    lots: tuple[CardLot, ...]
    bundles: tuple[tuple[str, str], ...]
    """The disc, or that there is none, and what hangs on it."""
    water: tuple[str, str]
    """How much, large; and what it counts."""
    steps: tuple[str, ...]
    additions: tuple[str, ...]
    first_caution: str
    cautions: tuple[str, ...]


def bath_card_pdf(card: BathCard) -> bytes:
    """The card, on as many pages as its lots and bundles need; its codes are read back."""
    pages = _set(card, pages=1).page
    return _set(card, pages).finish()


def _set(card: BathCard, pages: int) -> Sheet:
    sheet = Sheet(card.head, card.foot, pages)
    sheet.y += 6
    for lot in card.lots:
        _draw_lot(sheet, lot)
    _draw_bundles(sheet, card.bundles)
    _draw_water(sheet, *card.water)
    _draw_lines(sheet, "Do", card.steps or ("No step is written in this recipe.",))
    _draw_lines(sheet, "Added", card.additions or ("Nothing so far:",))
    _draw_readings(sheet)
    draw_cautions(sheet, card.first_caution, card.cautions)
    return sheet


def _draw_lot(sheet: Sheet, lot: CardLot) -> None:
    sheet.keep_together(34)
    code = read(lot.code) if lot.code else None
    if code is None:
        sheet.paper.text(LEFT, sheet.y + 12, "no code yet", Type(36, Face.BOLD))
    else:
        lot_over_bar(sheet.paper, (LEFT, sheet.y + 14), code.grouped, "", 54)
        sheet.paper.code((RIGHT - 2, sheet.y + 17), code.text, least_mm=0.8)
    words = f"{lot.base}, {lot.skeins}"
    for line in break_lines(spelled_out(words), Type(16, Face.BOLD), RIGHT - LEFT, anywhere=True):
        sheet.paper.text(LEFT, sheet.y + 25, line, Type(16, Face.BOLD))
        sheet.y += 6.6
    sheet.y += 27


def _draw_bundles(sheet: Sheet, bundles: tuple[tuple[str, str], ...]) -> None:
    """Two side by side: a disc and what hangs on it."""
    for n in range(0, len(bundles), 2):
        pair = [(LEFT + 88 * m, break_lines(spelled_out(f"{disc}: {what}"), _BUNDLE, 84,
                                            anywhere=True))
                for m, (disc, what) in enumerate(bundles[n:n + 2])]
        height = 5.8 * max(len(lines) for _, lines in pair)
        sheet.keep_together(height)
        for x, lines in pair:
            for m, line in enumerate(lines):
                sheet.paper.text(x, sheet.y + 5.8 * m, line, _BUNDLE)
        sheet.y += height
    sheet.y += 6


def _draw_water(sheet: Sheet, much: str, what: str) -> None:
    sheet.keep_together(20)
    end = sheet.paper.text(LEFT, sheet.y + 7, much, Type(36, Face.BOLD))
    for n, line in enumerate(break_lines(spelled_out(what), _BUNDLE, RIGHT - end - 6)):
        sheet.paper.text(end + 5, sheet.y + 1.4 + 5.6 * n, line, _BUNDLE)
    sheet.y += 19


def _draw_lines(sheet: Sheet, title: str, lines: tuple[str, ...]) -> None:
    for n, words in enumerate(lines):
        broken = break_lines(spelled_out(words), _STEP, RIGHT - LEFT - 22, anywhere=True)
        sheet.keep_together(6.6 * len(broken))
        sheet.paper.text(LEFT, sheet.y, "" if n else title, Type(13, Face.BOLD))
        for line in broken:
            sheet.paper.text(LEFT + 22, sheet.y, line, _STEP)
            sheet.y += 6.6
    sheet.y += 4


def _draw_readings(sheet: Sheet) -> None:
    """Room for what is read at the pot."""
    sheet.keep_together(9 * (_READING_ROWS + 1))
    for words, x in _READINGS:
        sheet.paper.text(LEFT + x, sheet.y, words, _LABEL)
    for n in range(_READING_ROWS + 1):
        y = sheet.y + 1.6 + 9 * n
        sheet.paper.rule((LEFT, y), (RIGHT, y), _LINE)
    sheet.y += 9 * _READING_ROWS + 9
