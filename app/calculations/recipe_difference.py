"""What changed from one version of a recipe to the next, in one line."""

from collections import Counter
from collections.abc import Sequence

from app.calculations.scaling import Component


def difference_line(before: Sequence[Component], after: Sequence[Component]) -> str:
    """The changes in the order of the new recipe, then what is gone: `yellow 0.22 → 0.25 %`.

    Empty when nothing changed; a recipe that only pours in another order says so. Components are
    told apart by name, two lines of one name by their order.
    """
    old, new = _by_name(before), _by_name(after)
    changes = [
        _change(old.get(place), component)
        for place, component in new.items()
        if old.get(place) != component
    ]
    changes += [f"{_said(gone)} taken out" for place, gone in old.items() if place not in new]
    if not changes and list(before) != list(after):
        return "poured in another order: " + ", ".join(component.name for component in after)
    return "; ".join(changes)


def _by_name(recipe: Sequence[Component]) -> dict[tuple[str, int], Component]:
    met: Counter[str] = Counter()
    lines = {}
    for component in recipe:
        lines[component.name, met[component.name]] = component
        met[component.name] += 1
    return lines


def _change(was: Component | None, now: Component) -> str:
    if was is None:
        return f"{_said(now)} added"
    if was.per is now.per:
        return f"{now.name} {was.amount} → {now.amount} {_unit(now)}"
    return f"{now.name} {was.amount} {was.per} → {now.amount} {now.per}"


def _said(component: Component) -> str:
    return f"{component.name} {component.amount} {_unit(component)}"


def _unit(component: Component) -> str:
    return component.per.removesuffix(" owf")
