"""Boards and steamer: a lot is one bottle set, one steamer run and one base."""

from datetime import timedelta

import pytest
from sqlalchemy import select

from app.calculations.codes import Kind
from app.lookups.pots import pots_now
from app.problems import NotFound, Refused
from app.records import DyeLot, InLoad, OnBoard
from app.work.bases import describe_base
from app.work.bundling import make_plates
from app.work.holding import hold
from app.work.painting import into_steamer, lay_on_board
from app.work.stocks import fill_bottles, refill_bottle
from tests.dyehouse import Dyehouse
from tests.makers import Studio, tarnfield
from tests.work.test_stocks import painted


class Painter:
    """Two boards, a steamer and a bottle set."""

    def __init__(self, studio: Studio) -> None:
        self.studio, self.house = studio, Dyehouse(studio)
        self.one, self.two = studio.do(make_plates, Kind.BOARD, [1, 2])
        (self.steamer,) = studio.do(make_plates, Kind.STEAMER, [1])
        self.recipe, weighing = painted(self.house)
        self.house.take(weighing, self.house.fills[1], 2_640)
        self.set = studio.do(fill_bottles, self.recipe, weighing)

    def lay(self, board: int, count: int = 4, bottle_set: int | None = None) -> int:
        """Newly wound skeins on a board."""
        group = self.studio.wind(self.studio.cone(), count)
        self.studio.do(lay_on_board, board, [group], bottle_set or self.set)
        return group

    def steam(self, *boards: int) -> dict[str, list[int]]:
        """These boards enter the steamer."""
        found: dict[str, list[int]] = self.studio.do(
            into_steamer, boards, self.steamer, self.studio.random)
        return found


@pytest.fixture
def painter(studio: Studio) -> Painter:
    """A painter at work."""
    return Painter(studio)


def test_a_code_is_born_as_the_board_enters_the_steamer(painter: Painter) -> None:
    studio = painter.studio
    groups = [painter.lay(painter.one), painter.lay(painter.two)]
    done = studio.done(into_steamer, [painter.one, painter.two], painter.steamer, studio.random)
    (lot,) = done.answer["lots"]
    assert done.said == f"26·15·{(studio.code(lot) or '')[4:]}: 8 skeins in steamer 1"
    assert all(studio.origins(group, "lot")[0].thing == lot for group in groups)
    assert studio.book.ask(lambda c: c.execute(select(InLoad.yarn).where(
        InLoad.load == done.answer["load"])).scalars().all()) == groups
    (pot,) = studio.book.ask(pots_now)
    assert (pot.bath, pot.pot) == (done.answer["baths"][0], None)
    with pytest.raises(Refused, match="Nothing lies on these boards"):
        painter.steam(painter.one, painter.two)
    studio.undo()
    assert studio.book.ask(lambda c: c.execute(select(OnBoard.bath)).scalars().all()) == [None] * 2
    assert len(painter.steam(painter.one, painter.two)["lots"]) == 1
    studio.check()


def test_a_board_laid_by_mistake_is_taken_back(painter: Painter) -> None:
    group = painter.lay(painter.one)
    painter.studio.undo()
    painter.studio.do(lay_on_board, painter.two, [group], painter.set)
    assert len(painter.steam(painter.two)["lots"]) == 1


def test_a_refilled_bottle_in_one_run_is_a_lot_of_its_own(painter: Painter) -> None:
    painter.lay(painter.one)
    again = painter.studio.do(refill_bottle, painter.set, "A")
    painter.lay(painter.two, bottle_set=again)
    steamed = painter.steam(painter.one, painter.two)
    assert len(set(steamed["codes"])) == len(steamed["baths"]) == len(steamed["lots"]) == 2


def test_one_set_in_two_runs_are_two_lots(painter: Painter) -> None:
    painter.lay(painter.one)
    painter.lay(painter.two)
    first, second = painter.steam(painter.one), painter.steam(painter.two)
    assert first["lots"] != second["lots"]
    assert first["load"] != second["load"]


def test_two_bases_on_a_board_are_companion_lots(painter: Painter) -> None:
    painter.studio.do(describe_base, tarnfield(name="Gossamer Lamb", millitex=125_000))
    lace = painter.studio.wind(painter.studio.cones(1, "Gossamer Lamb")[0], 3, "blue")
    painter.studio.do(lay_on_board, painter.one, [lace], painter.set)
    painter.lay(painter.one)
    steamed = painter.steam(painter.one)
    assert (len(steamed["baths"]), len(steamed["lots"])) == (1, 2)
    assert painter.studio.book.ask(lambda c: c.execute(
        select(DyeLot.bath).distinct()).scalars().all()) == steamed["baths"]


def test_old_bottles_a_second_set_and_a_hold_are_said_and_kept(painter: Painter) -> None:
    studio = painter.studio
    painter.lay(painter.one)
    again = studio.do(refill_bottle, painter.set, "A")
    studio.clock.now += timedelta(hours=49)
    cone = studio.cone()
    group = studio.wind(cone, 2)
    studio.do(hold, "cone", cone, "oil")
    done = studio.done(lay_on_board, painter.one, [group], again)
    assert done.said == "laid 2 skeins of Sluice Keeper's Glove on board 1"
    assert done.findings == (
        "Another bottle set was used on this board: it will be lots of their own.",
        "Bottle set 2 is older than 48 hours: shake it and look for dye at the bottom.",
        "HOLD lies on yarn in this pot: it goes on, marked. Ask who placed the hold.")
    assert len(painter.steam(painter.one)["lots"]) == 2


def test_what_cannot_lie_on_a_board_is_refused(painter: Painter) -> None:
    group = painter.lay(painter.one)
    with pytest.raises(Refused, match="lies on board 1 already"):
        painter.studio.do(lay_on_board, painter.two, [group], painter.set)
    with pytest.raises(Refused, match="Nothing lies on the board yet"):
        painter.studio.do(lay_on_board, painter.two, [], painter.set)
    with pytest.raises(NotFound, match="This bottle set is not in the book"):
        painter.studio.do(lay_on_board, painter.two, [group], 99)
    parts = painter.studio.split(group, 2, 2)
    with pytest.raises(Refused, match="Scan what it became"):
        painter.studio.do(lay_on_board, painter.two, [group], painter.set)
    with pytest.raises(Refused, match="Nothing lies on these boards"):
        painter.steam(painter.one)
    painter.studio.do(lay_on_board, painter.one, parts, painter.set)
    assert len(painter.steam(painter.one)["lots"]) == 1
