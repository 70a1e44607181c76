"""How a batch record says what the book keeps: weights, moments, readings, the recipe as it was."""

from collections.abc import Iterable, Iterator
from datetime import datetime
from fractions import Fraction

from app.calculations.moments import moment_words
from app.calculations.pot_words import CLEARNESS
from app.documents.batch_record import DID, WHEN, Listed, Said
from app.documents.sheet import Column
from app.documents.typesetting import Face
from app.lookups.batch_record import BatchRecord, RecipeUsed, YarnIn
from app.lookups.jars import JarNow
from app.lookups.lot_bath import BathRead, LotBath
from app.lookups.weighings import LineThen

NOT_KNOWN, NOT_WRITTEN = "not known", "not written"

_CONES = (
    Column("cone", 0, 17, face=Face.CODE_BOLD), Column("net g", 30, 13, "right", Face.CODE),
    Column("batch", 33, 17), Column("supplier", 52, 24), Column("note", 78, 15),
    Column("how sure", 94, 54),
)
_WEIGHED = (
    Column("what", 0, 35), Column("from", 37, 24), Column("wanted", 77, 15, "right", Face.CODE),
    Column("taken", 94, 16, "right", Face.CODE), Column("off", 112, 15, "right", Face.CODE),
    WHEN, DID,
)
_READINGS = (
    Column("done, read", 0, 60), Column("°C", 71, 9, "right", Face.CODE),
    Column("pH", 83, 9, "right", Face.CODE), Column("bath", 87, 26), WHEN, DID,
)


def when(moment: datetime | None) -> str:
    """'9 Apr 08:44', or that it is not written."""
    return NOT_WRITTEN if moment is None else moment_words(moment)


def grams(mg: int | None, places: int = 2) -> str:
    """'6.58 g', '' for nothing."""
    return "" if mg is None else f"{mg / 1000:,.{places}f} g"


def amount(mg: int | None, ul: int | None) -> str:
    """'6.58 g', '10.519 g' as it is kept, '49.5 mL', '' for neither."""
    if mg is not None:
        return grams(mg, 3 if mg % 10 else 2)
    return "" if ul is None else f"{ul / 1000:,.1f} mL"


def yarn_in(record: BatchRecord) -> Iterator[Said | Listed]:
    """The cones with their batches, and how sure it is that the lot came of them."""
    if record.yarn_in:
        yield Listed(_CONES, tuple(map(_cone_cells, record.yarn_in)))
    if not record.yarn_in or not record.cones_known:
        yield Said("The cone is not known of all of this yarn."
                   if record.yarn_in else "The cones are not known.")
    cords = record.bath.cords if record.bath else ()
    for cord in (cord for cord in cords if cord.lot == record.found.id):
        disc = f"disc {cord.disc}" if cord.disc else "no disc"
        skeins = f"1 {cord.put_up}" if cord.count == 1 else f"{cord.count} {cord.put_up}s"
        yield Said(f"Wound, on {disc}: {skeins}, {grams(cord.mg, 1)} as wound, "
                   f"{cord.tie or 'no'} ties.")


def recipe(used: RecipeUsed | None) -> Iterator[Said | Listed]:
    """The version as it was, and what the next one changed."""
    if used is None:
        yield Said("Not known: the lot is older than the book.")
        return
    was = used.recipe
    yield Said(f"{was.name}, version {was.number}, as it was written"
               f"{f': {was.reason}' if was.reason else ''}.", when(was.written), was.person)
    if not used.amounts:
        yield Said("What is in it is not written in the book.")
    for one in used.amounts:
        yield Said(f"{one.named}: {one.words}{' of the dry fibre' if one.unit == 'owf' else ''}")
    ratio = "liquor not written" if was.liquor_tenths is None else (
        f"liquor {was.liquor_tenths / 10:g} : 1")
    yield Said(f"{(was.look or 'look not written').capitalize()}, for "
               f"{was.base_class or 'a base not written'}, {ratio}; poured in this order.")
    for step in was.steps:
        heat = "" if step.decidegrees is None else f", {step.decidegrees / 10:g} °C"
        yield Said(f"Step: {step.words}{heat}"
                   f"{'' if step.minutes is None else f', {step.minutes} min'}")
    if used.next_number is None:
        yield Said("No later version.")
    else:
        yield Said(f"Version {used.next_number} came after it"
                   f"{f' ({used.next_reason})' if used.next_reason else ''}: "
                   f"{_plain(used.changed) or 'nothing that is written changed'}.")


