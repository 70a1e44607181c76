"""Line by line at the balance: a jar is scanned, the weight stands, or the cup is asked about."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from sqlalchemy import select

from app.lookups.balances import BalanceNow, balances_now, least_words
from app.lookups.jars import jars_now
from app.lookups.weigh_sources import Source, against
from app.lookups.weighings import LineThen, WeighOut, net, weigh_out
from app.problems import NotFound, Refused
from app.records import Component, WeighLine
from app.store.deed import Deed
from app.work.sources import amount_words, must_be_one_amount, source_in_book
from app.work.weighing import must_be_open

OFF_PERCENT, DIVISIONS = 2, 2  # whichever is more; common practice, no source
BELOW_LEAST = "below the least of its balance"
WHAT_BECAME = ("kept", "tipped back", "thrown")


@dataclass(frozen=True, slots=True)
class LineIn:
    """A jar or stock at the balance. Without a component the one that asks for its dye is meant.

    Neither fill nor stock: what has no jar in the book, like acid from its bag.
    """

    weighing: int
    component: int | None = None
    fill: int | None = None
    stock: int | None = None
    target_mg: int | None = None
    target_ul: int | None = None
    balance: int | None = None
    """The plate of the balance it stands on."""
    instead_of: bool = False
    """Said by a second scan: this dye is taken in place of the one that is asked."""


@dataclass(frozen=True, slots=True)
class _Asked:
    id: int
    substance: str


def begin_line(deed: Deed, line: LineIn) -> int:
    """Set a jar to the balance: before anything is weighed, a dye that is not asked is refused.

    With `instead_of` it is taken in place of what is asked, and the lot is off its recipe. So is
    a target below the least of its balance, unless it comes on top of what is in. The line, open
    until its weight is taken.
    """
    out = must_be_open(deed, line.weighing)
    source = source_in_book(deed, line.fill, line.stock)
    waiting = next((one for one in out.lines if one.is_open), None)
    if waiting is not None:
        raise Refused(f"{waiting.asked} is not weighed yet; nothing was saved.",
                      "Take its weight, or say what became of the cup.")
    asked = _asked(deed, out, line, source)
    other = _is_other(deed, out, asked, source)
    if other and not line.instead_of:
        raise Refused(other, _way_out(deed, out, asked, source))
    if not asked or net(out.lines, asked.id) <= 0:
        _must_be_weighable(deed, line)
    if source:
        for sentence in against(deed.connection, source, deed.happened):
            deed.note(sentence)
    if other:
        deed.note(f"{source.dye if source else 'This'} is taken instead of "
                  f"{asked.substance if asked else 'what is asked'}: the lot is off its recipe.")
    what = asked.substance if asked else (source.dye if source else None) or "what was scanned"
    deed.say(f"began to weigh {what}" + (f" from {source.words}" if source else ""))
    return deed.add(WeighLine(
        weighing=line.weighing, component=asked.id if asked else None, fill=line.fill,
        stock=line.stock, balance=line.balance, kind="instead of" if other else "taken",
        target_mg=line.target_mg, target_ul=line.target_ul))


def take_weight(
    deed: Deed, line: int, mg: int | None = None, ul: int | None = None,
    balance: int | None = None, division_mg: int = 10, why: str = "",
) -> None:
    """The weight stands: this much went into the cup. Off its target it is said and kept.

    `division_mg` is the reading step of the balance. A weight below the least of its balance is
    kept, and marked.
    """
    then = _open_line(deed, line)
    must_be_one_amount(mg, ul, then.fill, then.stock)
    known = {"balance": balance} if balance is not None else {}
    stands_on = balance if balance is not None else deed.value(
        select(WeighLine.balance).where(WeighLine.id == line))
    if mg is not None and (least := _too_little(deed, stands_on, mg)):
        deed.note(f"{then.asked}: {amount_words(mg, None)} is less than {least}. It is kept; how "
                  "much it is, is less sure than a line should be.")
        why = why or BELOW_LEAST
    deed.change(WeighLine, line, mg=mg, ul=ul, taken=deed.seq, why=why, **known)
    _say_off(deed, then, mg, ul, division_mg)
    source = source_in_book(deed, then.fill, then.stock)
    left = None if source is None else (
        source.stock.left_ul if source.stock else source.jar.left_mg if source.jar else None)
    if left is not None and left < 0:
        deed.note(f"More was taken out of {then.source} than was in it by the book: weigh it.")
    deed.say(f"weighed {amount_words(mg, ul)} {then.asked}")


def _balance(deed: Deed, plate: int | None) -> tuple[BalanceNow | None, Sequence[BalanceNow]]:
    """The balance with this plate, and the others."""
    known = balances_now(deed.connection) if plate is not None else ()
    return (next((one for one in known if one.plate == plate), None),
            [one for one in known if one.plate != plate])


def _too_little(deed: Deed, plate: int | None, mg: int) -> str:
    """What its balance weighs least, where this is less; '' where it may be weighed."""
    on, _ = _balance(deed, plate)
    if on is None or on.facts.can_weigh(Decimal(mg) / 1000):
        return ""
    return least_words(on.facts, on)


def _must_be_weighable(deed: Deed, line: LineIn) -> None:
    if not line.target_mg or not (least := _too_little(deed, line.balance, line.target_mg)):
        return
    grams = Decimal(line.target_mg) / 1000
    finer = next((one for one in _balance(deed, line.balance)[1] if one.facts.can_weigh(grams)),
                 None)
    deed.refuse(
        f"{amount_words(line.target_mg, None)} is less than {least}; nothing was weighed.",
        f"On {finer.title} it can be weighed." if finer else
        f"Take {grams * 100:.1f} mL of a 1 % stock, or ten times as much of one in ten of it.")


def _say_off(deed: Deed, then: LineThen, mg: int | None, ul: int | None, division_mg: int) -> None:
    for target, got, step in ((then.target_mg, mg, division_mg), (then.target_ul, ul, 0)):
        if not target or got is None:
            continue
        off = abs(got - target)
        if off > max(target * OFF_PERCENT / 100, DIVISIONS * step):
            deed.note(f"{then.asked}: {amount_words(mg, ul)} for "
                      f"{amount_words(then.target_mg, then.target_ul)}, "
                      f"{off * 100 / target:.1f} % too {'much' if got > target else 'little'}.")


def what_became(
    deed: Deed, line: int, what: str, mg: int | None = None, ul: int | None = None
) -> None:
    """The answer for a cup that stood on the balance when all stopped.

    Kept: it goes into the bath. Tipped back: the jar has it again. Thrown: the jar is poorer by
    it and the bath gets none; where nobody knows how much, the jar must be weighed.
    """
    then = _open_line(deed, line)
    if what not in WHAT_BECAME:
        raise Refused(f"A cup is not {what}; nothing was saved.",
                      "Say whether it was kept, tipped back or thrown.")
    if what == "kept":
        take_weight(deed, line, mg, ul, why="kept after a stop")
        return
    if mg is not None or ul is not None:
        must_be_one_amount(mg, ul, then.fill, then.stock)
    if what == "thrown":
        deed.change(WeighLine, line, kind="thrown", mg=mg, ul=ul, taken=deed.seq)
        if mg is None and ul is None:
            deed.note(f"How much was thrown is not known: weigh {then.source} again.")
    else:
        deed.change(WeighLine, line, mg=mg or (0 if ul is None else None), ul=ul, taken=deed.seq,
                    why="tipped back after a stop")
        if mg or ul:
            _back(deed, then, mg, ul)
    deed.say(f"{then.asked} was {what}" + (f": {amount_words(mg, ul)}" if mg or ul else ""))


def tip_back(deed: Deed, line: int, mg: int | None = None, ul: int | None = None) -> int:
    """Some of what was weighed goes back to its jar: a line of its own, nothing is deleted."""
    out, then = _line(deed, line)
    if then.is_open or then.kind not in ("taken", "instead of"):
        raise Refused("Nothing of this line can be tipped back; nothing was saved.",
                      "Choose a line whose weight was taken.")
    must_be_one_amount(mg, ul, then.fill, then.stock)
    if (mg or ul or 0) > net(out.lines, then.component, then):
        raise Refused(f"{amount_words(mg, ul)} is more than was weighed; nothing was saved.",
                      "Weigh what goes back.")
    deed.say(f"tipped {amount_words(mg, ul)} {then.asked} back to {then.source}")
    return _back(deed, then, mg, ul, out.id)


def _asked(deed: Deed, out: WeighOut, line: LineIn, source: Source | None) -> _Asked | None:
    """What the recipe asks at this line: as said, else the component that is this jar's dye."""
    if out.recipe_version is None:
        return None
    rows = [_Asked(row.id, row.substance) for row in deed.all(
        select(Component.id, Component.substance)
        .where(Component.recipe_version == out.recipe_version, Component.struck.is_(None))
        .order_by(Component.place))]
    if line.component is not None:
        found = next((one for one in rows if one.id == line.component), None)
        if found is None:
            raise Refused("This recipe does not ask that; nothing was saved.",
                          "Choose a line of this recipe.")
        return found
    fitting = [one for one in rows if source and _same(one.substance, source.dye)]
    waiting = [one for one in fitting if net(out.lines, one.id) <= 0]
    return next(iter(waiting or fitting), None)


