"""Skeins with their tags, the truth kept beside: shelf, fair, kits, minis, finds, old lots."""

from collections.abc import Callable, Sequence
from datetime import datetime, timedelta
from typing import Any

from hypothesis import strategies as st
from hypothesis.stateful import precondition, rule
from sqlalchemy import select

from app.lookups.finishing import NO_TIE
from app.lookups.present import leaves
from app.lookups.tagging import marks_for, pile_facts
from app.lookups.walks import below
from app.problems import Refused
from app.records import InBath
from app.store.book import Done
from app.work.dyeing import BathIn, into_bath
from app.work.finishing import finish
from app.work.kits import make_kit, open_kit, sell_kit
from app.work.matching import belongs_to, find, is_missing_from, is_one_of
from app.work.mixing import lose
from app.work.moving import To, call_second, end_put_bys, lay, move, put_by
from app.work.opening_stock import OldLot, open_lot
from app.work.remaking import cut, gather
from app.work.tagging import apply_tag, reprint
from app.work.winding import Drawn, Wound, wind
from tests.makers import EACH_MG, LONG_MM
from tests.whole.walk_of_yarn import YarnWalk

HERE = ("table", "shelf")
SENT = ("sent, buyer known", "sent, buyer not known")


class ShelfWalk(YarnWalk):
    """All that is done with skeins that wear their tags, but for selling them."""

    def attempt(
        self, work: Callable[..., Any], *args: Any, undo: bool = False, **more: Any
    ) -> Done[Any] | None:
        """What was done; none where it was taken back, which must change nothing."""
        done = self.studio.done(work, *args, **more)
        if not undo:
            return done
        self.studio.undo(done.seq)
        assert self.answers() == self.told
        return None

    def to_buyer(
        self, rows: Sequence[int], work: Callable[..., Any], *args: Any, undo: bool = False,
        but: int | None = None, happened: datetime | None = None, **more: Any,
    ) -> Done[Any] | None:
        """Refused if one is held, or if another order's promise could not be kept; late marked."""
        held = any(self.told.held[row] for row in rows)
        broken = any(self.breaks_a_promise(rows, lot) for lot in self.told.left if lot != but)
        if happened is None and (held or broken):
            try:
                self.studio.done(work, *args, **more)
            except Refused:
                assert self.answers() == self.told
                return None
            raise AssertionError("this should have been refused")
        done = self.attempt(work, *args, undo=undo, happened=happened, **more)
        if done is not None and happened is not None:
            assert any("HOLD" in one for one in done.findings) == held
            assert any(" on the shelf, so " in one for one in done.findings) == broken
        return done

    def breaks_a_promise(self, rows: Sequence[int], lot: int) -> bool:
        free = self.free(lot)
        after = [row for row in free if row not in rows]
        return self.world.short(lot, after) > self.world.short(lot, free)

    def went(self, rows: Sequence[int], state: str, done: Done[Any] | None,
             at: datetime | None = None) -> None:
        if done is not None:
            self.world.go(rows, state, at or self.studio.clock.now)
            self.told = self.answers()

    def some(self, data: st.DataObject, *states: str, most: int = 3) -> list[int]:
        """Rows in these states, of one put-up."""
        rows = self.tagged(*states)
        put_up = self.world.put_up(rows[0])
        return self.pick(data, [row for row in rows if self.world.put_up(row) == put_up], most)

    def late(self, rows: Sequence[int], late: bool) -> datetime | None:
        """A moment that is over, but after these skeins came to where they are."""
        if not late:
            return None
        return max(self.world.since[row] for row in rows) + timedelta(seconds=20)

    @precondition(lambda self: self.tagged("table", "fair", "put by", "taken", "lost"))
    @rule(data=st.data(), undo=st.booleans())
    def to_shelf(self, data: st.DataObject, undo: bool) -> None:
        rows = self.pick(data, self.tagged("table", "fair", "put by", "taken", "lost"), 4)
        self.went(rows, "shelf", self.attempt(move, rows, To("shelf", place=self.shelf), undo=undo))

    @precondition(lambda self: self.tagged("table", "put by"))
    @rule(data=st.data(), undo=st.booleans())
    def lie_on_a_shelf(self, data: st.DataObject, undo: bool) -> None:
        rows = self.pick(data, self.tagged("table", "put by"), 4)
        kept = [row for row in rows if row in self.tagged("put by")
                and self.world.ends[row] > self.studio.clock.now + timedelta(minutes=1)]
        done = self.attempt(lay, rows, self.shelf, undo=undo)
        self.went(kept, "put by", done)
        self.went([row for row in rows if row not in kept], "shelf", done)

    @precondition(lambda self: self.tagged(*HERE))
    @rule(data=st.data(), undo=st.booleans(), late=st.booleans(),
          state=st.sampled_from(["fair", "put by"]))
    def to_fair_or_put_by(
        self, data: st.DataObject, undo: bool, late: bool, state: str
    ) -> None:
        rows = self.some(data, *HERE)
        at = self.late(rows, late)
        if state == "fair":
            done = self.to_buyer(rows, move, rows, To("fair", place=self.fair), undo=undo,
                                 happened=at)
        else:
            until = self.studio.clock.now + timedelta(days=7)
            done = self.to_buyer(rows, put_by, rows, None, until, undo=undo, happened=at)
            self.world.ends |= dict.fromkeys(rows, until) if done else {}
        self.went(rows, state, done, at)

    @precondition(lambda self: self.tagged("put by"))
    @rule(days=st.sampled_from([1, 8]), undo=st.booleans())
    def put_bys_end(self, days: int, undo: bool) -> None:
        self.studio.clock.now += timedelta(days=days)
        over = [row for row in self.tagged("put by")
                if self.world.ends[row] <= self.studio.clock.now + timedelta(minutes=1)]
        done = self.attempt(end_put_bys, self.shelf, undo=undo)
        assert done is None or done.answer == len(over)
        self.went(over, "shelf", done)

    @precondition(lambda self: self.tagged(*HERE, "fair", "lost"))
    @rule(data=st.data(), undo=st.booleans(), state=st.sampled_from(["given", "discarded", "lost"]))
    def gone_or_lost(self, data: st.DataObject, undo: bool, state: str) -> None:
        rows = self.pick(data, self.tagged(*HERE, "fair", "lost"), 1)
        self.went(rows, state, self.attempt(lose, rows[0], 1, undo=undo) if state == "lost"
                  else self.attempt(move, rows, To(state), undo=undo))

    @precondition(lambda self: self.tagged(*HERE))
    @rule(data=st.data(), undo=st.booleans())
    def make_kit(self, data: st.DataObject, undo: bool) -> None:
        rows = self.some(data, *HERE)
        if len({self.world.tag_lot.get(row) for row in rows}) == 1:
            done = self.to_buyer(rows, make_kit, "cowl", rows, undo=undo)
            self.went(rows, "kit", done)
            if done is not None:
                self.world.kits[done.answer] = rows

    @precondition(lambda self: self.world.kits)
    @rule(data=st.data(), sold=st.booleans(), undo=st.booleans())
    def open_or_sell_kit(self, data: st.DataObject, sold: bool, undo: bool) -> None:
        kit = data.draw(st.sampled_from(list(self.world.kits)))
        rows = self.world.kits[kit]
        if sold:
            done = self.to_buyer(rows, sell_kit, kit, undo=undo)
            self.went(rows, SENT[1], done)
        else:
            self.went(rows, "shelf", self.attempt(open_kit, kit, self.shelf, undo=undo))

    def found(self, found: int, row: int) -> None:
        """The skein of this row lies here as a find; with its tag it never comes again."""
        (real,) = self.world.open[row]
        self.world.gone([row])
        self.world.become(found, [real], "find", state="table")
        self.world.since[found] = self.studio.clock.now
        self.told = self.answers()

    @precondition(lambda self: self.tagged("lost", kinds=["skein"]))
    @rule(data=st.data())
    def find_a_lost_one_without_its_tag(self, data: st.DataObject) -> None:
        (row,) = self.pick(data, self.tagged("lost", kinds=["skein"]))
        others = [other for other in self.tagged("lost", kinds=["skein"])
                  if self.world.put_up(other) == self.world.put_up(row)]
        found = self.do(find, 1, 97_000, self.world.put_up(row))
        self.do(is_one_of, found, others, "matched")
        self.found(found, row)

    @precondition(lambda self: self.missing() and len(self.world.beside) < 2)
    @rule(data=st.data(), undo=st.booleans())
    def find_a_missing_one(self, data: st.DataObject, undo: bool) -> None:
        real = data.draw(st.sampled_from(self.missing()))
        done = self.attempt(find, 1, 97_000, self.world.skeins[real].put_up, undo=undo)
        if done is not None:
            self.world.beside[done.answer] = real
            self.told = self.answers()

    def missing(self) -> list[int]:
        return [number for number, skein in enumerate(self.world.skeins)
                if skein.state == "missing at a count"
                and number not in self.world.beside.values()]

    @precondition(lambda self: self.world.beside)
    @rule(data=st.data(), undo=st.booleans())
    def match_a_find(self, data: st.DataObject, undo: bool) -> None:
        found = data.draw(st.sampled_from(list(self.world.beside)))
        real = self.world.beside[found]
        row = self.missing_from(self.world.skeins[real].rows[-1])
        if self.attempt(is_missing_from, found, row, undo=undo) is not None:
            del self.world.beside[found]
            self.world.become(found, [real], "find", state="table")
            self.world.since[found] = self.studio.clock.now
            self.told = self.answers()

    def missing_from(self, row: int) -> int:
        """The row that was closed with one too few: this one, or the heap it met at the count."""
        return self.studio.book.ask(lambda c: next(
            leaf.yarn for leaf in leaves(c, below(c, "yarn", row))
            if leaf.state == "missing at a count"))

    @precondition(lambda self: self.tagged(*HERE, kinds=["skein"]))
    @rule(data=st.data(), undo=st.booleans())
    def cut(self, data: st.DataObject, undo: bool) -> None:
        whole = [row for row in self.tagged(*HERE, kinds=["skein"])
                 if self.world.put_up(row) == "skein"]
        if whole:
            (row,) = self.pick(data, whole)
            done = self.attempt(cut, row, 5, "mini", 600, undo=undo)
            if done is not None:
                self.world.cut(row, done.answer, 5)
                self.born[done.answer] = self.studio.clock.now
                self.told = self.answers()

    @precondition(lambda self: self.tagged(*HERE, kinds=["skein"]))
    @rule(data=st.data(), undo=st.booleans())
    def gather(self, data: st.DataObject, undo: bool) -> None:
        """Tagged skeins go back on a cord, to be dyed over: their tags come off."""
        rows = [row for row in self.some(data, *HERE, most=4) if self.world.kind[row] == "skein"]
        done = self.attempt(gather, rows, undo=undo) if rows else None
        if done is not None:
            inside = [self.world.open[row][0] for row in rows]
            self.became(rows, {done.answer: inside}, "group")

    @precondition(lambda self: set(self.tagged(*HERE)) - self.world.seconds)
    @rule(data=st.data(), undo=st.booleans())
    def call_second(self, data: st.DataObject, undo: bool) -> None:
        """Below price, and all its answers as before."""
        rows = self.pick(data, sorted(set(self.tagged(*HERE)) - self.world.seconds), 2)
        if self.attempt(call_second, rows, "a knot", undo=undo) is not None:
            self.world.seconds |= set(rows)
            assert self.answers() == self.told

    @precondition(lambda self: self.tagged(*HERE, kinds=["skein"]))
    @rule(data=st.data(), undo=st.booleans())
    def reprint(self, data: st.DataObject, undo: bool) -> None:
        (row,) = self.pick(data, self.tagged(*HERE, kinds=["skein"]))
        if row not in self.world.tag_lot:
            return
        code = self.studio.code(self.world.tag_lot[row]) or ""
        (mark,) = self.studio.book.ask(marks_for, code, 1, self.studio.random)
        try:
            self.attempt(reprint, row, mark, "{}", ("swing tag", 1), undo=undo)
        except Refused:
            assert self.told.held[row]
        assert self.answers() == self.told

    @rule(data=st.data(), count=st.integers(1, 4))
    @precondition(lambda self: len(self.world.skeins) < 30)
    def old_lot(self, data: st.DataObject, count: int) -> None:
        """Some lay in the house before the book; their cones nobody knows."""
        old = OldLot(f"OLD-{len(self.world.inside)}", 1, 1, count)
        pile = self.do(open_lot, old, EACH_MG)
        lot = self.studio.book.ask(lambda c: c.execute(
            select(InBath.lot).where(InBath.yarn == pile)).scalar_one())
        self.world.become(pile, [self.world.stranger(NO_TIE, lot=lot) for _ in range(count)],
                          "pile")
        self.born[pile] = self.studio.clock.now
        self.told = self.answers()
        self.tag_some(data, pile, count)
        self.shelve(self.tagged("table"))

    @rule(data=st.data(), counts=st.tuples(st.integers(1, 3), st.integers(1, 3)))
    @precondition(lambda self: len(self.world.skeins) < 40)
    def tag_on_another_lots_skein(self, data: st.DataObject, counts: tuple[int, int]) -> None:
        """A tag of one pile is tied on a skein of another; mass and shade tell, and it is said."""
        wrong, right = (self.a_pile(data, count) for count in counts)
        facts = self.studio.book.ask(pile_facts, wrong)
        if facts.holds:
            return
        (tag,) = self.studio.print(wrong, 1)
        skein = self.do(apply_tag, tag)
        self.do(belongs_to, skein, right)
        real = data.draw(st.sampled_from(self.world.open[right]))
        self.world.tagged(right, real, skein, self.studio.clock.now)
        self.told = self.answers()

    @rule(data=st.data(), count=st.integers(1, 3), matched=st.booleans())
    @precondition(lambda self: len(self.world.skeins) < 40 and len(self.world.beside) < 2)
    def short_count_and_find(self, data: st.DataObject, count: int, matched: bool) -> None:
        """One was missing at a count; it lies under the rack, and may be matched."""
        self.a_pile(data, count, missing=1)
        self.find_a_missing_one(data, False)
        if matched:
            self.match_a_find(data, False)

    def a_pile(self, data: st.DataObject, count: int, missing: int = 0) -> int:
        """A small lot, counted and not tagged yet."""
        cone = data.draw(st.sampled_from(self.cones))
        whole = count + missing
        (group,) = self.do(wind, [Wound((Drawn(cone, whole * LONG_MM),), whole, "skein", "red")])
        self.wound(group, whole, "red", cone)
        lot = self.do(into_bath, BathIn((group,), 1), self.studio.random)["lots"][0]
        self.met([group], "lot", lot)
        (pile,) = self.do(finish, [group], {"red": count})
        inside = self.world.open[group]
        for skein in inside[count:]:
            self.world.skeins[skein].state = "missing at a count"
        self.became([group], {pile: inside[:count]}, "pile")
        return int(pile)
