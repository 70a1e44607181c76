"""find, trace, record, verify: what the book is asked from the command line."""

from pathlib import Path

from app.commands.answer import REFUSED, Answer, Options, new_file, one_thing, the_book


def find(options: Options) -> Answer:
    """One thing with where it is; else the things to choose from."""
    from app.exchange.answers import found_data, short_lines
    from app.exchange.tracing import traced
    from app.scanning.resolve import resolve

    with the_book(options) as book:
        answer = book.ask(resolve, options.code, True)
        data = {"found": None, "choices": [found_data(one) for one in answer.choices],
                "sentence": answer.sentence, "next_step": answer.next_step}
        if answer.found is None:
            listed = tuple(f"{one.shown}  {one.kind}  {one.words}".rstrip()
                           for one in answer.choices)
            return Answer(listed, data, (answer.sentence, answer.next_step), REFUSED)
        one = book.ask(traced, answer.found, book.clock())
    return Answer((answer.sentence, *short_lines(one)), data | {"found": found_data(answer.found)})


def trace(options: Options) -> Answer:
    """Both ends of the thread of a thing, and the same as paper if wanted."""
    from app.exchange.answers import trace_data, trace_lines
    from app.exchange.tracing import traced
    from app.scanning.saying import that_is

    with the_book(options) as book:
        found, at = one_thing(book, options.code), book.clock()
        one = book.ask(traced, found, at)
        said: tuple[str, ...] = ()
        if options.out:
            from app.exchange.reports import trace_pdf

            with new_file(options.out) as write:
                write(book.ask(trace_pdf, found, at, options.by or "the command line"))
            said = (f"The report is in {options.out}.",)
    return Answer((that_is(found), *trace_lines(one)), trace_data(one), said)


def free_counts(options: Options) -> Answer:
    """What is left to sell of every lot, as a table for the web shop."""
    from app.exchange.free_counts import BEGINS, as_csv
    from app.lookups.free_counts import free_counts as counted
    from app.lookups.prices import currency

    with the_book(options) as book, new_file(options.file, BEGINS) as write:
        counts, words = book.ask(counted), book.ask(currency)
        write(as_csv(counts, words))
    left = sum(one.left for one in counts)
    lots = len({one.lot for one in counts})
    line = (f"{left:,} left to sell of {lots:,} {'lot' if lots == 1 else 'lots'}: "
            f"{options.file}.")
    return Answer((line,), {"lots": lots, "left": left, "out": str(options.file)})


def record(options: Options) -> Answer:
    """The batch record of a lot: what is answered first, and the whole of it as paper."""
    from app.exchange.batch_records import answers, batch_pdf
    from app.lookups.batch_record import batch_record

    with the_book(options) as book:
        found = one_thing(book, options.lot, "lot")
        one = book.ask(batch_record, found.id, book.clock())
    out = options.file or Path(f"batch-record-{found.code}.pdf")
    with new_file(out) as write:
        write(batch_pdf(one, options.by or "the command line"))
    said = tuple(answers(one))
    return Answer(tuple(f"{label:<12}{words}" for label, words in said),
                  {"lot": found.code, "file": str(out), "answers": dict(said)},
                  (f"The batch record is in {out}.",))


def verify(options: Options) -> Answer:
    """The journal's chain recomputed and replayed against every row."""
    from app.store.journal import verify as check

    with the_book(options) as book:
        verdict = book.ask(check)
    lines = (f"The book agrees with its journal: {verdict.entries:,} entries, "
             f"{verdict.rows:,} rows.", f"Head: {verdict.head}", *verdict.removed)
    return Answer(lines, {"entries": verdict.entries, "rows": verdict.rows, "head": verdict.head,
                          "removed": list(verdict.removed)})
