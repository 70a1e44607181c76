"""A branching trail laid out: columns from left to right, few crossings, nothing over another.

Layered drawing after Sugiyama, Tagawa and Toda (1981): columns by the longest way, order in a
column by the mean of the neighbours, heights by least squares under a least distance (pool of
adjacent violators). The same trail always lies the same way.
"""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

Point = tuple[float, float]
Link = tuple[str, str]

_SWEEPS = 8


@dataclass(frozen=True, slots=True)
class Size:
    """How much room something needs, in any unit."""

    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Gaps:
    """Least room between columns, between things in a column, and beside a line that passes."""

    across: float
    down: float
    beside: float


@dataclass(frozen=True, slots=True)
class Place:
    """Where something lies: its column, its upper left corner and its size."""

    column: int
    x: float
    y: float
    width: float
    height: float

    @property
    def middle(self) -> float:
        """Half way down."""
        return self.y + self.height / 2


@dataclass(frozen=True, slots=True)
class Layout:
    """All places, and every line as the points it goes through from left to right."""

    places: Mapping[str, Place]
    lines: Mapping[Link, tuple[Point, ...]]
    width: float
    height: float


def in_order(things: Collection[str], links: Collection[Link]) -> list[str]:
    """The things so that each comes after all it comes from; ValueError where links go round."""
    after: dict[str, list[str]] = {thing: [] for thing in things}
    before = dict.fromkeys(things, 0)
    for start, end in links:
        after[start].append(end)
        before[end] += 1
    ready = [thing for thing in things if not before[thing]]
    done: list[str] = []
    while ready:
        done += ready
        freed = []
        for thing in ready:
            for end in after[thing]:
                before[end] -= 1
                if not before[end]:
                    freed.append(end)
        ready = freed
    if len(done) < len(before):
        raise ValueError("These links go round in a circle.")
    return done


def lay_out(
    sizes: Mapping[str, Size], links: Collection[Link], middle: str, gaps: Gaps
) -> Layout:
    """Lay out things and links around one of them: what leads to it as near to it as may be.

    Links must not go round. Things of one column are equally wide.
    """
    links = list(dict.fromkeys(links))
    columns = _columns(sizes, links, middle)
    chains = {link: _chain(link, columns) for link in links}
    rows = _rows(sizes, columns, chains)
    steps = [step for chain in chains.values() for step in pairwise(chain)]
    rows = _uncrossed(rows, steps)
    heights = {one: sizes[one].height if one in sizes else gaps.beside
               for row in rows for one in row}
    tops = _tops(rows, steps, heights, gaps)
    return _placed(sizes, columns, rows, chains, tops, gaps)


def _columns(
    sizes: Mapping[str, Size], links: Sequence[Link], middle: str
) -> dict[str, int]:
    """As far from the beginning as the longest way; what leads to the middle is drawn to it."""
    order = in_order(list(sizes), links)
    before, after = _neighbours(links)
    early: dict[str, int] = {}
    for one in order:
        early[one] = 1 + max((early[start] for start in before.get(one, ())), default=-1)
    leads = {middle}
    late = dict(early)
    for one in reversed(order):
        ends = [late[end] for end in after.get(one, ()) if end in leads]
        if ends:
            leads.add(one)
            late[one] = min(ends) - 1
    return late


def _neighbours(links: Collection[Link]) -> tuple[dict[str, list[str]], dict[str, list[str]]]:
    before: dict[str, list[str]] = {}
    after: dict[str, list[str]] = {}
    for start, end in links:
        before.setdefault(end, []).append(start)
        after.setdefault(start, []).append(end)
    return before, after


def _chain(link: Link, columns: Mapping[str, int]) -> list[str]:
    """A link with one place to pass in every column between its ends."""
    start, end = link
    passed = range(columns[start] + 1, columns[end])
    return [start, *(f"{start} > {end} in {column}" for column in passed), end]


def _rows(
    sizes: Mapping[str, Size], columns: Mapping[str, int],
    chains: Mapping[Link, Sequence[str]],
) -> list[list[str]]:
    """What lies in each column, as it was met first."""
    rows: list[list[str]] = [[] for _ in range(max(columns.values(), default=0) + 1)]
    for one in sizes:
        rows[columns[one]].append(one)
    for (start, _), chain in chains.items():
        for distance, one in enumerate(chain[1:-1], 1):
            rows[columns[start] + distance].append(one)
    return rows


