"""shades, customer-data: readings that come in, and what a customer asks for."""

from pathlib import Path

from app.commands.answer import REFUSED, Answer, Options, new_file, signed, the_book
from app.problems import NotFound, Refused

BEGINS = {".json": b"{", ".csv": "\ufefforder,placed,".encode()}
"""How such files begin, so that none but our own is written over."""


def shades(options: Options) -> Answer:
    """Readings of an instrument, taken in as one deed; bad rows are always told."""
    from app.exchange import shades_in
    from app.exchange.list_file import gathered
    from app.exchange.taking_in import Said

    with the_book(options) as book:
        by = signed(book, options.by, "shade check")
        seen = book.ask(shades_in.see_shades, options.file,
                        Said(dict(options.column), dict(options.say)))
        if seen.lacks:
            raise Refused(f"{seen.match.what_lacks(dict(options.say))} Nothing was saved.",
                          "Say which column it is, --column FIELD=HEADING, or say it once for all "
                          "rows, --say lamp=D65.")
        troubles = gathered(seen.troubles)
        data = {"cards": len(seen.cards), "troubles": list(troubles), "taken_in": False,
                "entry": None, "findings": []}
        try:
            done = book.do(shades_in.take_shades_in, seen, options.leave_bad_rows, by=by)
        except Refused as refusal:
            way = "Put them right, or say --leave-bad-rows." if seen.cards else refusal.next_step
            return Answer((), data, (*troubles, refusal.what, way), REFUSED)
    data |= {"taken_in": True, "entry": done.seq, "findings": list(done.findings)}
    return Answer((f"{done.said}.",), data, (*troubles, *done.findings))


def customer_data(options: Options) -> Answer:
    """All that is kept of one customer, as JSON; as CSV what they bought."""
    from app.exchange.customer_file import customer_csv, customer_json
    from app.lookups.customers import customers_named

    file: Path = options.file
    form = file.suffix.casefold()
    if form not in BEGINS:
        raise Refused(f"{file} is neither a .json nor a .csv file; nothing was written.",
                      "End its name in one of them.")
    with the_book(options) as book:
        known = book.ask(customers_named, options.name)
        if len(known) != 1:
            raise NotFound(
                f"{len(known) or 'No'} customers are called “{options.name}”; nothing was written.",
                "Say the whole name: " + ", ".join(one.name for one in known) if known
                else "Say the name as it was given.")
        with new_file(file, BEGINS[form]) as write:
            write(book.ask(customer_json if form == ".json" else customer_csv, known[0].id))
    return Answer((f"All that is kept of {known[0].name}: {file}." if form == ".json"
                   else f"What {known[0].name} bought: {file}.",),
                  {"customer": known[0].id, "out": str(file)})
