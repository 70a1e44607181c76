"""A shop's shelves for questions about orders: two lots of one colourway."""

from typing import Any

from app.calculations.codes import Kind
from app.work.bundling import make_plates
from app.work.moving import To, move
from app.work.selling import OrderIn, Wanted, know_customer, place_order
from tests.makers import Studio

GLOVE = "Sluice Keeper's Glove"


def shelved(studio: Studio, *counts: int) -> list[tuple[int, list[int]]]:
    """A lot of each count, on shelves 3, 4 and so on: (lot, skeins)."""
    shelves = studio.do(make_plates, Kind.SHELF, range(3, 3 + len(counts)))
    found = []
    for count, shelf in zip(counts, shelves, strict=True):
        lot, skeins = studio.tagged(studio.cone(), count)
        studio.do(move, skeins, To("shelf", place=shelf))
        found.append((lot, skeins))
    return found


def ordered(studio: Studio, number: str, *lines: Any, name: str = "Ada Nygård") -> list[int]:
    """An order; each line is how many, or a Wanted."""
    wanted = tuple(line if isinstance(line, Wanted) else Wanted(GLOVE, line, colourway=1)
                   for line in lines)
    buyer = studio.do(know_customer, name) if name else None
    lines_of: list[int] = studio.do(place_order, OrderIn(number, studio.clock.now, "web", wanted,
                                                         buyer))
    return lines_of