def _uncrossed(
    rows: list[list[str]], steps: Sequence[Link]
) -> list[list[str]]:
    """Each column in the order of its neighbours' means, swept both ways; the best is kept."""
    before, after = _neighbours(steps)
    best, fewest = rows, _crossings(rows, after)
    for sweep in range(_SWEEPS):
        if not fewest:
            break
        rows = [list(row) for row in rows]
        forward = sweep % 2 == 0
        turns = range(1, len(rows)) if forward else range(len(rows) - 2, -1, -1)
        for column in turns:
            near = rows[column - 1 if forward else column + 1]
            at = {one: place for place, one in enumerate(near)}
            beside = before if forward else after
            means = {one: _mean([at[other] for other in beside.get(one, ())], place)
                     for place, one in enumerate(rows[column])}
            rows[column].sort(key=means.__getitem__)
        crossings = _crossings(rows, after)
        if crossings < fewest:
            best, fewest = rows, crossings
    return best


def _mean(places: Sequence[float], otherwise: float) -> float:
    return sum(places) / len(places) if places else otherwise


def _crossings(
    rows: Sequence[Sequence[str]], after: Mapping[str, Sequence[str]]
) -> int:
    """How often lines between neighbouring columns cross: inversions, counted by merging."""
    total = 0
    for row, following in pairwise(rows):
        at = {one: place for place, one in enumerate(following)}
        ends = [place for one in row for place in sorted(at[end] for end in after.get(one, ()))]
        total += _inversions(ends)[0]
    return total


def _inversions(ends: list[int]) -> tuple[int, list[int]]:
    if len(ends) < 2:
        return 0, ends
    half = len(ends) // 2
    (first, left), (second, right) = _inversions(ends[:half]), _inversions(ends[half:])
    count, merged, place = first + second, list[int](), 0
    for end in left:
        while place < len(right) and right[place] < end:
            merged.append(right[place])
            place += 1
        count += place
        merged.append(end)
    return count, merged + right[place:]


def _tops(
    rows: Sequence[Sequence[str]], steps: Sequence[Link],
    heights: Mapping[str, float], gaps: Gaps,
) -> dict[str, float]:
    """The upper edge of everything: as near to the mean of its neighbours as the order allows."""
    before, after = _neighbours(steps)
    middles: dict[str, float] = {}
    for row in rows:
        middles |= _stacked(row, [0.0] * len(row), heights, gaps)
    for sweep in range(_SWEEPS):
        beside = (before, after)[sweep % 2]
        for row in rows if sweep % 2 == 0 else reversed(rows):
            wanted = [_mean([middles[other] for other in beside.get(one, ())], middles[one])
                      for one in row]
            middles |= _stacked(row, wanted, heights, gaps)
    tops = {one: middle - heights[one] / 2 for one, middle in middles.items()}
    highest = min(tops.values(), default=0.0)
    return {one: top - highest for one, top in tops.items()}


def _stacked(
    row: Sequence[str], wanted: Sequence[float], heights: Mapping[str, float], gaps: Gaps
) -> dict[str, float]:
    """Middles as near to the wanted ones as least squares can, each far enough from the next."""
    offsets = [0.0]
    for one, other in pairwise(row):
        offsets.append(offsets[-1] + (heights[one] + heights[other]) / 2 + gaps.down)
    pools: list[tuple[float, int]] = []  # the mean of what is wanted less offset, and of how many
    for want, offset in zip(wanted, offsets, strict=False):
        mean, count = want - offset, 1
        while pools and pools[-1][0] >= mean:
            above, many = pools.pop()
            mean = (mean * count + above * many) / (count + many)
            count += many
        pools.append((mean, count))
    starts = [mean for mean, count in pools for _ in range(count)]
    return {one: begins + offset
            for one, begins, offset in zip(row, starts, offsets, strict=False)}


def _placed(
    sizes: Mapping[str, Size], columns: Mapping[str, int], rows: Sequence[Sequence[str]],
    chains: Mapping[Link, Sequence[str]], tops: Mapping[str, float], gaps: Gaps,
) -> Layout:
    widths = [0.0] * len(rows)
    for one, size in sizes.items():
        widths[columns[one]] = max(widths[columns[one]], size.width)
    lefts = [0.0]
    for width in widths:
        lefts.append(lefts[-1] + width + gaps.across)
    places: dict[str, Place] = {
        one: Place(columns[one], lefts[columns[one]], tops[one], widths[columns[one]], size.height)
        for one, size in sizes.items()}
    lines: dict[Link, tuple[Point, ...]] = {}
    for (start, end), chain in chains.items():
        passed = [point for distance, one in enumerate(chain[1:-1], 1)
                  for point in _passing(columns[start] + distance, lefts, widths,
                                        tops[one] + gaps.beside / 2)]
        here, there = places[start], places[end]
        lines[start, end] = ((here.x + here.width, here.middle), *passed, (there.x, there.middle))
    height = max((place.y + place.height for place in places.values()), default=0.0)
    return Layout(places, lines, max(lefts[-1] - gaps.across, 0.0), height)


def _passing(
    column: int, lefts: Sequence[float], widths: Sequence[float], y: float
) -> Iterator[Point]:
    """A line goes level through a column."""
    yield lefts[column], y
    yield lefts[column] + widths[column], y
