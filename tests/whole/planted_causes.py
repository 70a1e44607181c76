"""Invented studios in which one to three things spoiled skeins, and what the owner sees of it.

A studio has about a hundred skeins: cones wound into bundles, two cones of one tie colour in some
pots (a pool), joins over two cones, jar fills, wash loads that lots share and lots that wash loads
share, rails, winder-days. The rates are drawn for each studio and are not those of the settings; so
are how many buyers tell and how many skeins were looked at.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from random import Random

from app.calculations.evidence import Evidence, Pool, Seen, Skein, Suspect, kept_apart


@dataclass(frozen=True, slots=True)
class Studio:
    """What is seen, the causes that nobody knows, and the faults of the skeins they spoiled.

    Each cause makes its own kind of fault, called by the cause.
    """

    evidence: Evidence
    causes: tuple[Suspect, ...]
    spoiled: Mapping[str, frozenset[str]]

    @property
    def faulty(self) -> int:
        """How many faulty skeins have come to light."""
        return sum(skein.seen is Seen.FAULTY for skein in self.evidence.skeins)

    def looked_at(self, names: Iterable[str]) -> "Studio":
        """The same studio after somebody looked at these skeins."""
        names = set(names)
        skeins = [
            _as_found(skein, self.spoiled) if skein.name in names else skein
            for skein in self.evidence.skeins
        ]
        return replace(self, evidence=Evidence(skeins, self.evidence.pools))

    def kept_apart(self) -> list["Studio"]:
        """The studio as to each kind of fault of which two skeins came to light."""
        apart = kept_apart(self.evidence)
        studios = [
            Studio(apart[str(cause)], (cause,), {
                name: frozenset({str(cause)})
                for name, faults in self.spoiled.items() if str(cause) in faults
            })
            for cause in self.causes if str(cause) in apart
        ]
        return [studio for studio in studios if studio.faulty >= 2]


def _as_found(skein: Skein, spoiled: Mapping[str, frozenset[str]]) -> Skein:
    faults = spoiled.get(skein.name, frozenset())
    return replace(skein, seen=Seen.FAULTY if faults else Seen.GOOD, faults=faults)


@dataclass(slots=True)
class _Made:
    """A skein as it truly is; `doubtful` is what nobody can tell of it singly."""

    name: str
    cones: dict[str, Fraction]
    things: set[Suspect]
    doubtful: bool = False


def planted(dice: Random, faults: int) -> Studio | None:
    """A studio with so many causes; none where fewer than two faulty skeins came to light."""
    made, pools = _make(dice)
    touched = {one for skein in made for one in _all_things(skein)}
    causes = _causes(dice, sorted(touched), faults)
    spoiled = _spoil(dice, made, causes)
    studio = Studio(Evidence(_seen(dice, made, spoiled), pools), causes, spoiled)
    return studio if studio.faulty >= 2 else None


def _make(dice: Random) -> tuple[list[_Made], list[Pool]]:
    """Lot after lot until there are about a hundred skeins."""
    made: list[_Made] = []
    pools: list[Pool] = []
    cone, left, wash, hung = 1, dice.randint(10, 14), 1, 0
    for lot in range(1, dice.randint(11, 15)):
        jars = {Suspect("jar fill", f"J{dice.randint(1, 5)}") for _ in range(dice.randint(1, 2))}
        bundles: list[list[_Made]] = []
        for _ in range(2 if dice.random() < 0.35 else 1):
            if left < 4:
                cone, left = cone + 1, dice.randint(10, 14)
            size = min(left, dice.randint(5, 7))
            bundles.append([
                _Made(f"{lot}-{len(bundles)}-{n}", {f"C{cone}": Fraction(1)}, set())
                for n in range(size)
            ])
            if left - size < 4:
                bundles[-1][-1].cones = {f"C{cone}": Fraction(3, 5), f"C{cone + 1}": Fraction(2, 5)}
            left -= size
        skeins = [skein for bundle in bundles for skein in bundle]
        if len(bundles) == 2 and dice.random() < 0.7:
            pools += _mix(dice, skeins)
        parts = [skeins[::2], skeins[1::2]] if dice.random() < 0.3 else [skeins]
        for part in parts:
            wash += dice.random() < 0.45
            for skein in part:
                skein.things |= jars | {
                    Suspect("lot", f"L{lot}"), Suspect("wash load", f"W{wash}"),
                    Suspect("rail", f"R{hung % 6}"), Suspect("winder-day", f"D{cone // 3}"),
                }
                hung += dice.random() < 0.4
        made += skeins
    return made, pools


def _mix(dice: Random, skeins: Sequence[_Made]) -> list[Pool]:
    """The tie colours are alike: of the skeins without a join nobody can tell which is which."""
    mixed = [skein for skein in skeins if len(skein.cones) == 1]
    cones = [next(iter(skein.cones)) for skein in mixed]
    if len(set(cones)) < 2:
        return []
    dice.shuffle(cones)
    for skein, cone in zip(mixed, cones, strict=True):
        skein.cones, skein.doubtful = {cone: Fraction(1)}, True
    given = {Suspect("cone", cone): cones.count(cone) for cone in sorted(set(cones))}
    return [Pool(frozenset(skein.name for skein in mixed), given, len(mixed))]


def _all_things(skein: _Made) -> set[Suspect]:
    return skein.things | {Suspect("cone", cone) for cone in skein.cones}


def _causes(dice: Random, things: Sequence[Suspect], faults: int) -> tuple[Suspect, ...]:
    """Causes as studios know them: mostly cones, lots and wash loads; some spoil nothing known."""
    often = {"cone": 3, "lot": 2, "wash load": 2, "jar fill": 1, "winder-day": 1, "rail": 0.5}
    causes: set[Suspect] = set()
    while len(causes) < faults:
        kind = dice.choices(list(often), list(often.values()))[0]
        causes.add(dice.choice([one for one in things if one.kind == kind]))
    return tuple(sorted(causes))


def _spoil(
    dice: Random, made: Sequence[_Made], causes: Sequence[Suspect]
) -> dict[str, frozenset[str]]:
    rates = {cause: dice.uniform(0.25, 0.95) for cause in causes}
    by_chance = dice.uniform(0.0, 0.03)
    spoiled = {}
    for skein in made:
        shares = {Suspect("cone", cone): float(share) for cone, share in skein.cones.items()}
        shares |= dict.fromkeys(skein.things, 1.0)
        faults = {
            str(cause) for cause, rate in rates.items()
            if dice.random() < rate * shares.get(cause, 0)
        }
        if dice.random() < by_chance:
            faults.add(str(dice.choice(causes)))
        if faults:
            spoiled[skein.name] = frozenset(faults)
    return spoiled


def _seen(
    dice: Random, made: Sequence[_Made], spoiled: Mapping[str, frozenset[str]]
) -> list[Skein]:
    sold, tells, looks = dice.uniform(0.3, 0.8), dice.uniform(0.15, 0.4), dice.uniform(0.02, 0.15)
    skeins = []
    for skein in made:
        is_sold, looked = dice.random() < sold, dice.random() < looks
        told = is_sold and skein.name in spoiled and dice.random() < tells
        known = {} if skein.doubtful else {Suspect("cone", c): s for c, s in skein.cones.items()}
        one = Skein(
            skein.name, Seen.SILENT if is_sold else Seen.UNSEEN,
            frozenset(skein.things | {cone for cone, share in known.items() if share == 1}),
            {cone: share for cone, share in known.items() if share < 1},
        )
        skeins.append(_as_found(one, spoiled) if looked or told else one)
    return skeins
