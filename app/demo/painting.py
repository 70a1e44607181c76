"""The tray: bottles are filled for a colourway by zones, boards are painted, and steamed."""

from app.calculations.codes import Kind
from app.demo.hands import Hands
from app.demo.making import newest_version
from app.demo.sources import Line
from app.demo.weighing import weigh_out
from app.work.painting import into_steamer, lay_on_board
from app.work.stocks import fill_bottles


def paint(hands: Hands, line: Line) -> None:
    """One set of bottles for these cords, each of which lies on a board of its own."""
    version = newest_version(hands, line["colourway"])
    weighing = weigh_out(hands, hands.yarn(line), version, "bottles")
    bottles = hands.do(fill_bottles, version, weighing)
    for number, cord in enumerate(line["cords"], 1):
        board = hands.painted[cord] = hands.thing(Kind.BOARD, number)
        hands.do(lay_on_board, board, hands.yarn({"cord": cord}), bottles)


def steam(hands: Hands, line: Line) -> None:
    """The boards stand in the steamer: their lots are born."""
    boards = [hands.painted.pop(cord) for cord in line["cords"]]
    made = hands.do(into_steamer, boards, hands.thing(Kind.STEAMER, line["steamer"]),
                    hands.chance)
    hands.lots.update(zip(line["cords"], made["lots"], strict=True))
