"""A tag read back from a photograph, from gaps or from the telephone: rows to choose from."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from sqlalchemy import Connection

from app.calculations.codes import Kind, shown
from app.lookups.lot_lines import LotLine
from app.lookups.things import Found
from app.scanning.from_photo import SeveralPhotos, Shown, what_it_shows
from app.scanning.gaps import lines_of, reply_to, what_fits
from app.scanning.how_known import BASIS_OF, Came
from app.scanning.saying import a_kind, void_words


@dataclass(frozen=True, slots=True)
class ReadRow:
    """One code that was read or may be meant; `lot` says its day and what is left of it."""

    text: str
    found: Found | None
    said: str
    """What it is, or why it stands for nothing here."""
    lot: LotLine | None = None
    buyers: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ReadBack:
    """All that was read, with what to do next and what to answer whoever sent it."""

    rows: tuple[ReadRow, ...]
    sentence: str
    next_step: str
    reply: str
    came: Came

    @property
    def basis(self) -> str:
        """What a link to a chosen one is saved on."""
        return BASIS_OF[self.came]


def read_from_photos(connection: Connection, photos: SeveralPhotos) -> ReadBack:
    """The codes on photographs, each as the book knows it; what was read is never mended."""
    answer = what_it_shows(connection, photos.sought)
    known = [thing for one in answer.shown for thing in _things(one)]
    lines = lines_of(connection, known)
    rows = tuple(row for one in answer.shown for row in _rows_of(one, lines))
    sentence, next_step = answer.sentence, answer.next_step
    if photos.problems:
        told = " ".join(dict.fromkeys(problem.what for problem in photos.problems))
        sentence = told if len(photos.problems) == photos.count else f"{sentence} {told}"
        if not answer.shown:
            next_step = photos.problems[0].next_step
    all_known = bool(answer.shown) and all(one.answer.found for one in answer.shown)
    return ReadBack(rows, sentence, next_step, "" if all_known else reply_to(0), Came.PHOTO)


def read_with_gaps(connection: Connection, text: str, said: str, came: Came) -> ReadBack:
    """All that `26?9K4?` may be, with what was said of the yarn; the best first, none chosen."""
    told = what_fits(connection, text, said)
    rows = tuple(ReadRow(fit.found.shown, fit.found, _kind_of(fit.found), fit.lot, fit.buyers)
                 for fit in told.fits)
    return ReadBack(rows, told.sentence, told.next_step, told.reply, came)


def _things(one: Shown) -> Iterable[Found]:
    lots = (thing for thing in one.answer.choices if thing.kind == Kind.LOT)
    return (*([one.answer.found] if one.answer.found else ()), *lots)


def _rows_of(one: Shown, lines: Mapping[Found, LotLine]) -> Iterable[ReadRow]:
    """The code, and where no such tag was ever printed, the lot that its beginning names."""
    found = one.answer.found
    if found is None:
        yield ReadRow(shown(one.seen.text), None, one.answer.sentence)
    for thing in _things(one):
        yield ReadRow(thing.shown, thing, _kind_of(thing), lines.get(thing))


def _kind_of(thing: Found) -> str:
    return void_words(thing) if thing.void else a_kind(thing.kind)
