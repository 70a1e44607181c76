"""Faults as they are told or seen, yarn that was seen good, and what the owner says it was."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from sqlalchemy import select

from app.calculations.listing import listing
from app.calculations.moments import day_words
from app.lookups.present import leaves, totals
from app.lookups.shared_faults import shared_with_earlier
from app.lookups.told_faults import ToldFault, faults_told, not_seen_good, told_words
from app.lookups.walks import below
from app.problems import NotFound, Refused
from app.records import Cause, Report, Sighting
from app.records.reports import CAUSES, FAULTS, SEEN_AT, WHERE_ON
from app.store.deed import Deed
from app.work.dividing import mark_of, must_be_known, skeins
from app.work.photos import keep_photo

_NAMED = 3  # marks that are said, of many


@dataclass(frozen=True, slots=True)
class FaultIn:
    """What is seen, where on the skein, at which distance it repeats, and who told.

    `lot` and `count` are as stated where no tag was read; `words` never name a person.
    """

    fault: str
    seen_at: str
    where_on: str = "not said"
    repeat_mm: int | None = None
    words: str = ""
    customer: int | None = None
    lot: int | None = None
    count: int | None = None


def report_fault(
    deed: Deed, fault: FaultIn, yarn: Sequence[int] = (), basis: str = "scanned",
    pictures: Sequence[bytes] = (),
) -> int:
    """A fault on these skeins, or on what was stated, with its pictures. The report's row."""
    if fault.fault not in FAULTS or fault.seen_at not in SEEN_AT or fault.where_on not in WHERE_ON:
        raise Refused("What is seen was not said; nothing was saved.", "Choose the fault.")
    if (fault.where_on == "repeats") != (fault.repeat_mm is not None):
        raise Refused("A fault that repeats has its distance; nothing was saved.",
                      "Measure from one place to the next, in centimetres.")
    if fault.repeat_mm is not None and fault.repeat_mm < 1:
        raise Refused("The distance is nothing; nothing was saved.", "Measure it again.")
    if not yarn and fault.lot is None:
        raise Refused("Nothing was named that has the fault; nothing was saved.",
                      "Scan a tag, or choose the lot that the customer says.")
    if fault.count is not None and fault.count < 1:
        raise Refused("None was said to have the fault; nothing was saved.", "Say how many.")
    must_be_known(deed, yarn)
    _note_shared(deed, fault, yarn)
    _note_too_many(deed, fault)
    row = deed.add(Report(
        fault=fault.fault, seen_at=fault.seen_at, where_on=fault.where_on,
        repeat_mm=fault.repeat_mm, words=fault.words.strip(), customer=fault.customer,
        lot=fault.lot, count=fault.count))
    deed.add_all([Sighting(yarn=one, report=row, faulty=1, seen_at=fault.seen_at, basis=basis)
                  for one in dict.fromkeys(yarn)])
    told = skeins(len(set(yarn))) if yarn else "a lot, as stated"
    for picture in pictures:
        keep_photo(deed, row, picture)
    with_it = f", with {skeins(len(pictures), 'picture')}" if pictures else ""
    deed.say(f"{fault.fault} on {told}{with_it}")
    return row


def _note_shared(deed: Deed, fault: FaultIn, yarn: Sequence[int]) -> None:
    """The second complaint that shares something with an earlier one says where to look."""
    shared = shared_with_earlier(deed.connection, fault.fault, yarn, fault.lot, deed.happened)
    if shared:
        first = [str(one) for one in shared[:3]]
        more = f" and {len(shared) - 3} more" if len(shared) > 3 else ""
        deed.note(f"“{fault.fault}” was told before of yarn that shares {', '.join(first)}"
                  f"{more} with this: look at the suspects on the Desk (Faults).")


def _note_too_many(deed: Deed, fault: FaultIn) -> None:
    """What a customer said is kept as said, and marked where the lot never had so many."""
    if fault.lot is None or fault.count is None:
        return
    of_it = totals(leaves(deed.connection, below(deed.connection, "lot", fault.lot)))
    there = sum(amount.count for amount in of_it.values())
    if fault.count > there:
        deed.note(f"{fault.count} are said to have it, and {there} came of this lot: ask again "
                  "how many, and whether they are all of it.")


