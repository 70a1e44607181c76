"""A studio at work up to the tag, with the truth kept beside."""

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction

from hypothesis import strategies as st
from hypothesis.stateful import initialize, precondition, rule

from app.lookups.certainty import parting
from app.lookups.finishing import expected_by_tie
from app.lookups.tag_counts import lot_tag_counts
from app.lookups.tagging import pile_facts
from app.lookups.thread import live_holds, thread
from app.problems import Refused
from app.work.bundling import take_off, tie_on
from app.work.dyeing import BathIn, into_bath
from app.work.finishing import finish
from app.work.holding import clear, hold, lift_hold
from app.work.loading import into_load
from app.work.mixing import lose, mix, recognise, split
from app.work.tag_counting import count_in_hand
from app.work.tagging import apply_tag, spoil_tags
from app.work.winding import Drawn, Wound, wind
from tests.makers import LONG_MM
from tests.whole.walk import Walk

TIES = ("red", "yellow")


def _skeins(cone: int, count: int, tie: str) -> Wound:
    return Wound((Drawn(cone, count * LONG_MM),), count, "skein", tie)


class YarnWalk(Walk):
    """Winding, mixing, dyeing, washing, counting, tagging; holds, discs, late entries."""

    @initialize(counts=st.tuples(*[st.integers(2, 7)] * 3), ties=st.permutations([*TIES, *TIES]),
                data=st.data(), on_shelf=st.sampled_from([True, True, False]))
    def begin(
        self, counts: Sequence[int], ties: Sequence[str], data: st.DataObject, on_shelf: bool
    ) -> None:
        """Three cones were wound, two of them perhaps with one tie colour, and two met."""
        for cone, count, tie in zip(self.cones, counts, ties, strict=False):
            self.wound(self.do(wind, [_skeins(cone, count, tie)])[0], count, tie, cone)
        pool = self.do(mix, [1, 2])
        self.became([1, 2], {pool: self.world.open[1] + self.world.open[2]}, "group")
        if on_shelf:
            self.to_the_shelf(data, pool)

    def to_the_shelf(self, data: st.DataObject, row: int) -> None:
        """Dyed, counted, tagged and shelved: what a shop begins with."""
        self.met([row], "lot", self.do(into_bath, BathIn((row,), 1), self.studio.random)["lots"][0])
        ties = Counter(self.world.skeins[skein].tie for skein in self.world.open[row])
        order = [one.tie for one in self.studio.book.ask(expected_by_tie, [row])]
        inside = self.world.open[row]
        piles = self.do(finish, [row], dict(ties))
        self.became([row], {pile: [s for s in inside if self.world.skeins[s].tie == tie]
                            for pile, tie in zip(piles, order, strict=True)}, "pile", fact=True)
        for pile in piles:
            self.tag_some(data, pile, 6)
        self.shelve(self.tagged("table"))

    def wound(self, row: int, count: int, tie: str, cone: int) -> None:
        self.world.wound(row, count, tie, {cone: Fraction(1)})
        self.born[row] = self.studio.clock.now
        self.told = self.answers()

    @precondition(lambda self: len(self.of_kind("group")) < 3)
    @rule(data=st.data(), count=st.integers(1, 6), tie=st.sampled_from(TIES), undo=st.booleans())
    def wind(self, data: st.DataObject, count: int, tie: str, undo: bool) -> None:
        cone = data.draw(st.sampled_from(self.cones))
        made = self.do(wind, [_skeins(cone, count, tie)], undo=undo)
        if made:
            self.wound(made[0], count, tie, cone)

    @precondition(lambda self: len(self.of_kind("group")) < 3)
    @rule(data=st.data())
    def wind_over_a_join(self, data: st.DataObject) -> None:
        one, two = data.draw(st.permutations(self.cones))[:2]
        draws = (Drawn(one, 255_200), Drawn(two, 157_300))
        (row,) = self.do(wind, [Wound(draws, 1, "skein", "red and yellow")])
        self.world.wound(row, 1, "red and yellow",
                         {one: Fraction(2552, 4125), two: Fraction(1573, 4125)})
        self.born[row] = self.studio.clock.now
        self.told = self.answers()

    @precondition(lambda self: len(self.of_kind("group", "pile")) > 1)
    @rule(data=st.data(), undo=st.booleans())
    def mix(self, data: st.DataObject, undo: bool) -> None:
        rows = self.pick(data, self.alike("group", "pile"), 3)
        if len(rows) < 2:
            return
        pool = self.do(mix, rows, undo=undo)
        if pool:
            kind = "pile" if {self.world.kind[row] for row in rows} == {"pile"} else "group"
            inside = [skein for row in rows for skein in self.world.open[row]]
            self.became(rows, {pool: inside}, kind)

    @precondition(lambda self: self.of_kind("group", "pile", least=2))
    @rule(data=st.data(), undo=st.booleans())
    def split(self, data: st.DataObject, undo: bool) -> None:
        (row,) = self.pick(data, self.of_kind("group", "pile", least=2))
        inside = data.draw(st.permutations(self.world.open[row]))
        at = data.draw(st.integers(1, len(inside) - 1))
        parts = self.do(split, row, [at, len(inside) - at], undo=undo)
        if parts:
            made = {parts[0]: inside[:at], parts[1]: inside[at:]}
            self.became([row], made, self.world.kind[row])

    @precondition(lambda self: self.of_kind("group", "pile", least=2))
    @rule(data=st.data(), undo=st.booleans())
    def lose(self, data: st.DataObject, undo: bool) -> None:
        (row,) = self.pick(data, self.of_kind("group", "pile", least=2))
        inside = data.draw(st.permutations(self.world.open[row]))
        rows = self.do(lose, row, 1, undo=undo)
        if rows:
            self.became([row], {rows[0]: inside[1:]}, self.world.kind[row])
            self.world.become(rows[1], inside[:1], self.world.kind[row], state="lost")
            self.told = self.answers()

    @precondition(lambda self: self.of_kind("group"))
    @rule(data=st.data(), undo=st.booleans())
    def dye(self, data: st.DataObject, undo: bool) -> None:
        rows = self.pick(data, self.of_kind("group"), 2)
        bathed = self.do(into_bath, BathIn(tuple(rows), 1), self.studio.random, undo=undo)
        if bathed:
            self.met(rows, "lot", bathed["lots"][0])

    @precondition(lambda self: self.of_kind("group", "pile"))
    @rule(data=st.data(), undo=st.booleans())
    def wash(self, data: st.DataObject, undo: bool) -> None:
        rows = [row for row in self.pick(data, self.of_kind("group", "pile"), 2)
                if self.world.open[row] == self.world.inside[row]]
        load = rows and self.do(into_load, "wash", yarn=rows, undo=undo)
        if load:
            self.met(rows, "load", load)

    @precondition(lambda self: self.divided())
    @rule(data=st.data(), washed=st.booleans())
    def enter_late(self, data: st.DataObject, washed: bool) -> None:
        """Yesterday's bath or wash, of a row that was whole then."""
        (row,) = self.pick(data, self.divided())
        if washed:
            load = self.do(into_load, "wash", yarn=[row], happened=self.born[row])
            self.met([row], "load", load)
        else:
            bath = BathIn((row,), 1)
            bathed = self.do(into_bath, bath, self.studio.random, happened=self.born[row])
            self.met([row], "lot", bathed["lots"][0])

    def divided(self) -> list[int]:
        return [row for row in self.born
                if row not in self.world.open and self.world.kind[row] == "group"]

    @precondition(lambda self: self.of_kind("group"))
    @rule(data=st.data(), missing=st.integers(0, 2), over=st.integers(0, 2), undo=st.booleans(),
          more=st.integers(0, 4))
    def count(self, data: st.DataObject, missing: int, over: int, undo: bool, more: int) -> None:
        """The finishing count of what really is on the table: all, too few or too many."""
        rows = self.pick(data, self.alike("group"), 2)
        if not any(self.world.skeins[s].met for row in rows for s in self.world.open[row]):
            bathed = self.do(into_bath, BathIn(tuple(rows), 1), self.studio.random)
            self.met(rows, "lot", bathed["lots"][0])
        here = data.draw(st.permutations([s for row in rows for s in self.world.open[row]]))
        gone = here[:min(missing, len(here) - 1)]
        world = self.world.copy()
        put_up = world.skeins[here[0]].put_up
        strangers = [world.stranger(data.draw(st.sampled_from((*TIES, "green"))), put_up)
                     for _ in range(0 if gone else over)]
        present = [*here[len(gone):], *strangers]
        ties = Counter(world.skeins[skein].tie for skein in present)
        order = [one.tie for one in self.studio.book.ask(expected_by_tie, rows)]
        piles = self.do(finish, rows, dict(ties), undo=undo)
        if not piles:
            return
        self.world = world
        for skein in gone:
            world.skeins[skein].state = "missing at a count"
        met = [*(tie for tie in order if ties[tie]), *(tie for tie in ties if tie not in order)]
        made = {pile: [s for s in present if world.skeins[s].tie == tie]
                for pile, tie in zip(piles, met, strict=True)}
        self.became(rows, made, "pile", fact=True)
        for pile in piles:
            self.tag_some(data, pile, more)

    @precondition(lambda self: self.of_kind("pile"))
    @rule(data=st.data(), more=st.integers(1, 4), spoil=st.booleans(), undo=st.booleans())
    def tag(self, data: st.DataObject, more: int, spoil: bool, undo: bool) -> None:
        (pile,) = self.pick(data, self.of_kind("pile"))
        self.tag_some(data, pile, more, spoil, undo)

    def tag_some(
        self, data: st.DataObject, pile: int, more: int, spoil: bool = False, undo: bool = False
    ) -> None:
        """Tags are printed, one may be spoiled, some are tied on: nobody knows on which skein."""
        facts = self.studio.book.ask(pile_facts, pile)
        for placed in facts.holds:
            self.do(lift_hold, placed, "washed out")
        self.told = self.answers()
        if facts.lot is None or len(facts.lots) > 1 or not facts.to_print:
            return
        tags = self.studio.print(pile, facts.to_print, version=facts.versions[0])
        if spoil:
            self.do(spoil_tags, tags[:1], "jammed")
            tags = tags[1:] + self.studio.print(pile, 1, version=facts.versions[0])
        for tag in tags[:more]:
            self.tie_tag_on(data, pile, tag, facts.lots[0], undo)

    def tie_tag_on(
        self, data: st.DataObject, pile: int, tag: int, lot: int | None, undo: bool
    ) -> None:
        left = self.world.open[pile]
        skein = self.do(apply_tag, tag, undo=undo)
        if skein:
            real = data.draw(st.sampled_from(left))
            self.world.tagged(pile, real, skein, self.studio.clock.now)
            assert lot is not None
            self.world.tag_lot[skein] = lot
            before, self.told = self.told, self.answers()
            self.is_no_surer(skein, [before.links[pile, "cone"]])

    @precondition(lambda self: self.world.tag_lot)
    @rule(data=st.data(), off=st.integers(-1, 1), undo=st.booleans())
    def count_tags(self, data: st.DataObject, off: int, undo: bool) -> None:
        """Tags in hand are counted, rightly or not: the sum holds with what is unexplained."""
        lot = data.draw(st.sampled_from(sorted(set(self.world.tag_lot.values()))))
        before = self.studio.book.ask(lot_tag_counts, lot)
        found = max(0, before.counts.in_hand + off)
        self.do(count_in_hand, lot, found, "looked twice", undo=undo)
        after = self.studio.book.ask(lot_tag_counts, lot)
        assert (after.counts, after.waiting) == (before.counts, before.waiting)
        assert undo == (after.last == before.last)
        if not undo:
            counts, last = after.counts, after.last
            assert last is not None
            assert (last.count, last.by_the_book) == (found, counts.in_hand)
            assert counts.printed == (counts.applied + counts.spoiled + counts.void + last.count
                                      + last.unexplained)

    @precondition(lambda self: self.of_kind("group", "pile", "skein"))
    @rule(data=st.data(), undo=st.booleans())
    def recognise(self, data: st.DataObject, undo: bool) -> None:
        """Someone reads a tie that was still there: a true fact about all members of a row."""
        for row in data.draw(st.permutations(self.of_kind("group", "pile", "skein"))):
            found = self.studio.book.ask(thread, [row])
            pool, inside = parting(found, row), set(self.world.open[row])
            whole = pool != row and len(inside) == len(self.world.inside[row])
            for source in found.sources.get(pool, ()) if whole else ():
                if inside <= set(self.world.inside.get(source.parent, ())):
                    self.do(recognise, row, pool, source.parent, undo=undo)
                    self.told = self.answers()
                    return

    @precondition(lambda self: self.world.open and len(self.studio.book.ask(live_holds)) < 2)
    @rule(data=st.data())
    def hold(self, data: st.DataObject) -> None:
        source = data.draw(st.sampled_from([("cone", cone) for cone in self.cones] + [
            ("yarn", row) for row in self.world.inside]))
        self.do(hold, *source, "stained")
        self.told = self.answers()

    @precondition(lambda self: self.world.open and self.studio.book.ask(live_holds))
    @rule(data=st.data(), lift=st.sampled_from([True, True, False]))
    def clear_or_lift(self, data: st.DataObject, lift: bool) -> None:
        one = data.draw(st.sampled_from(self.studio.book.ask(live_holds)))
        if lift:
            self.do(lift_hold, one.id, "washed out")
        else:
            (row,) = self.pick(data, list(self.world.open))
            self.do(clear, one.id, row, "lamp: clean")
            self.world.cleared.add((one.id, row))
        self.told = self.answers()

    @precondition(lambda self: self.of_kind("group", "pile"))
    @rule(data=st.data(), disc=st.integers(1, 3), undo=st.booleans())
    def tie_on_or_take_off(self, data: st.DataObject, disc: int, undo: bool) -> None:
        rows = self.pick(data, self.of_kind("group", "pile"), 2)
        try:
            self.do(tie_on, disc, rows, undo=undo)
        except Refused:
            self.do(take_off, disc, undo=undo)
