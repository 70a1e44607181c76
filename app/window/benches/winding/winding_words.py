"""Lengths, counts and shares as the winder reads them."""

from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Decimal

from app.calculations.codes import shown
from app.calculations.moments import clock_words
from app.calculations.units import metres
from app.lookups.bundles import IN_POT, LIFTED, WOUND, BundleFacts
from app.lookups.reel import OnReel
from app.window.benches.winding.reel import Group, Join
from app.work.dividing import skeins

_TENTH, _WHOLE = Decimal("0.1"), Decimal(1)


def long(mm: int) -> str:
    """'5,618 m'; a short length to the tenth: '255.2 m'."""
    length = metres(mm)
    step = _WHOLE if length >= 1000 else _TENTH
    return f"{length.quantize(step, ROUND_HALF_UP):,f} m"


def gives(cone: OnReel) -> str:
    """'13 skeins + 255 m'."""
    rest = f"{cone.gives.rest_m.quantize(_WHOLE, ROUND_HALF_UP):,f} m"
    if cone.form("skein") is None:
        return rest
    return f"{skeins(cone.gives.skeins)} + {rest}"


def rest_gives(cone: OnReel) -> str:
    """'the 255.2 m: 3 minis of 55 turns and 7.7 m'."""
    mini, skein = cone.form("mini"), cone.form("skein")
    if mini is None or skein is None or not cone.gives.minis:
        return ""
    rest, tail = (
        length.quantize(_TENTH, ROUND_HALF_UP) for length in (cone.gives.rest_m, cone.gives.tail_m)
    )
    return (
        f"{rest} m make {skeins(cone.gives.minis, 'mini')} of {mini.turns} turns, "
        f"{tail} m are left"
    )


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
        f"{ties} ties, {_and(bundle.cones) or 'cone not known'}, tied on at "
        f"{clock_words(bundle.since)}, {where}."
    )


def _and(words: Sequence[str]) -> str:
    return " and ".join(filter(None, (", ".join(words[:-1]), *words[-1:])))
