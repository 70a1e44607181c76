"""A recall list as paper and as a workbook, from what the book says."""

import io

from openpyxl import Workbook

from app.calculations.moments import clock_words, day_words
from app.documents.recall_sheet import RecallRow, RecallSheet, recall_sheet_pdf
from app.documents.sheet import SheetFoot, SheetHead
from app.exchange.free_counts import plain
from app.exchange.recalls import (
    HEADINGS,
    IN_WORK,
    STILL_HERE,
    Recalled,
    cells,
    group_of,
    marks_together,
    who,
)
from app.lookups.recall import WithOne

_TO_SAY = (
    ("To say, if known", "A skein that we sold you carries a fault that came with the yarn. Please "
     "do not knit it: we send another or pay it back."),
    ("If likely", "Some of your skeins may have it, and nobody can tell from here which. Please "
     "look at them in daylight and tell us, also if they are good."),
)


def recall_pdf(one: Recalled, person: str) -> bytes:
    """The list as paper; it holds names, and says so at its foot."""
    when = f"{day_words(one.listed)}, {clock_words(one.listed)}"
    why = tuple((f"HOLD {hold.id}", f"{hold.why}, since {day_words(hold.since)}. Ask {hold.ask}.")
                for hold in one.holds)
    here = tuple(row for row in one.found.rows if group_of(row.state) in (STILL_HERE, IN_WORK))
    return recall_sheet_pdf(RecallSheet(
        head=SheetHead("Recall list", one.on[:1].upper() + one.on[1:], f"as listed on {when}"),
        foot=SheetFoot(f"{one.studio or 'studio not named'} · printed {when}, by {person} · holds "
                       "names: shred it when it is done", one.journal_head, one.entry),
        answers=(*why, ("How sure", one.how_sure)),
        sums=tuple((f"{each.words}: {each.put_ups}" if each.put_ups else each.words, each.count,
                    each.grams) for each in one.sums),
        here=tuple(map(_row, here)),
        out=tuple(_row(row) for row in one.found.rows if row not in here),
        to_say=_TO_SAY,
    ))


def recall_workbook(one: Recalled) -> bytes:
    """The list as an XLSX workbook: a sheet of rows, numbers as numbers, and a sheet of sums."""
    book = Workbook()
    rows, sums = book.active, book.create_sheet("sums")
    assert rows is not None
    rows.title = "recall list"
    rows.append(list(HEADINGS))
    for row in one.found.rows:
        words = [plain(cell) for cell in cells(row)]
        since = row.since.astimezone().date() if row.since else None
        rows.append([*words[:2], since, row.count, *words[4:6], row.mg / 1000, words[7]])
    sums.append(["state", "how many", "grams", "put-ups"])
    for each in one.sums:
        sums.append([each.words, each.count, each.mg / 1000, each.put_ups])
    held = io.BytesIO()
    book.save(held)
    return held.getvalue()


def _row(row: WithOne) -> RecallRow:
    return RecallRow(who(row), row.order or "", row.count, marks_together(row.marks), row.of_it)
