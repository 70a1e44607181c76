"""The label of a kit bag: what is in it, with the lot of each, by any of which it is found."""

from dataclasses import dataclass

from app.calculations.codes import shown
from app.documents.card_sheets import card_sheets
from app.documents.paper import HAIR, Paper
from app.documents.stocks import Correction, Stock
from app.documents.typesetting import Face, Type, break_lines, width_mm
from app.problems import Refused

_LEFT, _RIGHT, _TOP = 6.2, 6.2, 6.2
_CODE_FOOT, _LIST_TOP, _FOOT_FREE = 16.2, 24.2, 4.0
_SIZES = (9.0, 8.0, 7.0, 6.5, 6.0)  # of the list: the largest that fits


@dataclass(frozen=True, slots=True, kw_only=True)
class KitLine:
    """So many skeins of one lot in the bag; `place` is the letter of the pattern, if it has one."""

    count: int
    colourway: str
    base: str
    lot: str
    fibre: str = ""
    place: str = ""

    @property
    def said(self) -> str:
        """What the line says before its lot."""
        what = ", ".join(part for part in (self.colourway, self.base, self.fibre) if part)
        return f"{self.count} × {what}"


@dataclass(frozen=True, slots=True, kw_only=True)
class KitLabel:
    """A bag with its own code; two lots of one colour are two lines."""

    code: str
    name: str
    lines: tuple[KitLine, ...]
    studio: str
    address: str = ""

    def draw(self, paper: Paper, size: tuple[float, float]) -> None:
        """Name, code and maker above, then every lot; the list's type is as large as fits."""
        right = size[0] - _RIGHT
        room = paper.code_room((right, _CODE_FOOT), 21).left - 1 - _LEFT
        maker = f"{self.studio}, {self.address}" if self.address else self.studio
        y = paper.lines(_LEFT, _TOP, maker, Type(6.5), room, 2.6)
        paper.lines(_LEFT, max(y + 1.6, 11.4), self.name, Type(11, Face.BOLD), room, 4.2)
        paper.code((right, _CODE_FOOT), self.code)
        y = _LIST_TOP - 3.8
        end = paper.text(_LEFT, y, "KIT", Type(8, Face.BOLD)) + 2
        paper.text(end, y, shown(self.code), Type(8, Face.CODE_BOLD))
        paper.text(right, y, "Dye lot", Type(6.5, Face.BOLD), "right")
        paper.rule((_LEFT, y + 1), (right, y + 1), HAIR)
        _draw_lots(paper, self.lines, right, size[1] - _FOOT_FREE)


def kit_label_pdf(
    label: KitLabel,
    stock: Stock,
    *,
    first_cell: int = 1,
    correction: Correction = (0.0, 0.0),
) -> bytes:
    """The label of one kit bag as a PDF on a cell of any stock, its code read back.

    `label.code` is the kit's own code (`KitNow.code`); `label.lines` has one line for each place
    and lot, with the fibre as the skeins' tags say it. Raises Refused where nothing is in the
    bag, a skein's lot is not written, or not all lots fit the stock: then nothing is printed.
    """
    if not label.lines:
        raise Refused(
            f"Nothing is in kit {shown(label.code)}; no label was printed.",
            "Scan the skeins into the bag first.",
        )
    if lacking := [line.colourway for line in label.lines if not line.lot]:
        raise Refused(
            f"The lot of {', '.join(lacking)} is not written; no label was printed.",
            "Scan the tags of these skeins: a kit bag names every lot in it.",
        )
    return card_sheets([label], stock, first_cell=first_cell, correction=correction)


def _draw_lots(paper: Paper, lines: tuple[KitLine, ...], right: float, foot: float) -> None:
    """One line under the other, none broken if a size allows it; else the largest that fits."""
    settings = [_set(lines, pt, right) for pt in _SIZES]
    fitting = [one for one in settings if _LIST_TOP + one.height - one.lead <= foot]
    whole = [one for one in fitting if all(len(words) == 1 for words in one.broken)]
    setting = (whole or fitting or settings[-1:])[0]
    y, kind = _LIST_TOP, Type(setting.pt)
    for line, words in zip(lines, setting.broken, strict=True):
        paper.text(_LEFT, y, line.place, Type(setting.pt, Face.BOLD))
        paper.text(right, y, shown(line.lot), Type(setting.pt, Face.CODE_BOLD), "right")
        for said in words:
            paper.text(_LEFT + setting.indent, y, said, kind, room=setting.room)
            y += setting.lead
        y += setting.gap


@dataclass(frozen=True, slots=True)
class _Set:
    """The list set in one size: its broken lines, and its measures in mm."""

    pt: float
    indent: float
    room: float
    broken: tuple[tuple[str, ...], ...]

    @property
    def lead(self) -> float:
        return 0.41 * self.pt

    @property
    def gap(self) -> float:
        return 0.06 * self.pt

    @property
    def height(self) -> float:
        return sum(len(one) * self.lead + self.gap for one in self.broken)


def _set(lines: tuple[KitLine, ...], pt: float, right: float) -> _Set:
    indent = 4.0 if any(line.place for line in lines) else 0.0
    lots = max(width_mm(shown(line.lot), Type(pt, Face.CODE_BOLD)) for line in lines)
    room = right - lots - 3 - _LEFT - indent
    broken = tuple(tuple(break_lines(line.said, Type(pt), room)) for line in lines)
    return _Set(pt, indent, room, broken)
