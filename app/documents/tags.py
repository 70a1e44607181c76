"""Sheets of tags: any stock, any first cell, any mix of lots, proven before they are handed out."""

from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace

from app.calculations import codes
from app.documents.boxes import Box
from app.documents.paper import HAIR, Paper
from app.documents.proof import Due, prove
from app.documents.square_codes import fits_a_tag
from app.documents.stocks import Correction, Stock, in_runs
from app.documents.tag_layouts import Worn, draw_tag
from app.documents.tag_words import Shortened, TagWords, check_words, ways_to_shorten
from app.documents.typesetting import Face, Type, width_mm
from app.problems import Refused

_SLUG, _SLUG_LEAD_MM = Type(8), 3.2
_OVER_SLUG_MM, _UNDER_SLUG_MM = 2.6, 3.9  # from the edge to its base line, and to the tags


@dataclass(frozen=True, slots=True)
class OldMark:
    """The mark of a skein whose lot is from before the book: its code as it stands on old tags."""

    lot: str
    mark: str

    @property
    def text(self) -> str:
        """As it is read back, and found in the book."""
        return f"{self.lot}-{self.mark}"

    @property
    def grouped(self) -> str:
        """As it is printed for people."""
        return f"{self.lot} {self.mark}"


@dataclass(frozen=True, slots=True)
class Tag:
    """One tag: its words and the skein's mark, two characters."""

    words: TagWords
    mark: str

    @property
    def code(self) -> Worn:
        """The code it wears: lot and mark.

        Raises BadInput where a lot of ours has a wrong check, Refused where an old one does not
        fit the square code.
        """
        lot = self.words.lot
        if codes.is_formed_as_lot(lot):
            return codes.read(f"{lot}-{self.mark}")
        old = OldMark(lot, self.mark)
        if not fits_a_tag(old.text):
            raise Refused(
                f"Lot {lot} does not fit the square code of a tag: that holds up to 13 capital "
                "letters and figures; nothing was printed.",
                "Write its tags by hand, or open the lot under a shorter code.",
            )
        return old


@dataclass(frozen=True, slots=True)
class Place:
    """Where a tag's code came to stand: page and cell, both counted from 1."""

    code: str
    page: int
    cell: int


@dataclass(frozen=True, slots=True)
class Sheets:
    """Proven sheets: what to print, which tag stands where, what is left, what gave way."""

    pdf: bytes
    places: tuple[Place, ...]
    free_on_last: tuple[int, ...]
    """Cells of the last sheet that are still to be had."""
    left_out: tuple[str, ...]

    @property
    def left_on_last(self) -> int:
        """How many cells of the last sheet are still to be had."""
        return len(self.free_on_last)

    @property
    def pages(self) -> int:
        """How many sheets are printed."""
        return self.places[-1].page


def tag_sheets(
    tags: Sequence[Tag],
    stock: Stock,
    *,
    first_cell: int = 1,
    used: Collection[int] = (),
    correction: Correction = (0.0, 0.0),
    slug: str = "",
) -> Sheets:
    """Tags in their order from the first cell on, every code read back before this returns.

    Cells that are `used` on the first sheet are passed over. Words that do not fit are refused by
    name. The slug stands in the sheet's waste margin, with the sheet's number and cells after it;
    on a sheet of which cells were used before, on another line than that of a new one.
    """
    wordings = {tag.words: tag for tag in tags}
    for words in wordings:
        check_words(words)
    free = stock.free_cells(first_cell, used)
    places = _places(tags, stock, first_cell, used)
    fitted = _fitted_all(wordings, stock)
    paper = _paper(stock)
    for place, tag in zip(places, tags, strict=True):
        if place.page > len(paper.codes):
            paper.new_page()
        if place is places[0] or place.page > 1 and place.cell == 1:
            _write_slug(paper, stock, _slug(slug, place.page, places, stock, free),
                        stock.cells - len(free) if place.page == 1 else 0)
            if stock.cut:
                _mark_cuts(paper, stock, correction)
        box = stock.cell(place.cell, correction)
        _draw(paper, box, stock, fitted[tag.words].words, tag.code)
    pdf = paper.pdf("Make this printer's correction smaller, or choose another stock.")
    prove(pdf, _due(places, tags, stock, correction), stock.dpi)
    gave_way = dict.fromkeys(given for one in fitted.values() for given in one.left_out)
    return Sheets(pdf, places, _free(places, places[-1].page, stock, free), tuple(gave_way))


def try_on(tag: Tag, stock: Stock) -> Shortened:
    """The words as they would stand there; refused with what does not fit even when shortened."""
    check_words(tag.words)
    return _fitted(tag.words, tag.code, stock)


def _places(
    tags: Sequence[Tag], stock: Stock, first_cell: int, used: Collection[int]
) -> tuple[Place, ...]:
    if not tags:
        raise Refused("There is no tag to print.", "Choose the skeins that need one.")
    marked = [tag.code.text for tag in tags]
    if twice := [code for code, count in Counter(marked).items() if count > 1]:
        raise Refused(
            f"{', '.join(twice)} would be printed twice; nothing was printed.",
            "Print each mark once, or void the old tag first.",
        )
    cells = stock.places(len(tags), first_cell, used)
    return tuple(Place(code, *cell) for code, cell in zip(marked, cells, strict=True))


