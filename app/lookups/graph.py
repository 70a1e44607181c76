"""A thing with all it comes from and all that came of it, as one branching trail to be drawn.

What is alike and many is folded into one station with its count, before anything is named.
"""

from collections import Counter
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass

from sqlalchemy import Connection, func, select

from app.calculations.graph_folding import AGAIN, Fold, depths, folds, merged, unwound
from app.calculations.graph_layout import Link
from app.lookups.graph_held import FREE, Held, HeldHere
from app.lookups.graph_names import Named, names
from app.lookups.graph_short import shorten
from app.lookups.graph_sure import WHOLLY, Asking, Sure, how_sure
from app.lookups.graph_ways import WITH_YARN_ABOVE, web
from app.lookups.graph_web import HERE, Centre, Ways, Web, key, kind_of, number_of
from app.lookups.thread import Thing
from app.records import OrderLine, Whereabouts
from app.store.dialect import among, listed

_SPREAD = (
    select(func.count(Whereabouts.place.distinct()),
           func.count(OrderLine.customer_order.distinct()))
    .outerjoin(OrderLine, OrderLine.id == Whereabouts.line)
    .where(among(Whereabouts.yarn, "ids"), Whereabouts.until.is_(None),
           Whereabouts.struck.is_(None))
)
FOUND = "/found"
"""Of the stage of finds: what they may be is another stage, for it leads to them."""
FOLDED_FROM, SINGLY = 6, 24
"""Where there are more of a kind, those of one stage are folded; of an opened fold so many are
drawn one by one."""


@dataclass(frozen=True, slots=True)
class Knot:
    """One station: what it is, how many skeins of this trail were there, and how sure that is."""

    key: str
    side: str
    """from, here or to."""
    named: Named
    count: int
    put_up: str
    sure: Sure
    held: HeldHere = FREE
    centre: Centre | None = None
    """What is in the middle if this is taken there; none of a fold."""
    folded: int = 0
    """How many stations it stands for; 0 where it is one."""
    of: int = 0
    """How many there are of these in all."""
    spread: tuple[int, str] = (0, "")
    """At how many places, or with how many orders, folded skeins are."""
    stage: str = ""
    """The fold that it was taken out of."""


@dataclass(frozen=True, slots=True)
class Strand:
    """The yarn from one station to the next, and how sure it is."""

    start: str
    end: str
    sure: Sure


@dataclass(frozen=True, slots=True)
class Graph:
    """All stations and strands; `together` is all that there is of it now."""

    knots: tuple[Knot, ...]
    strands: tuple[Strand, ...]
    together: Sure
    opened: frozenset[str]

    @property
    def here(self) -> Knot:
        """The thing in the middle."""
        return next(knot for knot in self.knots if knot.key == HERE)


def graph(
    connection: Connection, centre: Centre, title: Named | None = None,
    opened: frozenset[str] = frozenset(), *, short: bool = False,
) -> Graph:
    """The branching trail of a thing; `opened` names the folds whose stations are wanted singly.

    A `short` one leaves out the loads, piles and deliveries that the yarn passed through.
    """
    made = web(connection, centre)
    all_left, all_right = made.left, made.right
    if short:
        shorten(made)
    links = {**made.left, **made.right}
    kept = unwound(links)
    stations = list(dict.fromkeys([HERE, *(end for link in kept for end in link)]))
    stages = _stages(made, stations, depths(stations, kept))
    found = folds(stages, _may_stand_singly(stages, short=short), opened, SINGLY)
    into = {one: f"fold:{fold.key}" for fold in found for one in fold.left}
    sides = {name: merged({link: rows for link in kept
                           if (rows := ways.get(_bare(link))) is not None}, into,
                          made.found.count)
             for name, ways in (("from", made.left), ("to", made.right))}
    whole = {name: merged(ways, into, made.found.count) for name, ways in (
        ("from", all_left), ("to", all_right))} if short else sides
    drawn = _Drawn(made, sides, whole, {f"fold:{fold.key}": fold for fold in found}, stages, opened,
                   Asking(made.found, made.sources), Held(made))
    knots = _knots(connection, drawn, title)
    strands = tuple(
        Strand(*link, _sure_of(drawn, side, link[0], rows))
        for side, ways in sides.items() for link, rows in ways.items())
    return Graph(knots, strands, drawn.asking.of(made.there()), opened)


@dataclass(frozen=True, slots=True)
class _Drawn:
    """What will be drawn, before it is named."""

    made: Web
    sides: Mapping[str, Ways]
    whole: Mapping[str, Ways]
    """The same with the stations that a short trail leaves out: it is counted by these."""
    folds: Mapping[str, Fold]
    stages: Mapping[str, str]
    opened: Collection[str]
    asking: Asking
    held: Held


def _bare(link: Link) -> Link:
    return link[0], link[1].removesuffix(AGAIN)


def _stages(
    made: Web, stations: Iterable[str], depth: Mapping[str, int]
) -> dict[str, str]:
    """What each station is alike with: the same kind, as far from the beginning, on one side."""
    lefts = {one for link in made.left for one in link}
    stages = {}
    for one in stations:
        if one == HERE:
            continue
        kind, number = kind_of(one), number_of(one)
        side = "from" if one.removesuffix(AGAIN) in lefts else "to"
        if number is None:
            stages[one] = one
        elif kind == "left":
            leaf = made.leaves[number]
            stages[one] = f"left/{leaf.state}/{leaf.put_up}{FOUND if leaf.kind == 'find' else ''}"
        else:
            what = (made.kinds.get(number, "tagged skein") if kind == "yarn" else
                    made.steps.get(number, kind) if kind == "load" else kind)
            stages[one] = f"{side}/{what}/{depth[one]}"
    return stages


