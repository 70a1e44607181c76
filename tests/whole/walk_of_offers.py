"""What is taken of an offer is done with it, and returns are looked at: the truth kept beside."""

from datetime import timedelta

from hypothesis import strategies as st
from hypothesis.stateful import precondition, rule
from sqlalchemy import func, select

from app.problems import Refused
from app.records import OrderLine
from app.work.answering import (
    end_put_by_offered,
    keep_offered,
    open_kit_offered,
    promise_offered,
    shelve_offered,
)
from app.work.moving import end_put_by
from app.work.offering import OfferIn
from app.work.returning import AS_IT_LEFT, LOOKS, WOUND, taken_back
from app.work.serving import Buyer
from tests.whole.hidden_truth import Line
from tests.whole.walk_of_looks import LooksWalk
from tests.whole.walk_of_shelf import HERE, SENT

UNA = Buyer(name="Una Fell")


class OffersWalk(LooksWalk):
    """All that a studio does, with what is done at the counter for somebody who wants more."""

    def said(self, way: str = "same lot", count: int = 1) -> OfferIn:
        return OfferIn(next(iter(self.told.left)), count, way, "taken")

    @precondition(lambda self: self.told.left and self.tagged(*HERE))
    @rule(data=st.data(), undo=st.booleans())
    def keep_what_was_offered(self, data: st.DataObject, undo: bool) -> None:
        rows = self.some(data, *HERE)
        until = self.studio.clock.now + timedelta(days=7)
        done = self.to_buyer(rows, keep_offered, self.said(), rows, until, UNA, undo=undo)
        self.world.ends |= dict.fromkeys(rows, until) if done else {}
        self.went(rows, "put by", done)

    @precondition(lambda self: self.told.left and self.tagged("put by"))
    @rule(data=st.data(), offer=st.booleans(), undo=st.booleans())
    def give_a_put_by_up(self, data: st.DataObject, offer: bool, undo: bool) -> None:
        rows = self.pick(data, self.tagged("put by"), 2)
        self.went(rows, "shelf", self.attempt(
            end_put_by_offered, self.said(), rows, self.shelf, undo=undo) if offer
            else self.attempt(end_put_by, rows, self.shelf, undo=undo))

    @precondition(lambda self: self.told.left and self.tagged("table"))
    @rule(data=st.data(), undo=st.booleans())
    def shelve_for_somebody(self, data: st.DataObject, undo: bool) -> None:
        rows = self.pick(data, self.tagged("table"), 3)
        self.went(rows, "shelf", self.attempt(
            shelve_offered, self.said(), rows, self.shelf, undo=undo))

    @precondition(lambda self: self.told.left and self.world.kits)
    @rule(data=st.data(), undo=st.booleans())
    def open_a_kit_for_somebody(self, data: st.DataObject, undo: bool) -> None:
        kit = data.draw(st.sampled_from(list(self.world.kits)))
        self.went(self.world.kits[kit], "shelf", self.attempt(
            open_kit_offered, self.said(), kit, self.shelf, undo=undo))

    @precondition(lambda self: self.told.left)
    @rule(data=st.data(), count=st.integers(1, 3), undo=st.booleans())
    def promise_what_was_offered(self, data: st.DataObject, count: int, undo: bool) -> None:
        """Never more than is left beside all that was promised before."""
        lot = data.draw(st.sampled_from(list(self.told.left)))
        said = self.said("nearest lot", count)
        line = Line("", count, lot, "skein", True)
        if self.cannot_be_promised(lot, line):
            try:
                self.studio.done(promise_offered, said, lot, count, UNA)
            except Refused:
                return
            raise AssertionError("more was promised than is there")
        done = self.attempt(promise_offered, said, lot, count, UNA, undo=undo)
        if done is not None:
            row = self.studio.book.ask(
                lambda c: c.execute(select(func.max(OrderLine.id))).scalar_one())
            line.order = done.answer
            self.world.lines[row] = line
            self.told = self.answers()

    @precondition(lambda self: self.tagged(*SENT, kinds=["skein"]))
    @rule(data=st.data(), look=st.sampled_from(LOOKS), shelved=st.booleans(), undo=st.booleans())
    def take_back_and_look(
        self, data: st.DataObject, look: str, shelved: bool, undo: bool
    ) -> None:
        """What was wound or smells is told; only what may be sold again lies on a shelf at once."""
        rows = self.pick(data, self.tagged(*SENT, kinds=["skein"]), 2)
        done = self.attempt(taken_back, rows, look, None, self.shelf if shelved else None,
                            undo=undo)
        self.went(rows, "shelf" if shelved and look in (AS_IT_LEFT, WOUND) else "table", done)
