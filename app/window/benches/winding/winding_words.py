"""Lengths, counts and shares as the winder reads them."""

from decimal import ROUND_HALF_UP, Decimal

from app.calculations.codes import shown
from app.calculations.listing import listing
from app.calculations.moments import clock_words
from app.calculations.units import metres
from app.lookups.bundles import IN_POT, LIFTED, WOUND, BundleFacts
from app.lookups.reel import OnReel
from app.window.benches.winding.reel import Group, Join, Reel
from app.work.dividing import skeins

_TENTH, _WHOLE = Decimal("0.1"), Decimal(1)


def long(mm: int) -> str:
    """'5,618 m'; a short length to the tenth: '255.2 m'."""
    length = metres(mm)
    step = _WHOLE if length >= 1000 else _TENTH
    return f"{length.quantize(step, ROUND_HALF_UP):,f} m"


def gives(cone: OnReel, left_mm: int) -> str:
    """'13 skeins + 255 m · 5,618 m left'."""
    if left_mm < 0:
        return f"{long(-left_mm)} more counted than it holds"
    if cone.facts.overdrawn:
        return "more was counted than it held: what is left is not known"
    left = f"{long(left_mm)} left"
    if cone.form("skein") is None:
        return left
    found = cone.gives(left_mm)
    return f"{skeins(found.skeins)} + {found.rest_m.quantize(_WHOLE, ROUND_HALF_UP):,f} m · {left}"


def rest_gives(cone: OnReel, left_mm: int) -> str:
    """'255.2 m make 3 minis of 55 turns, 7.7 m are left', where they make any."""
    mini, found = cone.form("mini"), cone.gives(left_mm)
    if mini is None or cone.form("skein") is None or not found.minis:
        return ""
    rest, tail = (one.quantize(_TENTH, ROUND_HALF_UP) for one in (found.rest_m, found.tail_m))
    return f"{rest} m make {skeins(found.minis, 'mini')} of {mini.turns} turns, {tail} m are left"


def parts(join: Join) -> str:
    """'62 % / 38 %': what each cone gave to one skein."""
    return " / ".join(f"{share:.0%}".replace("%", " %") for share in join.shares)


def code_of(group: Group) -> str:
    """The cone, or both cones of a join."""
    if isinstance(group, Join):
        return " + ".join(shown(one.facts.code) for one in (group.first, group.second))
    return shown(group.cone.facts.code)


def hangs_on(disc: str, bundle: BundleFacts) -> str:
    """'Disc 031 hangs on 6 skeins …': a live bundle with all that tells it."""
    ties = " and ".join(f"{part.count} {part.tie}" for part in bundle.ties)
    where = {
        WOUND: "not dyed yet",
        IN_POT: f"in the pot as {bundle.lot}",
        LIFTED: f"lifted from the pot, {bundle.lot}",
    }.get(bundle.stage, bundle.stage)
    return (
        f"Disc {disc} hangs on {skeins(bundle.count, bundle.put_up)} of {bundle.base}: "
        f"{ties} ties, {listing(bundle.cones) or 'cone not known'}, tied on at "
        f"{clock_words(bundle.since)}, {where}."
    )


def next_step(reel: Reel, disc: str) -> str:
    """What the winder does next; `disc` is the number of one that is at hand already."""
    if disc and reel.total:
        return f"Disc {disc} is at hand: DONE ties it on."
    if disc:
        return f"Disc {disc} is at hand: count the skeins."
    counted = reel.in_hand is not None and reel.in_hand.count
    return "Now scan the disc of this cord." if counted else "Count what hangs on this cord."