def weighed(record: BatchRecord) -> Iterator[Said | Listed]:
    """Every line at the balance, the fills with their makers' lots, and what is off the recipe."""
    lines = record.weighed.lines
    if lines:
        yield Listed(_WEIGHED, tuple(map(_line_cells, lines)))
    else:
        yield Said("Not known: nothing was weighed out for this lot in the book.")
    balances = dict.fromkeys(line.balance for line in lines if line.balance)
    yield Said(f"Balance: {', '.join(balances) or NOT_WRITTEN}.")
    for jar in record.fills:
        yield Said(_fill_words(jar))
    if lines and not record.weighed.known:
        yield Said("Not every dye was scanned, so which fills are in it is not known for all.")
    if record.weighed.off_recipe:
        yield Said(f"OFF RECIPE: {'; '.join(record.weighed.off_recipe)}.")
    elif record.weighed.known:
        yield Said("On its recipe, as far as is known.")


def bath(was: LotBath | None) -> Iterator[Said | Listed]:
    """Pot, volume, times and what was read."""
    if was is None:
        yield Said("Not known: the lot is older than the book.")
        return
    place = f"Pot {was.pot}" if was.pot else (
        "Steamed" if was.boards else "Which pot is not written")
    volume = f"{was.bath_ml / 1000:g} L" if was.bath_ml else f"volume {NOT_WRITTEN}"
    yield Said(f"{place}, {volume}. The code was given here.", when(was.begun), was.person)
    for one in was.boards:
        yield Said(f"Board {one.board or NOT_WRITTEN}, painted from bottle set {one.bottle_set}.")
    if was.readings:
        yield Listed(_READINGS, tuple(map(_reading_cells, was.readings)))
    for kind, read in (("pH", [one.ph_centi for one in was.readings]),
                       ("heat", [one.decidegrees for one in was.readings]),
                       ("clearness", [one.clearness for one in was.readings])):
        if all(value is None for value in read):
            yield Said(f"{kind}: {NOT_WRITTEN}.")
    yield Said("Lifted.", when(was.lifted), was.lifted_by or "") if was.lifted else Said(
        f"Lifting: {NOT_WRITTEN}.")


def _cone_cells(one: YarnIn) -> tuple[str, ...]:
    cone = one.cone
    return (f"{cone.code[0]}·{cone.code[1:-1]}·{cone.code[-1]}", f"{cone.net_mg / 1000:,.0f}",
            cone.batch or "not stated", cone.supplier,
            "opening stock" if cone.opening_stock else cone.note_no, one.sure)


def _line_cells(line: LineThen) -> tuple[str, ...]:
    kind = {"taken": "", "addition": ", added at the pot"}.get(line.kind, f", {line.kind}")
    if line.kind == "instead of":
        kind = " was asked: instead of it"
    why = f" ({line.why})" if line.why and line.why != line.asked else ""
    taken = "open" if line.is_open else amount(line.mg, line.ul) or NOT_KNOWN
    by_hand = line.role == "assistant" and line.fill is None and line.stock is None
    return (f"{line.asked}{kind}{why}", "without a jar" if by_hand else line.source,
            amount(line.target_mg, line.target_ul) or "–",
            taken.replace("-", "−"), "" if line.off is None else _percent(line.off),
            moment_words(line.taken or line.begun), line.person)


def _reading_cells(read: BathRead) -> tuple[str, ...]:
    water = "" if read.water_ml is None else f"{read.water_ml / 1000:g} L of water added"
    return (", ".join(filter(None, (read.done, water))) or "read",
            "" if read.decidegrees is None else f"{read.decidegrees / 10:g}",
            "" if read.ph_centi is None else f"{read.ph_centi / 100:.2f}",
            "" if read.clearness is None else CLEARNESS[read.clearness],
            moment_words(read.at), read.person)


def _fill_words(jar: JarNow) -> str:
    strength = ("strength not known" if jar.strength_permille is None
                else f"{jar.strength_permille / 10:g} % of the standard")
    lots = ", ".join(
        f"{part.said or 'lot not stated'} of {part.supplier}"
        + ("" if part.share == 1 else f" {round(part.share * 100)} %") for part in jar.parts)
    return f"Jar {jar.shown}, fill {jar.number}, {jar.dye}: {strength}; {lots}."


def _percent(share: Fraction) -> str:
    return f"{float(share) * 100:+.1f} %".replace("-", "−")


def _plain(words: str) -> str:
    """An arrow that the face lacks, in a word."""
    return words.replace("→", "to")


def names(people: Iterable[str]) -> str:
    """Initials one after the other, each once; or that nobody is written."""
    return ", ".join(dict.fromkeys(one for one in people if one)) or NOT_WRITTEN
