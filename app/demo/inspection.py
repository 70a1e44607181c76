"""The shade check: standards on the first day, a card of every lot that is counted, verdicts."""

from collections.abc import Sequence
from functools import cache
from pathlib import Path
from random import Random

from app.calculations.codes import Kind
from app.calculations.grey_scales import Step
from app.calculations.shade import Colour, Lamp, Observer, Viewing
from app.calculations.shade_difference import Lab, ciede2000
from app.demo.hands import Hands, LotFacts, lot_facts
from app.demo.opening import base_called, colourway_called
from app.demo.sources import Line, rows, toml
from app.lookups.lot_lines import lot_line
from app.lookups.shades import lots_read, read_of_lots
from app.work.inspecting import ShadeIn, VerdictIn, decide, grey_step, read_shades
from app.work.kit_patterns import PatternIn, PlaceIn, write_pattern

NORTH_WINDOW = Viewing(Lamp.D65, Observer.TWO, wet=False)
INSTRUMENT = "sphere, 8 mm"
NOISE = (0.2, 0.6)
"""How far a steady dyer's lots come from the standard, in CIEDE2000."""


def read_standards(hands: Hands, line: Line) -> None:
    """The kept swatch of every colourway on every base that it is dyed on, in one morning."""
    labs = _labs(hands.folder)
    pairs = dict.fromkeys((row["colourway"], row["base"]) for row in rows(
        hands.folder / "baths.csv"))
    hands.do(read_shades, [
        ShadeIn(_colour(labs[colourway], f"{colourway} {base}"), instrument=INSTRUMENT, standard=(
            hands.book.ask(colourway_called, colourway), hands.book.ask(base_called, base)))
        for colourway, base in pairs if colourway not in _papers(hands.folder)["by_eye"]])


def inspect(hands: Hands, line: Line) -> None:
    """A counted lot: its card is read, or held against the grey scale, and it is passed."""
    lot = hands.lot(line.get("lot") or line["cord"])
    facts, papers = hands.book.ask(lot_facts, lot), _papers(hands.folder)
    code = hands.book.ask(lot_line, lot).code or line["cord"]
    if facts.colourway in papers["by_eye"] or code in papers["under_the_tube"]:
        lamp = "kitchen tube" if code in papers["under_the_tube"] else "D65"
        hands.do(grey_step, lot, Step.FOUR_FIVE, lamp=lamp)
    else:
        lab = papers["lots"].get(code) or _as_dyed(hands, facts, code)
        hands.do(read_shades, [ShadeIn(_colour(tuple(lab), code), lot=lot,
                                       instrument=INSTRUMENT)])
    said = line.get("verdict", "standard")
    hands.do(decide, lot, VerdictIn(said, line.get("name", ""), line.get("why", "")))


def read_card(hands: Hands, line: Line) -> None:
    """A card that somebody reads later, of a lot or of cones, as the papers have it."""
    papers = _papers(hands.folder)
    if "cones" in line:
        hands.do(read_shades, [
            ShadeIn(_colour(tuple(papers["cones"][str(number)]), f"cone {number}"),
                    cone=hands.thing(Kind.CONE, number), instrument=INSTRUMENT)
            for number in line["cones"]])
        return
    lab = line.get("lab") or papers["lots"][line["lot"]]
    hands.do(read_shades, [ShadeIn(
        _colour(tuple(lab), line["lot"]), lot=hands.lot(line["lot"]),
        zone=line.get("zone", ""), instrument=INSTRUMENT)])


def kit_pattern(hands: Hands, line: Line) -> None:
    """A kit is written down by its places."""
    def colourway(name: str) -> int:
        return hands.book.ask(colourway_called, name)

    hands.do(write_pattern, PatternIn(line["name"], tuple(
        PlaceIn(letter, one["count"], colourway(one["colourway"]),
                hands.book.ask(base_called, one["base"]),
                stand_ins=tuple(map(colourway, one.get("or", ()))))
        for letter, one in line["places"].items()), line["price"]))


def _as_dyed(hands: Hands, facts: LotFacts, code: str) -> Lab:
    """The standard and some noise; the colourway that is held against the last lot drifts."""
    standard, drift = _labs(hands.folder)[facts.colourway], _papers(hands.folder)["drift"]
    if (facts.colourway, facts.base) == (drift["colourway"], drift["base"]) and (
            hands.now().date() >= drift["since"]):
        return _nudged(standard, drift["towards"], _how_far(hands, drift))
    return off_by(standard, Random(f"lot {code}"))


def _how_far(hands: Hands, drift: Line) -> float:
    """Half a unit more with every lot; how many there were is counted in the book."""
    lots = hands.book.ask(lots_read, hands.book.ask(colourway_called, drift["colourway"]),
                          hands.book.ask(base_called, drift["base"]))
    read = hands.book.ask(read_of_lots, lots)
    before: int = sum(cards[0].at.date() >= drift["since"] for cards in read.values())
    return float(drift["each"]) * (before + 1)


def off_by(standard: Lab, chance: Random) -> Lab:
    """A lot of a steady dyer: 0.2 to 0.6 from the standard, in any direction."""
    return _nudged(standard, [chance.gauss(0, 1) for _ in range(3)], chance.uniform(*NOISE))


def _nudged(standard: Lab, towards: Sequence[float], far: float) -> Lab:
    """So far from the standard in CIEDE2000, in this direction."""
    low, high = 0.0, 20.0
    for _ in range(30):
        middle = (low + high) / 2
        there = tuple(value + middle * part for value, part in zip(standard, towards, strict=True))
        low, high = ((middle, high) if ciede2000(standard, (there[0], there[1], there[2])) < far
                     else (low, middle))
    lightness, a, b = (float(round(value + low * part, 2))
                       for value, part in zip(standard, towards, strict=True))
    return lightness, a, b


def _colour(lab: Lab, name: str) -> Colour:
    """The mean of four places of a card."""
    return Colour(*lab, NORTH_WINDOW, 4, round(Random(f"spread {name}").uniform(0.2, 0.6), 2))


def _labs(folder: Path) -> dict[str, Lab]:
    return {one["name"]: tuple(one["lab"]) for one in toml(folder / "studio.toml")["colourways"]}


@cache
def _papers(folder: Path) -> Line:
    return toml(folder / "shades.toml")
