"""Rectangles of a page, and when two things on it stand too close."""

from typing import NamedTuple

LEAST_GAP_MM = 0.6  # between two neighbours on a line
_TOUCH_MM = 0.05  # lines of type may touch by this much


class Box(NamedTuple):
    """A rectangle of a page, in mm from its top left."""

    left: float
    top: float
    right: float
    bottom: float

    def holds(self, x: float, y: float) -> bool:
        """Whether a point lies in it."""
        return self.left <= x <= self.right and self.top <= y <= self.bottom

    def turned(self, page_width: float) -> "Box":
        """Where it lies when its page is turned a quarter to the left."""
        return Box(self.top, page_width - self.right, self.bottom, page_width - self.left)

    def within(self, other: "Box") -> bool:
        """Whether all of it lies in the other, by a hundredth of a millimetre."""
        return (
            self.left >= other.left - 0.01
            and self.top >= other.top - 0.01
            and self.right <= other.right + 0.01
            and self.bottom <= other.bottom + 0.01
        )

    def meets(self, other: "Box") -> bool:
        """Whether two things stand too close to be told apart."""
        across = min(self.right, other.right) - max(self.left, other.left)
        down = min(self.bottom, other.bottom) - max(self.top, other.top)
        return across > -LEAST_GAP_MM and down > _TOUCH_MM

    def moved(self, across: float, down: float) -> "Box":
        """The rectangle at another place."""
        return Box(self.left + across, self.top + down, self.right + across, self.bottom + down)

    def shrunk(self, by_mm: float) -> "Box":
        """The rectangle with a margin inside it."""
        return Box(self.left + by_mm, self.top + by_mm, self.right - by_mm, self.bottom - by_mm)
