"""What the weigh bench says: grams and millilitres, where the dry weight is from, what to do."""

import re
from decimal import Decimal

from app.calculations.balances import Balance
from app.calculations.measuring import MakeUp, Pouring
from app.calculations.scaling import DryWeight
from app.lookups.at_balance import AtBalance, Wanted
from app.lookups.balances import least_words
from app.lookups.jars import JarNow
from app.lookups.weighings import LineThen, WeighOut
from app.problems import BadInput, Refused
from app.scanning.balance_lines import NoWeight, read_line
from app.window.parts.amounts import read_grams

_READING = re.compile(r"\s*[+]?\s*([0-9][0-9.,]*)\s*(mL|ml)?\s*", re.ASCII)


SLIP = 5
"""So many times off, up or down, is rather a slipped point than a spoon too much."""


def thousandths(amount: Decimal | None) -> int | None:
    """Milligrams of grams, or microlitres of millilitres."""
    return None if amount is None else round(amount * 1000)


def slip(amount: Decimal, target: int | None, unit: str) -> Refused | None:
    """What is asked of a weight that is far from its target, in thousandths; none where it fits."""
    if not target or amount <= 0 or 1 / SLIP < amount * 1000 / target < SLIP:
        return None
    return Refused(
        f"{amount:f} {unit}, where {Decimal(target) / 1000:.3g} {unit} is asked: is the point in "
        "its place? Nothing was taken.",
        f"Write it again, or Enter once more if {amount:f} {unit} is in the cup.")


def bare(number: Decimal) -> str:
    """'5.12', '60.2', '12'."""
    text = f"{number.normalize():f}"
    return text if text != "-0" else "0"


def at_step(grams: Decimal, step: Decimal) -> str:
    """Grams as the balance shows them: '5.10' where it reads to a hundredth."""
    return f"{grams.quantize(step):f}"


def millilitres(ml: Decimal) -> str:
    """'60.2', to the tenth of a millilitre."""
    return bare(ml.quantize(Decimal("0.1")))


def read_millilitres(text: str) -> Decimal:
    """Millilitres from `60.2` or `60.2 mL`; raises BadInput."""
    try:
        return read_grams(re.sub(r"\s*m[lL]\.?\s*$", "", text))
    except BadInput as why:
        raise BadInput(why.what.replace("weight", "volume"), "Write millilitres, like 60.2."
                       ) from why


def reading_of(text: str) -> str:
    """The figures of what a balance types, `+ 2.408 g`; '' where it is no reading.

    Raises BadInput where it is one that cannot be taken: carats, below zero, still moving.
    """
    if plain := _READING.fullmatch(text):
        return plain[1]
    said = read_line(text)
    if isinstance(said, NoWeight):
        if not said.is_noise and any(character.isdigit() for character in text):
            raise BadInput(said.sentence)
        return ""
    if not said.has_unit:
        return ""
    if said.g < 0 or said.steady is False:
        raise BadInput(f"“{text.strip()}” is {'below zero' if said.g < 0 else 'still moving'}; "
                       "nothing was taken.", "Let the balance stand, and press its key again.")
    return said.figures


def dry_words(out: WeighOut, dry: DryWeight | None) -> str:
    """'602 g dry from winding'; a damp weight with its range, marked as a fallback."""
    if dry is None:
        return "dry weight not known"
    grams = bare(dry.g.quantize(Decimal("0.1")))
    if out.dry_basis == "weighed damp" and out.pick_up_permille is not None:
        return (f"{grams} g dry, reckoned from damp at {out.pick_up_permille / 10:g} % pick-up "
                f"({dry.least_g:.0f} to {dry.most_g:.0f} g): a fallback")
    return f"{grams} g {'dry from winding' if out.dry_basis == 'wound' else 'weighed dry'}"


def for_what(now: AtBalance) -> str:
    """The dry weight and where it is from, the ratio and the bath."""
    said = [dry_words(now.out, now.dry)]
    if now.recipe and now.recipe.liquor_tenths:
        said.append(f"{now.recipe.liquor_tenths / 10:g} : 1")
    if now.bath_l is not None:
        said.append(f"{bare(now.bath_l.quantize(Decimal('0.01')))} L bath")
    return " · ".join(said)


