"""take-in, orders, tags: deeds from the command line, in the name of who says so."""

from collections.abc import Iterable, Iterator
from random import SystemRandom

from app.commands.answer import REFUSED, Answer, Options, new_file, one_thing, signed, the_book
from app.problems import NotFound, Refused

MOST_TOLD = 40


def take_in(options: Options) -> Answer:
    """A mill's list, read and taken in as one deed; its bad rows are always told."""
    from app.exchange import taking_in
    from app.exchange.answers import note_data

    content = _content(options)
    with the_book(options) as book:
        by = signed(book, options.by, "receiving")
        said = taking_in.Said(dict(options.column), dict(options.say))
        arrival = book.ask(taking_in.look_at, content, said, book.clock())
        note = arrival.note
        seen = (*note.notes, *_few(trouble.sentence for trouble in note.troubles))
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


def orders(options: Options) -> Answer:
    """A web shop's list, read and its whole orders taken in as one deed; the others are told."""
    from app.exchange import orders_in
    from app.exchange.answers import orders_data

    content = _content(options)
    with the_book(options) as book:
        by = signed(book, options.by, "packing")
        seen = book.ask(orders_in.look_at_orders, content, dict(options.column), book.clock())
        if seen.orders is None:
            raise Refused(f"{seen.match.what_lacks(())} Nothing was saved.",
                          "Say which column it is: --column FIELD=HEADING.")
        said = (*seen.orders.notes, *_few(orders_in.stays_out(seen.orders)),
                *_few(f"{doubt} It is kept as words." for doubt in seen.orders.doubts))
        data = {**orders_data(seen.orders), "taken_in": False, "entry": None, "findings": []}
        if options.look:
            found = orders_in.told(seen.orders.orders)
            return Answer((f"{found}; nothing was saved.",), data, said)
        try:
            done = book.do(orders_in.take_in_orders, seen, by=by)
        except Refused as refusal:
            return Answer((), data, (*said, refusal.what, refusal.next_step), REFUSED)
    data |= {"taken_in": True, "entry": done.seq, "findings": list(done.findings)}
    return Answer((f"{done.said}.",), data, (*said, *done.findings))


def _content(options: Options) -> bytes:
    try:
        content: bytes = options.file.read_bytes()
    except OSError as error:
        raise NotFound(f"{options.file} cannot be read: {error.strerror}.",
                       "Say where the file is.") from error
    return content


def _few(sentences: Iterable[str]) -> Iterator[str]:
    every = list(sentences)
    yield from every[:MOST_TOLD]
    if len(every) > MOST_TOLD:
        yield f"And {len(every) - MOST_TOLD:,} more like these."


def tags(options: Options) -> Answer:
    """Tags on paper, proven, and then in the book; no paper, no deed."""
    from app.exchange.tag_printing import LotOrder, OnStock, print_for_lot
    from app.exchange.tag_stocks import tag_stock

    with the_book(options) as book, new_file(options.out) as write:
        by = signed(book, options.by, "tagging")
        lot = one_thing(book, options.lot, "lot")
        on = OnStock(options.stock, options.first_cell,
                     as_studio=book.ask(tag_stock, options.stock))
        order = LotOrder(lot.id, on, options.count)
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
            "last_cell": last.cell, "left": printed.left_on_last, "entry": printed.seq,
            "warnings": list(printed.warnings)}
    notes = (*(f"For want of room {one}." for one in printed.left_out), *printed.warnings)
    return Answer(lines, data, notes)
