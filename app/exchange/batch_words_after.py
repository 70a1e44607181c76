"""How a batch record says what came after the bath: loads, yields, counts, tags, holds, where."""

import json
from collections.abc import Iterator

from app.calculations.codes import shown
from app.calculations.moments import moment_words
from app.documents.batch_record import DID, WHEN, Listed, Said
from app.documents.sheet import Column
from app.documents.typesetting import Face
from app.exchange.batch_words import NOT_WRITTEN, grams, names, when
from app.exchange.tracing import STATE_WORDS
from app.lookups.batch_record import BatchRecord
from app.lookups.lot_holds import LotHold
from app.lookups.lot_loads import LotLoad
from app.lookups.lot_now import NowAt
from app.lookups.lot_tags import LotTags, TagThen
from app.lookups.lot_yield import YieldAt
from app.work.readings import BLEEDING

DONE = ("soak", "wash", "spin", "rail")

_YIELD = (
    Column("step", 0, 24), Column("skeins", 40, 14, "right", Face.CODE_BOLD),
    Column("of", 52, 10, "right", Face.CODE), Column("share", 70, 16, "right", Face.CODE),
    Column("as wound", 90, 19, "right", Face.CODE),
    Column("of expected", 112, 20, "right", Face.CODE), WHEN, DID,
)
_COUNT = (Column("counted, by tie", 0, 60), Column("skeins", 80, 14, "right", Face.CODE_BOLD),
          WHEN, DID)
_TAGS = (Column("tag", 0, 24, face=Face.CODE_BOLD), Column("what became of it", 26, 86),
         WHEN, DID)
_NOW = (
    Column("skeins", 12, 12, "right", Face.CODE_BOLD), Column("where", 15, 38),
    Column("order", 55, 24), Column("customer", 81, 20),
    Column("as wound", 112, 17, "right", Face.CODE), Column("since", 115.5, 24),
)
_MARKED = (Column("entry", 0, 12, face=Face.CODE), Column("what was done, and marked", 14, 99),
           WHEN, DID)


def loads(record: BatchRecord) -> Iterator[Said | Listed]:
    """Soak, wash, spin, rail, steamer, with the other lots that were in them."""
    for load in record.loads:
        yield Said(_load_words(load), moment_words(load.at), load.person)
    for step in DONE:
        if step not in {load.step for load in record.loads}:
            yield Said(f"{step.capitalize()}: {NOT_WRITTEN}.")


def yields(record: BatchRecord) -> Iterator[Said | Listed]:
    """Skeins and weight at each step against what was expected; weights that were read."""
    yield Listed(_YIELD, tuple(map(_yield_cells, record.yields)))
    for read in record.weights:
        yield Said(f"Weighed: {grams(read.mg, 1)}.", moment_words(read.at), read.person)
    if not record.weights:
        yield Said(f"Weight of the dry skeins: {NOT_WRITTEN}.")


def counts(record: BatchRecord) -> Iterator[Said | Listed]:
    """The finishing count by tie colour, against what came out of the bath."""
    if not record.counts:
        yield Said(f"Finishing count: {NOT_WRITTEN}.")
        return
    rows = tuple((f"{one.ties} ties" if one.ties != "no tie" else one.ties, str(one.count),
                  moment_words(one.at), one.person) for one in record.counts)
    total = sum(one.count for one in record.counts)
    yield Listed(_COUNT, rows, ("together", str(total), "", ""))
    if total != record.count:
        yield Said(f"{record.count} went into the bath: {abs(total - record.count)} "
                   f"{'missing' if total < record.count else 'too many'} at the count.")


def shade(record: BatchRecord) -> Iterator[Said | Listed]:
    """The yarn itself stands for the colour; no measure of it is in the book."""
    yield Said(f"Shade against the standard: {NOT_WRITTEN}. Write it beside the card, with lamp "
               "and step.")


def tags(lot: LotTags) -> Iterator[Said | Listed]:
    """Every tag accounted for, and the words that were printed on them."""
    if not lot.tags:
        yield Said("No tag was printed.")
        return
    here = lot.counts
    yield Said(f"Printed {len(lot.tags)} = on skeins {here['hangs']} + void or spoiled "
               f"{here['void']} + waiting {here['waiting']}.")
    for printed in dict.fromkeys((one.printed, one.printed_by, one.stock, one.why)
                                 for one in lot.tags):
        at, person, stock, why = printed
        many = sum(1 for one in lot.tags if one.printed == at)
        yield Said(f"Printed {many} on {stock}{f', because {why}' if why else ''}.",
                   moment_words(at), person)
    for count in lot.in_hand:
        differs = f", {count.by_the_book} by the book: {count.why}" if count.unexplained else ""
        yield Said(f"Counted in hand {count.count}{differs}.", moment_words(count.counted),
                   count.person)
    yield Listed(_TAGS, tuple(map(_tag_cells, lot.tags)))
    for words in lot.words:
        yield Said(f"The words on the tag, as printed: {_printed(words)}")