def title(out: WeighOut) -> str:
    """'Ferry Ledger, version 4'."""
    if out.colourway is None:
        return "A stock solution"
    return f"{out.colourway}, version {out.version}"


def plates(jars: tuple[JarNow, ...]) -> str:
    """'jar 3', 'jar 3 or 7', or that there is none."""
    if not jars:
        return "no jar of it in the book"
    return "jar " + " or ".join(jar.shown for jar in jars)


def way_out(wanted: Wanted, now: AtBalance) -> str:
    """Why the powder is not weighed, the stock volume that gives it, and the balance that could."""
    powder = wanted.powder_g(wanted.jars[0].strength_permille if wanted.jars else None)
    less = "" if powder is None else (
        f"{bare(powder.quantize(Decimal('0.001')))} g is less than "
        f"{least_words(now.balance, now.on)}. ")
    finer = next((one for one in now.others
                  if powder and one.facts.can_weigh(powder) and one.facts.can_carry(powder)), None)
    other = f" On {finer.title} it can be weighed." if finer else ""
    if wanted.solution_percent is not None:
        less = "So little of it cannot be measured as it is. "
    if isinstance(wanted.way, Pouring):
        return less + pour_words(wanted.way) + other
    return less + wanted.no_way + other


def too_heavy(grams: Decimal | None, now: AtBalance) -> str:
    """What to do where the balance does not carry so much at once; '' where it does."""
    if grams is None or now.balance.can_carry(grams):
        return ""
    other = next((one for one in now.others
                  if one.facts.can_carry(grams) and one.facts.can_weigh(grams)), None)
    here = now.on.title if now.on else "it"
    return (f"{bare(grams.quantize(Decimal('0.1')))} g is more than {here} carries "
            f"({bare(now.balance.most_g or grams)} g, the cup with it): weigh it "
            + (f"on {other.title}." if other else "in parts, one line after another."))


def mixture_words(way: Pouring) -> str:
    """'30 mL of 1 %': what is poured of an assistant that was thinned."""
    percent = way.dilutions[-1].percent if way.dilutions else way.stock_percent
    return f"{millilitres(way.take_ml)} mL of {_percent(percent)} %"


def pour_words(way: Pouring) -> str:
    """'Make 1 g up to 100 mL: 1 % stock. Take 10 mL of it, make it up to 100 mL. Take 40 mL.'"""
    said = [make_words(way.make_up)] if way.make_up else []
    percent = way.stock_percent
    for step in way.dilutions:
        said.append(f"Take {millilitres(step.take_ml)} mL of the {bare(percent)} % and make it up "
                    f"to {bare(step.to_ml)} mL.")
        percent = step.percent
    said.append(f"Take {millilitres(way.take_ml)} mL of {_percent(percent)} % stock.")
    return " ".join(said)


def make_words(make: MakeUp) -> str:
    """'Weigh 1 g and make it up to 100 mL.'"""
    return (f"Weigh {bare(make.powder_g)} g and make it up to {bare(make.to_ml)} mL: "
            f"{_percent(make.percent)} % stock.")


def under(wanted: Wanted, balance: Balance) -> str:
    """What stands under a line's name: taken or wanted, by weight or by volume."""
    if wanted.is_taken:
        return f"{at_step(wanted.given_g, balance.step_g)} g taken"
    if isinstance(wanted.way, Pouring):
        return f"take {millilitres(wanted.way.take_ml)} mL of stock"
    percent = wanted.solution_percent
    if percent is not None and (ml := wanted.volume_ml(percent)) is not None:
        return f"{millilitres(ml)} mL {wanted.form}"
    grams = wanted.powder_g(wanted.jars[0].strength_permille if wanted.jars else None)
    if grams is None:
        return "how much is not known"
    form = f" {wanted.form}" if wanted.form else ""
    return f"{at_step(grams, balance.step_g)} g{form}"


def cup_question(line: LineThen) -> str:
    """What is asked of a line that was open when all stopped."""
    return (f"{line.asked} stood on the balance when work stopped. Is the cup's content kept, "
            "tipped back, or thrown?")


def _percent(percent: Decimal) -> str:
    return bare(percent.quantize(Decimal("0.001")))
