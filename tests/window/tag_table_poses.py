"""The tag table for pictures: what is done there before each is taken."""

from typing import Any

from app.calculations.codes import Kind, numbered
from app.window.parts.action_plates import DONE

PILE, SHELF = numbered(Kind.DISC, 52).text, numbered(Kind.SHELF, 1).text


def _in_hand(it: Any, *keys: str) -> None:
    it.scan(PILE)
    it.press(*keys)


def _weighed(it: Any) -> None:
    _in_hand(it, "F7")
    it.fill("97.2", "58.5", "50")
    it.press("F6", "Return")


def _end_of_day(it: Any) -> None:
    it.press("F6", "9")
    it.fill("11")


def _counted(it: Any, met: int) -> None:
    """Eight are laid on a shelf, and so many of them are met at its count."""
    it.scan(SHELF)
    it.scan_tags("2615YX1", 8)
    it.scan(DONE)
    it.scan_tags("2615YX1", met)
    it.scan(DONE)


AT_THE_TAG_TABLE = {
    "tagging-empty": lambda _it: None,
    "tagging": _in_hand,
    "tagging-jammed": lambda it: _in_hand(it, "P", "J", "Down", "Space", "Right", "Space"),
    "tagging-weigh": lambda it: _in_hand(it, "F7"),
    "tagging-weighed": _weighed,
    "tagging-day": _end_of_day,
    "tagging-shelf": lambda it: it.scan(SHELF),
    "tagging-count-few": lambda it: _counted(it, 3),
    "tagging-count-why": lambda it: _counted(it, 5),
}
