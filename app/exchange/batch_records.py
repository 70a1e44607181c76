"""The batch record of a lot as paper: what the book says of it, set out in numbered parts."""

from collections.abc import Iterator, Mapping
from typing import Literal

from app.calculations.codes import bare_characters, code_of
from app.calculations.moments import clock_words, day_words
from app.documents.batch_record import BatchPaper, Part, batch_record_pdf
from app.documents.sheet import SheetFoot, SheetHead
from app.documents.trail import Station
from app.exchange import batch_words as words
from app.exchange import batch_words_after as after
from app.exchange.trail_pictures import CERTAINTY
from app.lookups.batch_record import BatchRecord
from app.lookups.trail import Stop

_HELD: Mapping[str, Literal["", "placed", "below"]] = {"": "", "here": "placed", "below": "below"}


def batch_pdf(record: BatchRecord, person: str) -> bytes:
    """The batch record, proven; `person` prints it."""
    return batch_record_pdf(batch_paper(record, person))


def batch_paper(record: BatchRecord, person: str) -> BatchPaper:
    """What the book says of a lot, ready to be set."""
    code = code_of(bare_characters(record.found.code))
    when = f"{day_words(record.at)}, {clock_words(record.at)}"
    return BatchPaper(
        head=SheetHead("Batch record", record.found.shown, record.colourway,
                       f"{record.base}; dyed {words.when(record.born)} by {record.born_by}",
                       code.text if code else ""),
        foot=SheetFoot(f"{record.studio or 'studio not named'} · printed {when}, by {person} · "
                       f"times in {record.at.astimezone():%z}",
                       record.journal_head, record.entry),
        answers=tuple(answers(record)),
        stations=tuple(map(station, record.stops)),
        parts=(
            Part("Yarn in", tuple(words.yarn_in(record))),
            Part("Recipe as it was", tuple(words.recipe(record.recipe))),
            Part("Weighed", tuple(words.weighed(record))),
            Part("Bath", tuple(words.bath(record.bath))),
            Part("Washed, dried", tuple(after.loads(record))),
            Part("Yield", tuple(after.yields(record))),
            Part("Count by tie", tuple(after.counts(record))),
            Part("Shade", tuple(after.shade(record)), card=True),
            Part("Tags", tuple(after.tags(record.tags))),
            Part("Holds", tuple(after.holds(record))),
            Part("Where now", tuple(after.now(record))),
            Part("Marked", tuple(after.marked(record))),
        ),
        done_by=done_by(record),
    )


def station(stop: Stop) -> Station:
    """A stop of the trail as it hangs from the yarn."""
    return Station(stop.kind, stop.code, stop.count, CERTAINTY[stop.certainty], stop.note,
                   stop.here, _HELD[stop.held])


def answers(record: BatchRecord) -> Iterator[tuple[str, str]]:
    """What an owner wants to know first, in sentences."""
    tagged = record.yields[-1]
    yield "Made", f"{record.count} in the bath, {tagged.least} tagged."
    near = record.relatives
    yield "Companions", f"{', '.join(near.companions) or 'none'} (same bath, other base)."
    maybe = ("" if not near.fills_not_known else
             f"; perhaps {', '.join(near.fills_not_known)}: their jar fills are not known")
    yield "Sisters", f"{', '.join(near.sisters) or 'none known'}{maybe}."
    gone = record.weighed.off_recipe
    yield "Recipe", ("OFF RECIPE: " + "; ".join(gone) if gone else
                     "on its recipe" if record.weighed.known else words.NOT_KNOWN) + "."
    standing = sum(1 for hold in record.holds if hold.lifted is None)
    yield "Open", (f"{standing} {'hold stands' if standing == 1 else 'holds stand'}."
                   if standing else "No hold stands.")


def done_by(record: BatchRecord) -> tuple[str, ...]:
    """Who did what is signed: weighed out, dyed, washed and dried, counted, tags, then by hand."""
    return (
        words.names(line.person for line in record.weighed.lines),
        words.names([record.born_by, (record.bath.lifted_by or "") if record.bath else ""]),
        words.names(load.person for load in record.loads),
        words.names(one.person for one in record.counts),
        words.names(tag.tied_on_by or tag.printed_by for tag in record.tags.tags),
    )