def _free(
    places: Sequence[Place], page: int, stock: Stock, free: Sequence[int]
) -> tuple[int, ...]:
    """The cells of a sheet that are still to be had after this printing."""
    printed = {place.cell for place in places if place.page == page}
    before = free if page == 1 else range(1, stock.cells + 1)
    return tuple(cell for cell in before if cell not in printed)


def _fitted_all(wordings: Mapping[TagWords, Tag], stock: Stock) -> dict[TagWords, Shortened]:
    """The words of each tag as they fit; lots that are equally wide need only one trial."""
    tried: dict[tuple[TagWords, float], Shortened] = {}
    fitted = {}
    for words, tag in wordings.items():
        lot_width = width_mm(tag.code.grouped, Type(17, Face.CODE_BOLD))
        key = replace(words, lot=""), round(lot_width, 3)
        if key not in tried:
            tried[key] = _fitted(words, tag.code, stock)
        fitted[words] = replace(tried[key], words=replace(tried[key].words, lot=words.lot))
    return fitted


def _fitted(words: TagWords, code: Worn, stock: Stock) -> Shortened:
    """The words with the least given up that fits; refused with what does not fit even then."""
    for shortened in ways_to_shorten(stock.choices.wanted(words)):
        trial = _paper(stock)
        _draw(trial, stock.cell(1), stock, shortened.words, code)
        if not trial.misfits:
            return shortened
    raise trial.refusal("Shorten the words, or choose a larger stock.")


def _paper(stock: Stock) -> Paper:
    return Paper("Tags", stock.page, dpi=stock.dpi, edge=stock.edge, turned=stock.long_edge_first)


def _draw(paper: Paper, box: Box, stock: Stock, words: TagWords, code: Worn) -> None:
    with paper.cell(box):
        draw_tag(paper, stock, words, code)


def _write_slug(paper: Paper, stock: Stock, slug: str, used: int) -> None:
    """What this sheet is, in its waste margin: the more cells were used before, the later the line,
    so that it is not printed over what an earlier printing wrote."""
    lines = _slug_lines(stock)
    if slug and lines:
        line = lines[-(-used * (len(lines) - 1) // stock.cells)]
        paper.text(max(stock.first[0], 10), line, slug, _SLUG)


def _slug_lines(stock: Stock) -> list[float]:
    """The base lines that the waste margins have room for: at the head, then up from the foot."""
    high = stock.page[1]
    head, foot = (
        range(int((margin - stock.edge - _OVER_SLUG_MM - _UNDER_SLUG_MM) // _SLUG_LEAD_MM) + 1)
        for margin in (stock.first[1], high - stock.cell(stock.cells).bottom)
    )
    lowest = high - stock.edge - _OVER_SLUG_MM + _SLUG.ascent_mm - _SLUG.descent_mm
    return [*(stock.edge + _OVER_SLUG_MM + line * _SLUG_LEAD_MM for line in head),
            *(lowest - line * _SLUG_LEAD_MM for line in foot)]


def _mark_cuts(paper: Paper, stock: Stock, correction: Correction) -> None:
    """Ticks outside the cells; where these end at the page's edge, ticks on the line of the cut."""
    left, top, *_ = stock.cell(1, correction)
    *_, right, foot = stock.cell(stock.cells, correction)
    for column in range(1, stock.across + 1):
        box = stock.cell(column, correction)
        for x in (box.left, box.right):
            paper.rule((x, top - 2.6), (x, top - 0.8), HAIR)
            paper.rule((x, foot + 0.8), (x, foot + 2.6), HAIR)
    if left < stock.edge + 2.6:
        left, right = stock.edge + 2.6, stock.page[0] - stock.edge - 2.6
    for row in range(stock.down):
        box = stock.cell(1 + row * stock.across, correction)
        for y in (box.top, box.bottom):
            paper.rule((left - 2.6, y), (left - 0.8, y), HAIR)
            paper.rule((right + 0.8, y), (right + 2.6, y), HAIR)


def _slug(slug: str, page: int, places: Sequence[Place], stock: Stock, free: Sequence[int]) -> str:
    cells = [place.cell for place in places if place.page == page]
    left = len(_free(places, page, stock, free))
    after = f", {left} left" if left else ""
    return slug and (
        f"{slug} · sheet {page} of {places[-1].page} · cell{'' if len(cells) == 1 else 's'}"
        f" {', '.join(in_runs(cells))} of {stock.cells}{after}"
    )


def _due(
    places: Sequence[Place], tags: Sequence[Tag], stock: Stock, correction: Correction
) -> list[list[Due]]:
    pages: list[list[Due]] = [[] for _ in range(places[-1].page)]
    for place, tag in zip(places, tags, strict=True):
        box = stock.on_page(stock.cell(place.cell, correction))
        pages[place.page - 1].append(Due(place.code, box, tag.code.grouped))
    return pages
