"""The thread around one thing as stations and the yarn between them: what it is made of.

A station's key is its kind and number, 'cone:114'; `?` stands for not known. `here` is the thing in
the middle. What is left of a row, in one state, is a station of its own: 'left:' and the row.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from app.calculations.graph_layout import Link
from app.lookups.graph_plain import known_as
from app.lookups.present import Leaf, without_finds
from app.lookups.thread import Thing, Thread

Ways = dict[Link, dict[int, int]]

HERE = "here"
PART = "part of a cord"
"""Yarn that travels on without the rest: no station of its own where it goes on to another."""
_BEFORE_THE_POT = ("soak",)


@dataclass(frozen=True, slots=True)
class Centre:
    """What is in the middle: things of one kind as the thread names them."""

    kind: str
    """cone, lot, bath, fill, load, supplier_lot, delivery or yarn."""
    things: tuple[int, ...]


@dataclass(slots=True)
class Web:
    """The links with the yarn that goes along them, {link: {row: members}}, on both sides."""

    centre: Centre
    found: Thread
    leaves: Mapping[int, Leaf]
    sources: frozenset[Thing]
    """What in the thread makes yarn be of the thing in the middle."""
    plain: Mapping[int, int]
    """Skeins of which no more is known than of the row they came out of, {skein: row}."""
    steps: Mapping[int, str] = field(default_factory=dict)
    """The step of each load."""
    kinds: Mapping[int, str] = field(default_factory=dict)
    """What each row is that is no single skein: 'wound', 'pile'."""
    left: Ways = field(default_factory=dict)
    right: Ways = field(default_factory=dict)
    means: dict[str, frozenset[Thing]] = field(default_factory=dict)
    """Stations on the left that the thread knows by other things: a delivery by its cones."""

    _been: dict[int, list[str]] = field(default_factory=dict)

    def stations(self, row: int) -> list[str]:
        """Where a row was, in the order of the work; a skein that is there is its own last."""
        if row not in self._been:
            self._been[row] = self._stations(row)
        return self._been[row]

    def _stations(self, row: int) -> list[str]:
        own = self.found.own.get(row, {})
        loads = sorted(number for kind, number in own if kind == "load" and number)
        lots = sorted(number for kind, number in own if kind == "lot" and number)
        first = [load for load in loads if self.steps.get(load) in _BEFORE_THE_POT]
        leaf = self.leaves.get(row)
        alone = leaf is not None and leaf.kind in ("skein", "find")
        chain = [*(key("load", load) for load in first), *(key("lot", lot) for lot in lots),
                 *(key("load", load) for load in loads if load not in first)]
        if not alone and (not chain or self.kinds.get(row) != PART):
            chain.insert(0, key("yarn", row))
        middle = {key(self.centre.kind, thing) for thing in self.centre.things}
        if key("yarn", row) in middle:
            chain = [HERE, *(one for one in chain if kind_of(one) != "yarn")]
        chain = [HERE if station in middle else station for station in chain]
        return chain + ([key("left", row)] if alone else [])

    def there(self) -> dict[int, int]:
        """All that is left of it, {row: members}; a find that is one of the others is no more."""
        return known_as({leaf.yarn: leaf.count for leaf in without_finds(self.leaves.values())},
                        self.plain)

    def source_of(self, row: int) -> set[Thing]:
        """The things in the middle that a row carries itself."""
        return set(self.sources & self.found.own.get(row, {}).keys())


def add(ways: Ways, link: Link, rows: Mapping[int, int]) -> None:
    """So many members of these rows go along this link."""
    there = ways.setdefault(link, {})
    for row, count in rows.items():
        there[row] = there.get(row, 0) + count


def key(kind: str, number: int | None) -> str:
    """'cone:114', 'cone:?'."""
    return f"{kind}:{'?' if number is None else number}"


def kind_of(station: str) -> str:
    """'cone' of 'cone:114'."""
    return station.partition(":")[0]


def number_of(station: str) -> int | None:
    """114 of 'cone:114', and of one met again; none of 'cone:?'."""
    said = station.partition(":")[2].partition(" ")[0]
    return int(said) if said.isdecimal() else None