def _is_other(
    deed: Deed, out: WeighOut, asked: _Asked | None, source: Source | None
) -> str:
    """Why a source is not what is asked; '' where it is, or where nobody can tell."""
    if source is None or source.dye is None:
        return ""
    jar = f"{source.words[:1].upper()}{source.words[1:]} holds {source.dye}"
    if asked is not None and not _same(asked.substance, source.dye):
        return f"{jar}, and {asked.substance} is asked; nothing was weighed."
    has_dyes = out.recipe_version is not None and deed.value(select(Component.id).where(
        Component.recipe_version == out.recipe_version, Component.struck.is_(None)))
    if asked is None and has_dyes:
        return f"{jar}, which is not in this recipe; nothing was weighed."
    return ""


def _way_out(deed: Deed, out: WeighOut, asked: _Asked | None, source: Source | None) -> str:
    if asked is None:
        return ("Take a jar of this recipe, or choose the line that it is taken for and scan it "
                "again.")
    right = [jar.shown for jar in jars_now(deed.connection) if _same(jar.dye, asked.substance)]
    take = f"Take jar {' or '.join(right)}" if right else f"Take the jar with {asked.substance}"
    return f"{take}, or scan this one again to take it instead."


def _same(one: str, other: str | None) -> bool:
    return other is not None and one.casefold().split() == other.casefold().split()


def _line(deed: Deed, line: int) -> tuple[WeighOut, LineThen]:
    weighing = deed.value(select(WeighLine.weighing).where(
        WeighLine.id == line, WeighLine.struck.is_(None)))
    out = None if weighing is None else weigh_out(deed.connection, weighing)
    if out is None:
        raise NotFound("This line is not in the book; nothing was saved.",
                       "Look at the open weigh-outs again.")
    return out, next(one for one in out.lines if one.id == line)


def _open_line(deed: Deed, line: int) -> LineThen:
    _, then = _line(deed, line)
    if not then.is_open:
        raise Refused(f"The weight of {then.asked} was taken already; nothing was saved.",
                      "Begin another line for what goes in on top.")
    return then


def _back(
    deed: Deed, then: LineThen, mg: int | None, ul: int | None, weighing: int | None = None
) -> int:
    weighing = weighing or deed.value(select(WeighLine.weighing).where(WeighLine.id == then.id))
    return deed.add(WeighLine(
        weighing=weighing, component=then.component, fill=then.fill, stock=then.stock,
        kind="tipped back", mg=-mg if mg else None, ul=-ul if ul else None, taken=deed.seq))