def _may_stand_singly(stages: Mapping[str, str], *, short: bool) -> dict[str, int]:
    """How many may at each stage: of a kind that is many on its side, no two; nor skeins, if short.
    """
    kinds = Counter(_kind_of_stage(stage) for stage in stages.values())
    return {stage: 1 if stage.startswith("left/") or kinds[_kind_of_stage(stage)] > FOLDED_FROM
            or (short and "/tagged skein/" in stage) else FOLDED_FROM for stage in stages.values()}


def _kind_of_stage(stage: str) -> str:
    return stage.rpartition("/")[0]


def _knots(connection: Connection, drawn: _Drawn, title: Named | None) -> tuple[Knot, ...]:
    made = drawn.made
    members = _members(drawn)
    singles = [one for one in members if one != HERE and one not in drawn.folds]
    named = names(connection, made, singles)
    if title is None:
        middle = key(made.centre.kind, made.centre.things[0])
        title = names(connection, made, [middle])[middle]
    knots = []
    for one, (side, rows) in members.items():
        fold = drawn.folds.get(one)
        whole = Counter(rows)
        knots.append(Knot(
            one, side, title if one == HERE else named[one] if fold is None else _fold_name(fold),
            sum(whole.values()), _put_up(drawn, one, fold),
            WHOLLY if side == "here" else
            _sure_of(drawn, side, one, rows),
            drawn.held.here(one, fold.left if fold else (one,), rows), _centre(made, one, fold),
            len(fold.left) if fold else 0, fold.of if fold else 0,
            _spread(connection, fold) if fold else (0, ""),
            drawn.stages.get(one, "") if drawn.stages.get(one, "") in drawn.opened else ""))
    return tuple(knots)


def _members(drawn: _Drawn) -> dict[str, tuple[str, dict[int, int]]]:
    """The yarn of this trail at each station: on the left what leaves it, on the right comes."""
    shown, whole = _met(drawn.sides), _met(drawn.whole)
    found = {one: (side, whole.get(one, (side, there))[1]) for one, (side, there) in shown.items()}
    for station, (_, there) in found.items():
        if rows := _whole_rows(drawn, station):
            there.clear()
            there |= rows
    if not found[HERE][1]:
        found[HERE][1].update(drawn.made.there())
    return found


def _met(sides: Mapping[str, Ways]) -> dict[str, tuple[str, dict[int, int]]]:
    found: dict[str, tuple[str, dict[int, int]]] = {}
    for (start, _), rows in sides["from"].items():
        _most(found.setdefault(start, ("from", {}))[1], rows)
    _, here = found[HERE] = ("here", {})
    for (start, end), rows in sides["to"].items():
        _most(found.setdefault(end, ("to", {}))[1], rows)
        _most(here, rows if start == HERE else {})
    return found


def _most(there: dict[int, int], rows: Mapping[int, int]) -> None:
    for row, count in rows.items():
        there[row] = max(there.get(row, 0), count)


def _whole_rows(drawn: _Drawn, station: str) -> dict[int, int]:
    """A cord or a pile is there with all its members, whatever came of this thing."""
    fold = drawn.folds.get(station)
    rows = [number for one in (fold.left if fold else (station,))
            if kind_of(one) == "yarn" and (number := number_of(one)) is not None]
    return {row: drawn.made.found.count[row] for row in rows}


def _sure_of(drawn: _Drawn, side: str, station: str, rows: Mapping[int, int]) -> Sure:
    """On the right: how much of this yarn is of the thing; on the left: of that, from there."""
    made = drawn.made
    if side == "to":
        return drawn.asking.of(rows)
    if made.centre.kind not in WITH_YARN_ABOVE:
        return WHOLLY
    fold = drawn.folds.get(station)
    things = frozenset().union(*(_things(made, one)
                                 for one in (fold.left if fold else (station,))))
    return how_sure(made.found, made.there(), things)


def _things(made: Web, station: str) -> frozenset[Thing]:
    """What the thread knows a station on the left by."""
    station = station.removesuffix(AGAIN)
    return made.means.get(station, frozenset({(kind_of(station), number_of(station))}))


def _centre(made: Web, station: str, fold: Fold | None) -> Centre | None:
    number = number_of(station)
    if station == HERE:
        return made.centre
    if fold is not None or number is None:
        return None
    kind = kind_of(station)
    return Centre("yarn" if kind == "left" else kind, (number,))


def _put_up(drawn: _Drawn, station: str, fold: Fold | None) -> str:
    one = fold.left[0] if fold else station
    number = number_of(one)
    leaf = drawn.made.leaves.get(number) if kind_of(one) == "left" and number else None
    return leaf.put_up if leaf else "skein"


def _fold_name(fold: Fold) -> Named:
    kind = fold.key.split("/")[1]
    if fold.key.endswith(FOUND):
        return Named(kind, "", "found without a tag")
    return Named({"lot": "dye lot", "fill": "jar fill", "supplier_lot": "maker's batch",
                  "wash": "wash load"}.get(kind, kind), "")


def _spread(connection: Connection, fold: Fold) -> tuple[int, str]:
    """Of folded skeins: at how many places they lie, or with how many orders they went."""
    if not fold.key.startswith("left/"):
        return 0, ""
    rows = [number for one in fold.left if (number := number_of(one)) is not None]
    places, orders = connection.execute(_SPREAD, {"ids": listed(rows)}).one()
    return (places, "place") if places else (orders, "order")
