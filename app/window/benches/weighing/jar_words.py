"""What is said of a jar: what is left, of which makers' lots, how strong, until when."""

import re
from calendar import monthrange
from collections.abc import Sequence
from datetime import date, datetime, time
from decimal import Decimal

from app.calculations.jar_balance import WrongJar
from app.calculations.moments import day_words
from app.lookups.jars import JarNow
from app.problems import BadInput
from app.window.benches.weighing.weigh_words import bare
from app.window.parts.amounts import read_grams

_UNTIL = re.compile(r"(20\d\d)[-./](\d\d?)(?:[-./](\d\d?))?|(\d\d?)[-./](20\d\d)", re.ASCII)
_ALIKE_G = Decimal("0.02")  # of two uses: less is within weighing


def grams(mg: int) -> str:
    """'619.1 g'."""
    return f"{bare(Decimal(mg) / 1000)} g"


def parts_words(jar: JarNow) -> str:
    """'22 % p, 78 % q' for a mixture, 'p' alone for one lot."""
    named = [(part.share, part.said or "lot not stated") for part in jar.parts]
    if len(named) == 1:
        return named[0][1]
    return ", ".join(f"{round(share * 100)} % {said}" for share, said in named)


def strength_words(jar: JarNow) -> str:
    """'92 %', or that nobody knows."""
    if jar.strength_permille is None:
        return "not known"
    return f"{bare(Decimal(jar.strength_permille) / 10)} %"


def read_until(text: str) -> datetime | None:
    """The end of the day on a label: `2027-03-31`, or a month, `2027-03` or `03/2027`.

    None where nothing stands there; raises BadInput.
    """
    said = text.strip()
    if not said:
        return None
    parts = _UNTIL.fullmatch(said)
    try:
        if parts is None:
            raise ValueError
        year, month = int(parts[1] or parts[5]), int(parts[2] or parts[4])
        day = int(parts[3] or 0) or monthrange(year, month)[1]
        return datetime.combine(date(year, month, day), time(23, 59)).astimezone()
    except ValueError as why:
        raise BadInput(f"“{said}” is no day.", "Write it like 2027-03-31, or 2027-03.") from why


def read_buying(text: str) -> int | None:
    """Milligrams at which more is bought; none where nothing stands there. Raises BadInput."""
    return round(read_grams(text) * 1000) if text.strip() else None


def to_look_at(jars: Sequence[JarNow], at: datetime) -> str:
    """'To look at: jar 3 K1 black, past 1 Mar 2026; jar 4 N1 navy, buy more.'; '' for nothing."""
    said = "; ".join(f"jar {jar.shown} {jar.dye}, {words}" for jar in jars
                     if (words := warnings(jar, at)))
    return said and f"To look at: {said}."


def warnings(jar: JarNow, at: datetime) -> str:
    """What is to be done about it; '' for nothing."""
    said = []
    if jar.expires and jar.expires < at:
        said.append(f"past {day_words(jar.expires)}")
    if jar.to_buy:
        said.append("buy more")
    elif jar.soon_to_buy:
        said.append("buy soon")
    if jar.nearly_empty:
        said.append("nearly empty")
    return ", ".join(said)


def gap_words(jar: JarNow) -> str:
    """The last weighing against the lines; '' where it was never weighed."""
    if jar.count is None:
        return "Never weighed: what is left is reckoned from its lines."
    gap = jar.count.gap_mg
    off = f"{grams(abs(gap))} {'more' if gap > 0 else 'less'} than" if gap else "just as"
    return f"Weighed {grams(jar.count.weighed_mg)}, {off} its lines say."


def swapped_words(pair: WrongJar) -> str:
    """The wrong-jar pair as a sentence, with the lots it may have gone into.

    Where several uses fit as well as the nearest, none of them is called likely.
    """
    best = abs(pair.uses[0].g - pair.about_g) if pair.uses else Decimal(0)
    lots = list(dict.fromkeys(use.lot for use in pair.uses
                              if abs(use.g - pair.about_g) - best <= _ALIKE_G))
    near = (f", most likely for {lots[0]}" if len(lots) == 1 else
            f", for one of {', '.join(lots)}" if lots else "")
    return (f"About {bare(pair.about_g.quantize(Decimal('0.1')))} g came from jar "
            f"{pair.taken_from} and stands in the book of jar {pair.booked_on}{near}.")
