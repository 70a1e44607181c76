"""The shop at work, the truth kept beside: what is promised, sold, sent, and comes back."""

from hypothesis import strategies as st
from hypothesis.stateful import precondition, rule

from app.lookups.thread import live_holds
from app.problems import Refused
from app.work.holding import lift_hold
from app.work.returning import came_back, came_back_untagged
from app.work.selling import (
    OrderIn,
    Wanted,
    call_off,
    know_customer,
    place_order,
    sell,
    send,
    take_for,
)
from tests.whole.hidden_truth import Line
from tests.whole.walk_of_shelf import HERE, SENT, ShelfWalk


class TradeWalk(ShelfWalk):
    """All that a studio does, from winding to a parcel that comes back."""

    @precondition(lambda self: self.told.left)
    @rule(data=st.data(), count=st.integers(1, 4), put_up=st.sampled_from([None, "skein", "mini"]),
          any_lot=st.booleans(), undo=st.booleans())
    def place_order(
        self, data: st.DataObject, count: int, put_up: str | None, any_lot: bool, undo: bool
    ) -> None:
        """No more is promised than can be kept beside all that was promised before."""
        lot = None if any_lot else data.draw(st.sampled_from(list(self.told.left)))
        number = f"N{len(self.world.lines)}"
        buyer = self.do(know_customer, "Ada Nygård")
        order = OrderIn(number, self.studio.clock.now, "web",
                        (Wanted("green", count, lot, put_up=put_up),), buyer)
        line = Line(number, count, lot, put_up, True)
        if lot is not None and self.cannot_be_promised(lot, line):
            try:
                self.studio.done(place_order, order)
            except Refused:
                return
            raise AssertionError("more was promised than is there")
        done = self.attempt(place_order, order, undo=undo)
        if done is not None:
            self.world.lines[done.answer[0]] = line
            self.told = self.answers()

    def cannot_be_promised(self, lot: int, line: Line) -> bool:
        before = self.world.short(lot, self.free(lot))
        self.world.lines[-1] = line
        after = self.world.short(lot, self.free(lot))
        del self.world.lines[-1]
        return after > before

    @precondition(lambda self: any(line.open for line in self.world.lines.values()))
    @rule(data=st.data(), undo=st.booleans())
    def take_for_order(self, data: st.DataObject, undo: bool) -> None:
        number = data.draw(st.sampled_from(
            [number for number, line in self.world.lines.items() if line.open]))
        line = self.world.lines[number]
        rows = [row for row in self.tagged(*HERE, "put by", "fair")
                if self.world.tag_lot.get(row) is not None
                and line.lot in (None, self.world.tag_lot[row])]
        if rows:
            rows = self.pick(data, rows, line.open)
            if len({self.world.put_up(row) for row in rows}) == 1:
                done = self.to_buyer(rows, take_for, number, rows, undo=undo, but=line.lot)
                self.went(rows, "taken", done)
                if done is not None:
                    line.taken |= set(rows)
                    self.told = self.answers()

    @precondition(lambda self: any(line.taken for line in self.world.lines.values()))
    @rule(data=st.data(), undo=st.booleans())
    def send_order(self, data: st.DataObject, undo: bool) -> None:
        line = data.draw(st.sampled_from(
            [line for line in self.world.lines.values() if line.taken]))
        rows = list(line.taken)
        done = self.to_buyer(rows, send, line.order, undo=undo)
        if done is not None:
            line.sent |= set(rows)
            self.went(rows, SENT[0], done)

    @precondition(lambda self: any(line.open for line in self.world.lines.values()))
    @rule(data=st.data(), undo=st.booleans())
    def call_off(self, data: st.DataObject, undo: bool) -> None:
        number = data.draw(st.sampled_from(
            [number for number, line in self.world.lines.items() if line.open]))
        if self.attempt(call_off, number, undo=undo) is not None:
            self.world.lines[number].over = True
            self.told = self.answers()

    @precondition(lambda self: self.tagged(*HERE, "put by", "fair"))
    @rule(data=st.data(), named=st.booleans(), undo=st.booleans(), late=st.booleans())
    def walk_in_sale(self, data: st.DataObject, named: bool, undo: bool, late: bool) -> None:
        rows = self.some(data, *HERE, "put by", "fair")
        at = self.late(rows, late)
        buyer = self.do(know_customer, "Bo Ek") if named else None
        done = self.to_buyer(rows, sell, rows, buyer, undo=undo, happened=at)
        self.went(rows, SENT[0] if named else SENT[1], done, at)

    @precondition(lambda self: self.tagged(*SENT, "fair"))
    @rule(data=st.data(), undo=st.booleans(), late=st.booleans())
    def come_back(self, data: st.DataObject, undo: bool, late: bool) -> None:
        rows = self.pick(data, self.tagged(*SENT, "fair"), 2)
        at = self.late(rows, late)
        self.went(rows, "table", self.attempt(came_back, rows, undo=undo, happened=at), at)

    @precondition(lambda self: self.sent_with_orders())
    @rule(data=st.data(), undo=st.booleans())
    def come_back_without_a_tag(self, data: st.DataObject, undo: bool) -> None:
        """Which of those that were sent it is, nobody knows but the truth."""
        order, row = data.draw(st.sampled_from(self.sent_with_orders()))
        put_up = self.world.put_up(row)
        done = self.attempt(came_back_untagged, 1, 97_000, order, put_up, undo=undo)
        if done is not None:
            self.found(done.answer, row)

    def sent_with_orders(self) -> list[tuple[str, int]]:
        return [(line.order, row) for line in self.world.lines.values() for row in line.sent
                if row in self.tagged(*SENT, kinds=["skein"])]

    def lift_all_holds(self) -> None:
        for one in self.studio.book.ask(live_holds):
            self.do(lift_hold, one.id, "washed out")
        self.told = self.answers()

    @precondition(lambda self: any(self.free(lot) for lot in self.told.left))
    @rule(data=st.data(), count=st.integers(1, 3), how_far=st.integers(1, 4))
    def order_and_parcel(self, data: st.DataObject, count: int, how_far: int) -> None:
        """An order is taken, sent, and some of it comes back."""
        self.lift_all_holds()
        lines = len(self.world.lines)
        self.place_order(data, count, None, False, False)
        if len(self.world.lines) > lines:
            self.take_for_order(data, False)
        if how_far > 1 and any(line.taken for line in self.world.lines.values()):
            self.send_order(data, False)
        if how_far > 2 and self.sent_with_orders():
            self.come_back_without_a_tag(data, False)
        if how_far > 3 and self.tagged(*SENT):
            self.come_back(data, False, False)
