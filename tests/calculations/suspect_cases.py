"""The worked example of the trade: 32 skeins of three cones, four lots and two wash loads.

Common practice, no source. Lot L1 is six of cone A and six of cone B in one pot, not tellable; L2
is all A, L3 all B, L4 all C. Wash load W1 is L1 and half of L2, W2 the rest. L1, L2 and L3 were
wound on day 1; L1 and L3 dyed from jar fill J3, L2 and L4 from J5; two rails take turns in a lot.
"""

from collections.abc import Mapping, Sequence

from app.calculations.evidence import Evidence, Pool, Seen, Skein, Suspect

LETTERS = {"f": Seen.FAULTY, "g": Seen.GOOD, "s": Seen.SILENT, "u": Seen.UNSEEN}

CONE_A, CONE_B, CONE_C = (Suspect("cone", name) for name in "ABC")
LOT_1, LOT_2, LOT_3, LOT_4 = (Suspect("lot", f"L{number}") for number in (1, 2, 3, 4))
WASH_1, WASH_2 = (Suspect("wash load", f"W{number}") for number in (1, 2))
JAR_3, JAR_5 = (Suspect("jar fill", name) for name in ("J3", "J5"))
DAY_1, DAY_2 = (Suspect("winder-day", str(number)) for number in (1, 2))
RAILS = tuple(Suspect("rail", str(number)) for number in (1, 2))

THROUGH: Mapping[str, Sequence[Suspect]] = {
    "L1": (LOT_1, WASH_1, JAR_3, DAY_1),
    "L2 W1": (LOT_2, CONE_A, WASH_1, JAR_5, DAY_1),
    "L2 W2": (LOT_2, CONE_A, WASH_2, JAR_5, DAY_1),
    "L3": (LOT_3, CONE_B, WASH_2, JAR_3, DAY_1),
    "L4": (LOT_4, CONE_C, WASH_2, JAR_5, DAY_2),
}
EARLIER = {"L1": "ffgggggsssss", "L2 W1": "ssss", "L2 W2": "ssss", "L3": "ggggss", "L4": "gggsss"}
FINAL = EARLIER | {"L2 W1": "fgss", "L2 W2": "ffss"}


def seen(letters: str) -> list[Seen]:
    """What was seen of skeins, a letter each: faulty, good, silent, unseen."""
    return [LETTERS[letter] for letter in letters]


def thirty_two(found: Mapping[str, str]) -> Evidence:
    """The 32 skeins of the worked example, as they were found."""
    skeins = [
        Skein(f"{place} {number}", one, frozenset({*THROUGH[place], RAILS[number % 2]}))
        for place, letters in found.items() for number, one in enumerate(seen(letters))
    ]
    mixed = frozenset(skein.name for skein in skeins if LOT_1 in skein.through)
    return Evidence(skeins, [Pool(mixed, {CONE_A: 6, CONE_B: 6}, 12)])
