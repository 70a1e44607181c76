"""What is said of a jar: what is left, of which makers' lots, how strong, until when."""

from datetime import datetime
from decimal import Decimal

from app.calculations.jar_balance import WrongJar
from app.calculations.moments import day_words
from app.lookups.jars import JarNow
from app.window.benches.weighing.weigh_words import bare


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


def warnings(jar: JarNow, at: datetime) -> str:
    """What is to be done about it; '' for nothing."""
    said = []
    if jar.expires and jar.expires < at:
        said.append(f"past {day_words(jar.expires)}")
    if jar.to_buy:
        said.append("buy more")
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
    """The wrong-jar pair as a sentence, with the lot it may have gone into."""
    near = f", most likely for {pair.uses[0].lot}" if pair.uses else ""
    return (f"About {bare(pair.about_g.quantize(Decimal('0.1')))} g came from jar "
            f"{pair.taken_from} and stands in the book of jar {pair.booked_on}{near}.")