def holds(record: BatchRecord) -> Iterator[Said | Listed]:
    """Each hold that reached the lot, lifted ones too, with what was cleared."""
    if not record.holds:
        yield Said("None reaches this lot, now or before.")
    for hold in record.holds:
        yield from _hold_words(hold)


def now(record: BatchRecord) -> Iterator[Said | Listed]:
    """Where the skeins are, in totals; buyers by their numbers."""
    if not record.now.rows:
        yield Said("Nothing is left of it.")
        return
    rows = tuple(map(_now_cells, record.now.rows))
    mg = sum(row.mg for row in record.now.rows)
    yield Listed(_NOW, rows, (str(record.now.count), "together", "", "", grams(mg, 1), ""))
    if record.now.seconds:
        yield Said("1 of them is a second." if record.now.seconds == 1
                   else f"{record.now.seconds} of them are seconds.")


def marked(record: BatchRecord) -> Iterator[Said | Listed]:
    """What was warned of, corrected or taken back; the old entry stays in the journal."""
    if not record.marked:
        yield Said("Nothing was marked, corrected or taken back.")
        return
    yield Listed(_MARKED, tuple(
        (f"{one.seq:,}", " ".join((f"{one.said}{' – TAKEN BACK' if one.undone else ''}.",
                                   *one.findings, *([f"Why: {one.reason}."] if one.reason else ()))
                                  ).replace("→", "to"),
         moment_words(one.happened), one.person) for one in record.marked))


def _load_words(load: LotLoad) -> str:
    skeins = "1 skein" if load.count == 1 else f"{load.count} skeins"
    rinses = [read.value for read in load.read("rinse")]
    bleeds = [BLEEDING[read.value] for read in load.read("bleed")]
    room = load.read("room decidegrees"), load.read("room permille")
    said = [f"{load.step.capitalize()} {load.load}{f' in {load.where}' if load.where else ''}: "
            f"{skeins}, with {', '.join(load.others) or 'no other lot'}"]
    if load.step == "wash":
        said += [f"rinses {max(rinses)}" if rinses else f"rinses {NOT_WRITTEN}",
                 f"bleeding {' then '.join(bleeds)}" if bleeds else "no bleeding was marked"]
    said += [f"room {read.value / 10:g} °C" for read in room[0]]
    said += [f"humidity {read.value / 10:g} %" for read in room[1]]
    return f"{'; '.join(said)}."


def _yield_cells(one: YieldAt) -> tuple[str, ...]:
    if not one.most and one.at is None:
        return one.step, "–", str(one.expected), "", "", "", NOT_WRITTEN, ""
    span = str(one.least) if one.least == one.most else f"{one.least} to {one.most}"
    share = f"{one.least * 100 / one.expected:.1f} %" if one.expected else ""
    of_weight = f"{one.mg * 100 / one.expected_mg:.1f} %" if one.mg and one.expected_mg else ""
    return (one.step, span, str(one.expected), share, grams(one.mg, 1), of_weight, when(one.at),
            names(one.people))


def _tag_cells(tag: TagThen) -> tuple[str, ...]:
    if tag.void is None:
        return (shown(tag.mark), "tied on" if tag.hangs else "waits for its skein",
                moment_words(tag.tied_on or tag.printed), tag.tied_on_by or tag.printed_by)
    came_off = "tied on, came off, void" if tag.tied_on else "spoiled, void"
    after = f"; {shown(tag.successor)} took its place" if tag.successor else ""
    return shown(tag.mark), f"{came_off}{after}", moment_words(tag.void), tag.void_by or ""


def _printed(words: str) -> str:
    """The words as they stood on the tag; codes apart from it are no words."""
    said = json.loads(words)
    parts = [str(value) for value in said.values() if isinstance(value, str) and value]
    return " / ".join(" ".join(part.replace("|", " ").split()) for part in parts) or NOT_WRITTEN


def _hold_words(hold: LotHold) -> Iterator[Said]:
    facts = hold.facts
    yield Said(f"HOLD on {facts.on}: {facts.why}.", moment_words(facts.since), facts.person)
    for one in hold.cleared:
        yield Said(f"Cleared of it, some or all: {one.evidence}.", moment_words(one.at),
                   one.person)
    if hold.lifted is None:
        yield Said("It stands.")
    else:
        yield Said("Lifted.", moment_words(hold.lifted), hold.lifted_by or "")


def _now_cells(row: NowAt) -> tuple[str, ...]:
    span = str(row.most) if row.least == row.most else f"{row.least} to {row.most}"
    state = STATE_WORDS.get(row.state, row.state)
    state = f"{state}, {row.place}" if row.place else state
    state = state if row.put_up == "skein" else f"{state}, as {row.put_up}s"
    buyer = f"customer {row.customer}" if row.customer else (
        "not known" if row.state.startswith("sent") else "")
    return (span, state, row.order or "", buyer, grams(row.mg, 1),
            "" if row.since is None else moment_words(row.since))
