"""What lies on top of something else in a window, and what sticks out of its card."""

from itertools import combinations

from PySide6.QtCore import QPoint, QRect
from PySide6.QtWidgets import QWidget

from app.window.parts.card import Card


def overlaps(over: QWidget) -> list[str]:
    """Pairs of widgets on one card that share a pixel, and those that leave their card."""
    found = []
    for card in over.findChildren(Card):
        if not card.isVisible():
            continue
        leaves = [one for one in card.findChildren(QWidget) if _is_leaf(one)]
        boxes = [(one, QRect(one.mapTo(card, QPoint(0, 0)), one.size())) for one in leaves]
        found += [f"{_said(a)} lies on {_said(b)}" for (a, one), (b, other)
                  in combinations(boxes, 2) if one.intersects(other)]
        found += [f"{_said(a)} leaves its card" for a, box in boxes
                  if not card.rect().contains(box)]
    return found


def _is_leaf(one: QWidget) -> bool:
    inside = [child for child in one.children() if isinstance(child, QWidget)]
    return one.isVisible() and not any(child.isVisible() for child in inside)


def _said(one: QWidget) -> str:
    text = getattr(one, "text", lambda: "")()
    return f"{type(one).__name__} {text or one.accessibleName()!r}"
