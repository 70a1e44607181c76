"""take-in, tags: deeds from the command line, in the name of who says so."""

from collections.abc import Iterator, Sequence
from random import SystemRandom
from typing import TYPE_CHECKING

from app.commands.answer import REFUSED, Answer, Options, new_file, one_thing, signed, the_book
from app.problems import NotFound, Refused

if TYPE_CHECKING:
    from app.exchange.rows import RowTrouble

MOST_TOLD = 40


def take_in(options: Options) -> Answer:
    """A mill's list, read and taken in as one deed; its bad rows are always told."""
    from app.exchange import taking_in
    from app.exchange.answers import note_data

    try:
        content = options.file.read_bytes()
    except OSError as error:
        raise NotFound(f"{options.file} cannot be read: {error.strerror}.",
                       "Say where the file is.") from error
    with the_book(options) as book:
        by = signed(book, options.by, "receiving")
        said = taking_in.Said(dict(options.column), dict(options.say))
        arrival = book.ask(taking_in.look_at, content, said, book.clock())
        note = arrival.note
        seen = (*note.notes, *_troubles(note.troubles))
        data = {**note_data(note), "taken_in": False, "entry": None, "findings": []}
        if options.look:
            found = taking_in.told(note) or "no cones"
            return Answer((f"{found}; nothing was saved.",), data, seen)
        try:
            done = book.do(taking_in.take_in, arrival, options.leave_bad_rows, by=by)
        except Refused as refusal:
            bad = note.troubles and not note.before
            way = "Put them right, or say --leave-bad-rows." if bad else refusal.next_step
            return Answer((), data, (*seen, refusal.what, way), REFUSED)
    data |= {"taken_in": True, "entry": done.seq, "findings": list(done.findings)}
    return Answer((f"{done.said}.",), data, (*seen, *done.findings))


def _troubles(troubles: "Sequence[RowTrouble]") -> Iterator[str]:
    yield from (trouble.sentence for trouble in troubles[:MOST_TOLD])
    if len(troubles) > MOST_TOLD:
        yield f"And {len(troubles) - MOST_TOLD:,} more like these."


def tags(options: Options) -> Answer:
    """Tags on paper, proven, and then in the book; no paper, no deed."""
    from app.exchange.tag_printing import LotOrder, OnStock, print_for_lot

    with the_book(options) as book, new_file(options.out) as write:
        by = signed(book, options.by, "tagging")
        lot = one_thing(book, options.lot, "lot")
        order = LotOrder(lot.id, OnStock(options.stock, options.first_cell), options.count)
        printed = print_for_lot(book, by, order, SystemRandom())
        try:
            write(printed.pdf)
        except OSError:
            book.undo(printed.seq, by=by, reason="the sheet could not be written")
            raise
    first, last = printed.places[0], printed.places[-1]
    lines = (f"{printed.said}; every code was read back.",
             f"{options.out}: from cell {first.cell} to cell {last.cell} of sheet {last.page}; "
             f"{printed.left_on_last} cells left on it.")
    data = {"lot": lot.code, "marks": [place.code for place in printed.places],
            "out": str(options.out), "sheets": last.page, "first_cell": first.cell,
            "last_cell": last.cell, "left": printed.left_on_last, "entry": printed.seq}
    return Answer(lines, data, tuple(f"For want of room {one}." for one in printed.left_out))
