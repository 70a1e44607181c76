"""The door, the reel and the pots."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from decimal import Decimal

from sqlalchemy import Connection, exists, select

from app.calculations.codes import Kind, numbered
from app.calculations.units import milligrams
from app.demo.hands import Hands, lot_facts, mm
from app.demo.sources import Line
from app.demo.weighing import weigh_out
from app.exchange.taking_in import Said, look_at, take_in
from app.lookups.cones import ConeFacts, cone_facts
from app.lookups.pots import pots_now, recipes
from app.lookups.reel import put_ups
from app.lookups.ties import tie_of
from app.problems import NotFound
from app.records import Base, BaseVersion, Bath, Cone, Draw, Step
from app.work.bundling import add_to_cord
from app.work.dyeing import BathIn, into_bath, lift, name_lot
from app.work.readings import read_bath, step_done
from app.work.winding import Drawn, Wound, end_cone, wind

FIRST_DISC, LAST_DISC = 60, 99
"""The discs that the regular weeks take in turn; those before are written out."""
WORTH_JOINING_MM = 60_000
"""A shorter end than this is no skein's beginning."""


def take_note_in(hands: Hands, line: Line) -> None:
    """A delivery with the mill's list."""
    data = (hands.folder / "notes" / line["file"]).read_bytes()
    said = Said(given={"supplier": line["supplier"]})
    hands.do(take_in, hands.book.ask(look_at, data, said, hands.now()))


def wind_cone(hands: Hands, line: Line) -> None:
    """Skeins of one cone on a disc."""
    cone = _cone(hands, line["cone"])
    drawn = Drawn(cone.facts.id, line["skeins"] * cone.skein_mm)
    wound = Wound((drawn,), line["skeins"], "skein", line.get("tie", cone.tie))
    hands.do(wind, [wound], hands.thing(Kind.DISC, line["disc"]))


def wind_join(hands: Hands, line: Line) -> None:
    """One skein over the join of two cones."""
    cones = [_cone(hands, number) for number in line["cones"]]
    draws = tuple(Drawn(cone.facts.id, mm(metres))
                  for cone, metres in zip(cones, line["metres"], strict=True))
    tie = " and ".join(cone.tie for cone in cones)
    groups = hands.do(wind, [Wound(draws, 1, "skein", tie)])
    hands.do(add_to_cord, hands.thing(Kind.DISC, line["disc"]), groups)


def end(hands: Hands, line: Line) -> None:
    """What is left on the centre is weighed."""
    hands.do(end_cone, hands.thing(Kind.CONE, line["cone"]),
             milligrams(Decimal(str(line["waste_g"]))))


