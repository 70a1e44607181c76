"""A branching trail without its loads, piles and deliveries: what a sheet of paper has room for."""

from app.calculations.graph_folding import led_past
from app.lookups.graph_web import HERE, PART, Web, kind_of, number_of


def shorten(made: Web) -> None:
    """Leave out the stations that all yarn passes through; one that a hold was placed on stays."""
    parents = {row: frozenset(source.parent for source in sources)
               for row, sources in made.found.sources.items()}
    held = {hold.source for hold in made.found.holds}
    stations = dict.fromkeys(one for ways in (made.left, made.right) for link in ways
                             for one in link)
    passed = [one for one in stations
              if _only_passed(made, one) and (kind_of(one), number_of(one)) not in held]
    made.left = led_past(made.left, passed, parents)
    made.right = led_past(made.right, passed, parents)


def _only_passed(made: Web, station: str) -> bool:
    kind, number = kind_of(station), number_of(station)
    if station == HERE or number is None:
        return False
    what = made.kinds.get(number, "") if kind == "yarn" else ""
    return kind in ("load", "delivery") or what == PART or what.startswith("pile")
