"""How a lot looks: its cards against the standard and the lot before, by eye, and the verdict."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from app.calculations.cards import Cards, Compared, compared, why_not
from app.calculations.codes import shown
from app.calculations.grey_scales import Step
from app.calculations.shade import Lamp
from app.calculations.shade_difference import Drift, doubts
from app.lookups.shades import CardRead, lots_read, newest, read_of_lots, read_of_standard
from app.records import ChosenSwatch, DeedRow, DyeLot, GreyStep, Verdict

TEN = 10
"""Half steps of a 5, which is no change."""


@dataclass(frozen=True, slots=True)
class ByEye:
    """A step of the grey scale: against the standard, or against another lot by its code."""

    step: Step
    scale: str
    against: str | None
    lamp: str
    at: datetime
    person: str


@dataclass(frozen=True, slots=True)
class VerdictNow:
    """What the inspector decided last; it never lifts a hold."""

    verdict: str
    name: str
    why: str
    at: datetime
    person: str


@dataclass(frozen=True, slots=True)
class Before:
    """The lot of this colourway and base that was dyed before and was read alike."""

    code: str
    compared: Compared


@dataclass(frozen=True, slots=True)
class LotShade:
    """All that is known of a lot's look. `swatch` was chosen by eye where nothing was measured."""

    lot: int
    cards: tuple[CardRead, ...]
    """The newest of each zone and each way of looking."""
    from_standard: Compared | None
    standard_why_not: str
    """Why it is not held against the standard; '' where it is."""
    from_last: Before | None
    by_eye: tuple[ByEye, ...]
    swatch: str | None
    verdict: VerdictNow | None
    findings: tuple[str, ...]

    @property
    def basis(self) -> str:
        """'measured', 'by eye' or 'not measured'."""
        return "measured" if self.cards else "by eye" if self.by_eye else "not measured"


def lot_shade(connection: Connection, lot: int) -> LotShade:
    """One lot."""
    row = connection.execute(
        select(DyeLot.colourway, DyeLot.base).where(DyeLot.id == lot)).one()
    read = read_of_lots(connection, [lot]).get(lot, ())
    cards = newest(read)
    standard = newest(read_of_standard(connection, row.colourway, row.base))
    before = _before(connection, lot, cards, row.colourway, row.base)
    against = compared(standard, cards)
    return LotShade(
        lot, tuple({one.looked: one for one in reversed(read)}.values())[::-1], against,
        "" if against else why_not(standard, cards)[0], before, _by_eye(connection, lot),
        connection.execute(
            select(ChosenSwatch.swatch)
            .where(ChosenSwatch.lot == lot, ChosenSwatch.struck.is_(None))
            .order_by(ChosenSwatch.id.desc()).limit(1)).scalar(),
        verdict_of(connection, lot), _findings(cards, standard, against, before))


def verdict_of(connection: Connection, lot: int) -> VerdictNow | None:
    """The newest verdict of a lot, or none."""
    row = connection.execute(
        select(Verdict.verdict, Verdict.name, Verdict.why, DeedRow.happened, DeedRow.person)
        .join(DeedRow, DeedRow.seq == Verdict.deed)
        .where(Verdict.lot == lot, Verdict.struck.is_(None))
        .order_by(DeedRow.happened.desc(), Verdict.id.desc()).limit(1)).first()
    return None if row is None else VerdictNow(*row)


def _before(
    connection: Connection, lot: int, cards: Cards, colourway: int, base: int
) -> Before | None:
    """The nearest lot before this one that has a card which was looked at alike."""
    earlier = [one for one in lots_read(connection, colourway, base) if one < lot] if cards else []
    read = read_of_lots(connection, earlier[-10:])
    for one in reversed(earlier[-10:]):
        against = compared(newest(read[one]), cards)
        if against is not None:
            code = connection.execute(select(DyeLot.code).where(DyeLot.id == one)).scalar()
            return Before(shown(code or "a lot without a code"), against)
    return None


def _by_eye(connection: Connection, lot: int) -> tuple[ByEye, ...]:
    """The newest step of each scale, against the standard and against each other lot."""
    rows = connection.execute(
        select(GreyStep.half_steps, GreyStep.scale, GreyStep.against, DyeLot.code, GreyStep.lamp,
               DeedRow.happened, DeedRow.person)
        .join(DeedRow, DeedRow.seq == GreyStep.deed)
        .outerjoin(DyeLot, DyeLot.id == GreyStep.against)
        .where(GreyStep.lot == lot, GreyStep.struck.is_(None))
        .order_by(DeedRow.happened, GreyStep.id))
    last = {(row.scale, row.against): row for row in rows}
    return tuple(
        ByEye(list(Step)[TEN - row.half_steps], row.scale,
              None if row.against is None else shown(row.code or "a lot without a code"),
              row.lamp, row.happened, row.person)
        for row in reversed(last.values()))


def _findings(
    cards: Cards, standard: Cards, against: Compared | None, before: Before | None
) -> tuple[str, ...]:
    """What makes the look of a lot less sure than it seems, in sentences."""
    said = [(f"Zone {zone}: " if zone else "") + sentence
            for (_, zone), colour in cards.items() for sentence in doubts(colour)]
    if against is None and cards and standard:
        said.append(" ".join(why_not(standard, cards)))
    if against is not None and against.by_lamp:
        said.append("It differs by lamp: near the standard in one light and not in another. "
                    "Look in daylight and under the lamp of the shop.")
    if against is not None and before is not None:
        said += _hidden(against, before)
    return tuple(said)


def _hidden(against: Compared, before: Before) -> list[str]:
    """Drift that each step hides, in the same light and zone."""
    found = []
    for looked, from_standard in against.differences.items():
        step = before.compared.differences.get(looked)
        if step and looked[0].lamp is Lamp.D65 and Drift(from_standard, step).is_hidden():
            found.append(
                f"It drifts: only {step} from the last lot, {before.code}, and yet "
                f"{from_standard} from the standard. Hold it against the standard.")
    return found
