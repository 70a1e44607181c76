"""A branching trail made small enough to be seen: what is alike and many is folded into one."""

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass

from app.calculations.graph_layout import Link, in_order

AGAIN = " again"


@dataclass(frozen=True, slots=True)
class Fold:
    """Things of one kind at one stage, drawn as one; `left` are those that are not drawn singly."""

    key: str
    left: tuple[str, ...]
    of: int
    opened: bool


def unwound(links: Iterable[Link]) -> tuple[Link, ...]:
    """The same links where none leads back to where it came from: there a thing is met again.

    The second meeting has the thing's own key with `AGAIN` behind it, and nothing after it.
    """
    after: dict[str, list[str]] = defaultdict(list)
    for start, end in links:
        after[start].append(end)
    kept: list[Link] = []
    on_the_way, done = set[str](), set[str]()
    for root in list(after):
        waiting = [] if root in done else [(root, iter(after[root]))]
        on_the_way |= {one for one, _ in waiting}
        while waiting:
            start, ends = waiting[-1]
            end = next(ends, "")
            if not end:
                waiting.pop()
                on_the_way.discard(start)
                done.add(start)
                continue
            kept.append((start, f"{end}{AGAIN}" if end in on_the_way else end))
            if end not in on_the_way and end not in done and end in after:
                on_the_way.add(end)
                waiting.append((end, iter(after[end])))
    return tuple(kept)


def depths(things: Collection[str], links: Collection[Link]) -> dict[str, int]:
    """How many links the longest way to each thing has."""
    before: dict[str, list[str]] = defaultdict(list)
    for start, end in links:
        before[end].append(start)
    found: dict[str, int] = {}
    for one in in_order(things, links):
        found[one] = 1 + max((found[start] for start in before[one]), default=-1)
    return found


def folds(
    stages: Mapping[str, str], most: Mapping[str, int], opened: Collection[str], shown: int
) -> tuple[Fold, ...]:
    """What is folded, for things by stage, {thing: stage}: where a stage has more than may be seen.

    Of an opened stage the first `shown` are drawn singly, in the order given, and the rest folded.
    """
    at: dict[str, list[str]] = defaultdict(list)
    for thing, stage in stages.items():
        at[stage].append(thing)
    found = []
    for stage, there in at.items():
        if len(there) <= most[stage]:
            continue
        is_opened = stage in opened
        left = tuple(there[shown:] if is_opened else there)
        if left:
            found.append(Fold(stage, left, len(there), is_opened))
    return tuple(found)


def merged(
    links: Mapping[Link, Mapping[int, int]], into: Mapping[str, str], members: Mapping[int, int]
) -> dict[Link, dict[int, int]]:
    """The links between what is drawn, each with all the rows of yarn that go that way.

    A lot dyed of two fills has no more `members` where these are folded into one.
    """
    found: dict[Link, dict[int, int]] = defaultdict(dict)
    for (start, end), rows in links.items():
        there = found[into.get(start, start), into.get(end, end)]
        for row, count in rows.items():
            there[row] = min(there.get(row, 0) + count, members[row])
    return dict(found)


def led_past(
    links: Mapping[Link, Mapping[int, int]], gone: Collection[str],
    parents: Mapping[int, Collection[int]],
) -> dict[Link, dict[int, int]]:
    """The links without the stations that are `gone`: each way in leads on to the ways out of it.

    It leads to those that the same yarn goes, or yarn that came out of it: `parents` names the rows
    that each row came out of. A station where something begins or ends stays.
    """
    found = {link: dict(rows) for link, rows in links.items()}
    for station in gone:
        came = {start: rows for (start, end), rows in found.items() if end == station}
        went = {end: rows for (start, end), rows in found.items() if start == station}
        if not came or not went:
            continue
        for end, rows in went.items():
            ways = {start: on for start, there in came.items()
                    if (on := {row: count for row, count in rows.items()
                               if _goes_on(row, there, parents)})}
            for start, on in (ways or dict.fromkeys(came, rows)).items():
                if start != end:
                    found.setdefault((start, end), {}).update(on)
        found = {link: rows for link, rows in found.items() if station not in link}
    return found


def _goes_on(row: int, came: Collection[int], parents: Mapping[int, Collection[int]]) -> bool:
    return row in came or any(parent in came for parent in parents.get(row, ()))
