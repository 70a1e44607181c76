"""A shop as the counter sees it: lots of one colourway with skeins on two shelves."""

from dataclasses import dataclass, field
from typing import Any

from app.calculations.codes import Kind
from app.work.bundling import make_plates
from app.work.moving import To, move
from tests.makers import Studio


@dataclass
class Shop:
    """`lots` and `skeins` go together; four of each, the last on the second shelf."""

    studio: Studio
    shelves: list[int]
    lots: list[int] = field(default_factory=list)
    skeins: list[list[int]] = field(default_factory=list)

    def do(self, *args: Any, **more: Any) -> Any:
        return self.studio.do(*args, **more)

    def ask(self, *args: Any) -> Any:
        return self.studio.book.ask(*args)


def a_shop(studio: Studio, lots: int = 2) -> Shop:
    """The shop as it opens."""
    shelves = studio.do(make_plates, Kind.SHELF, [4]) + studio.do(
        make_plates, Kind.SHELF, [7], "the window")
    shop = Shop(studio, shelves)
    for _ in range(lots):
        lot, skeins = studio.tagged(studio.cone(), 4)
        studio.do(move, skeins[:3], To("shelf", place=shelves[0]))
        studio.do(move, skeins[3:], To("shelf", place=shelves[1]))
        shop.lots.append(lot)
        shop.skeins.append(skeins)
    return shop