def wind_planned(hands: Hands, line: Line) -> None:
    """A cord of the plan: from the cone on the reel, and from the next where that ends."""
    disc = hands.cords[line["cord"]] = line.get("disc") or _free_disc(hands)
    named: Mapping[int, int] = line["cones"]
    for number, skeins in named.items():
        _wind_on(hands, _cone(hands, number), skeins, disc)
    still = line["skeins"] - sum(named.values())
    while still > 0:
        cone = _on_the_reel(hands, line["base"])
        skeins = min(still, cone.facts.left_mm // cone.skein_mm)
        if skeins:
            _wind_on(hands, cone, skeins, disc)
        else:
            skeins = _use_up(hands, cone, disc)
        still -= skeins


def dye(hands: Hands, line: Line) -> None:
    """Cords meet a bath; the codes that the papers name are drawn for it."""
    version = newest_version(hands, line["colourway"])
    pot = hands.thing(Kind.POT, line["pot"]) if "pot" in line else None
    yarn = hands.yarn(line)
    weighing = weigh_out(hands, yarn, version, pot=pot)
    hands.chance.will_draw([code for code in line.get("codes", ()) if code])
    made = hands.do(into_bath, BathIn(tuple(yarn), version, pot, weighing), hands.chance)
    for names in (line.get("cords", ()), line.get("codes", ())):
        hands.lots.update(zip(names, made["lots"], strict=False))
    if "remember" in line:
        hands.lots[line["remember"]] = made["lots"][0]


def newest_version(hands: Hands, colourway: str) -> int:
    """The recipe by which a colourway is dyed now."""
    return next(recipe.version for recipe in hands.book.ask(recipes)
                if recipe.colourway == colourway)


def read_pot(hands: Hands, line: Line) -> None:
    """At the end of the heating: pH, heat, and a water that has given up its dye."""
    bath = hands.book.ask(lot_facts, hands.lot(line["cord"])).bath
    hands.do(read_bath, bath, ph_centi=hands.balance.randrange(390, 460, 10),
             decidegrees=hands.balance.randint(880, 930), clearness=0)


def tick_off(hands: Hands, line: Line) -> None:
    """A step of its recipe is done in a bath: tapped at the pot."""
    bath = hands.book.ask(lot_facts, hands.lot(line["cord"])).bath
    hands.do(step_done, bath, hands.book.ask(_steps_in, bath)[line["step"] - 1])


def lift_bath(hands: Hands, line: Line) -> None:
    """The yarn is lifted, by its pot or by its lot."""
    if "pot" in line:
        pot = numbered(Kind.POT, line["pot"]).text[1:-1]
        full: list[int | None] = [
            one.bath for one in hands.book.ask(pots_now) if one.pot == pot]
    else:
        lot = hands.lot(line.get("cord") or line["lot"])
        full = [hands.book.ask(lot_facts, lot).bath]
    hands.do(lift, full[0])


def name_pending(hands: Hands, line: Line) -> None:
    """The day is sure again: the lot that had to wait gets its code."""
    hands.do(name_lot, hands.lots[line["lot"]], hands.chance)


@dataclass(frozen=True, slots=True)
class _Cone:
    """A cone on the reel: what is left of it, the tie that is handed out, what is wound of it."""

    facts: ConeFacts
    tie: str
    forms: Mapping[str, int]
    """{put-up: mm as wound}."""

    @property
    def skein_mm(self) -> int:
        return self.forms["skein"]


def _wind_on(hands: Hands, cone: _Cone, skeins: int, disc: int) -> None:
    drawn = Drawn(cone.facts.id, skeins * cone.skein_mm)
    _onto_cord(hands, Wound((drawn,), skeins, "skein", cone.tie), disc)


def _onto_cord(hands: Hands, wound: Wound, disc: int) -> None:
    plate = hands.thing(Kind.DISC, disc)
    if hands.on(disc):
        hands.do(add_to_cord, plate, hands.do(wind, [wound]))
    else:
        hands.do(wind, [wound], plate)


def _use_up(hands: Hands, cone: _Cone, disc: int) -> int:
    """The end of a cone: joined to the next, or wound into minis, or put aside; skeins of it."""
    left, mini = cone.facts.left_mm, cone.forms.get("mini", cone.facts.left_mm + 1)
    after = _fresh(hands, cone.facts.base_name)
    if left >= WORTH_JOINING_MM and after.tie != cone.tie and hands.whim.random() < 0.5:
        draws = (Drawn(cone.facts.id, left), Drawn(after.facts.id, cone.skein_mm - left))
        _onto_cord(hands, Wound(draws, 1, "skein", f"{cone.tie} and {after.tie}"), disc)
        _weigh_end(hands, cone.facts.id)
        return 1
    if left >= mini:
        minis = left // mini
        drawn = Drawn(cone.facts.id, minis * mini)
        _onto_cord(hands, Wound((drawn,), minis, "mini", cone.tie), disc)
        _weigh_end(hands, cone.facts.id)
    return 0


def _weigh_end(hands: Hands, cone: int) -> None:
    left = hands.book.ask(cone_facts, cone)
    hands.do(end_cone, cone, max(100, (left.fibre_mg - left.drawn_mg) // 100 * 100))


def _on_the_reel(hands: Hands, base: str) -> _Cone:
    """The cone of this base that is on the reel, or the next one."""
    if base in hands.reels:
        return hands.book.ask(_as_cone, hands.reels[base])
    return _fresh(hands, base)


def _fresh(hands: Hands, base: str) -> _Cone:
    """The oldest cone of the base that nothing was wound of and no paper names: it is next."""
    named = [numbered(Kind.CONE, number).text for number in hands.named_cones]
    cone = hands.book.ask(_untouched, base, named)
    if cone is None:
        raise NotFound(f"No cone of {base} is left in this studio.")
    hands.reels[base] = cone
    return hands.book.ask(_as_cone, cone)


def _steps_in(connection: Connection, bath: int | None) -> list[int]:
    """The steps of the recipe that a bath was dyed by, in their order."""
    return list(connection.execute(
        select(Step.id).join(Bath, Bath.recipe_version == Step.recipe_version)
        .where(Bath.id == bath, Step.struck.is_(None)).order_by(Step.place)).scalars())


def _cone(hands: Hands, number: int) -> _Cone:
    return hands.book.ask(_as_cone, hands.thing(Kind.CONE, number))


def _as_cone(connection: Connection, cone: int) -> _Cone:
    facts = cone_facts(connection, cone)
    forms = {form.name: form.mm for form in put_ups(connection, facts.base_version)}
    return _Cone(facts, tie_of(connection, cone, facts.base), forms)


def _untouched(connection: Connection, base: str, but: Collection[str]) -> int | None:
    drawn = exists().where(Draw.cone == Cone.id, Draw.struck.is_(None))
    return connection.execute(
        select(Cone.id).join(BaseVersion, BaseVersion.id == Cone.base_version)
        .join(Base, Base.id == BaseVersion.base)
        .where(Base.name == base, Cone.code.not_in(list(but)), Cone.struck.is_(None), ~drawn)
        .order_by(Cone.id)).scalar()


def _free_disc(hands: Hands) -> int:
    """The next disc of the rotation that hangs on nothing."""
    turned = [disc for disc in hands.cords.values() if disc >= FIRST_DISC]
    last = turned[-1] if turned else LAST_DISC
    count = LAST_DISC - FIRST_DISC + 1
    turn = (FIRST_DISC + (last - FIRST_DISC + n) % count for n in range(1, count + 1))
    free = next((disc for disc in turn if not hands.on(disc)), None)
    if free is None:
        raise NotFound("All discs of the regular weeks hang on cords.")
    return free