def seen_good(
    deed: Deed, yarn: Sequence[int], seen_at: str, report: int | None = None,
    basis: str = "scanned",
) -> None:
    """These were looked at and are good: of the fault of a report, or of all.

    Marked: where one of these faults was told of them before, for that goes on counting.
    """
    if not yarn:
        raise Refused("Nothing was looked at; nothing was saved.", "Scan what you looked at.")
    of = None if report is None else _must_stand(deed, report)
    must_be_known(deed, yarn)
    _note_it_counts_on(deed, yarn, of)
    deed.add_all([Sighting(yarn=one, report=report, faulty=0, seen_at=seen_at, basis=basis)
                  for one in dict.fromkeys(yarn)])
    deed.say(f"seen good: {skeins(len(set(yarn)))}")


def note_told(deed: Deed, yarn: Sequence[int]) -> None:
    """These go to a buyer though a fault was told of them before, and nobody saw them good since.
    """
    told = not_seen_good(deed.connection, yarn)
    for one, some in _together(deed, ((row, one) for row, of in told.items() for one in of)):
        deed.note(told_words(one, _marks(deed, some)))


def _note_it_counts_on(deed: Deed, yarn: Sequence[int], of: str | None) -> None:
    """A good look takes no telling back: the suspects are reckoned with the fault."""
    told = faults_told(deed.connection, yarn)
    for one, some in _together(deed, (
            (row, one) for row, faults in told.items() for one in faults.values()
            if of in (None, one.fault))):
        deed.note(f"“{one.fault}” was told of {_marks(deed, some)} on {day_words(one.at)}, and "
                  "seen good does not take that back: among its suspects the fault counts while "
                  "the report stands. Counter and Packing warn of it no more.")


def _together(
    deed: Deed, told: Iterable[tuple[int, ToldFault]]
) -> Iterable[tuple[ToldFault, Sequence[int]]]:
    """What was told before this deed happened, report by report, with the skeins it is of."""
    found: Mapping[int, list[tuple[int, ToldFault]]] = defaultdict(list)
    for row, one in told:
        if one.at <= deed.happened:
            found[one.report].append((row, one))
    return [(some[0][1], [row for row, _ in some]) for some in found.values()]


def _marks(deed: Deed, yarn: Sequence[int]) -> str:
    """'26·15·R6F 7M and 26·15·R6F 8K', the first few of many."""
    more = [f"{len(yarn) - _NAMED} more"] if len(yarn) > _NAMED else []
    return listing([*(mark_of(deed, row) for row in yarn[:_NAMED]), *more])


def decide_cause(
    deed: Deed, report: int, kind: str, thing: int | None = None, words: str = ""
) -> int:
    """The owner says what it came from; "not found" is an answer, and the newest counts."""
    fault = _must_stand(deed, report)
    if kind not in CAUSES:
        raise Refused("A report is closed with its cause; nothing was saved.",
                      "Choose what it came from, or say that it was not found.")
    if kind not in ("not found", "winder-day") and thing is None:
        raise Refused(f"Which {kind} it came from was not said; nothing was saved.",
                      "Choose it among the suspects.")
    deed.say(f"{fault}: {'the cause was not found' if kind == 'not found' else f'from a {kind}'}")
    return deed.add(Cause(report=report, kind=kind, thing=thing, words=words.strip()))


def told_by_mistake(deed: Deed, report: int) -> None:
    """It was no such fault: the report counts no more, nor does any skein as faulty by it.

    What was seen good beside it stays; its pictures are kept. Why is the deed's own reason.
    """
    fault = _must_stand(deed, report)
    deed.change(Report, report, struck=deed.seq)
    for (sighting,) in deed.all(select(Sighting.id).where(
            Sighting.report == report, Sighting.faulty == 1, Sighting.struck.is_(None))):
        deed.change(Sighting, sighting, struck=deed.seq)
    for (cause,) in deed.all(select(Cause.id).where(
            Cause.report == report, Cause.struck.is_(None))):
        deed.change(Cause, cause, struck=deed.seq)
    deed.say(f"{fault}: told by mistake, it counts no more")


def _must_stand(deed: Deed, report: int) -> str:
    fault: str | None = deed.value(
        select(Report.fault).where(Report.id == report, Report.struck.is_(None)))
    if fault is None:
        raise NotFound("This report is not in the book; nothing was saved.",
                       "Choose it on the Desk again.")
    return fault
