"""Whatever is done in whatever order: sums hold, and the truth lies within what is said."""

import shutil
from collections import Counter
from collections.abc import Callable, Sequence
from datetime import datetime
from fractions import Fraction
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from hypothesis import HealthCheck, Phase, settings
from hypothesis import strategies as st
from hypothesis.stateful import (
    RuleBasedStateMachine,
    initialize,
    invariant,
    precondition,
    rule,
    run_state_machine_as_test,
)
from sqlalchemy import select

from app.lookups.certainty import KNOWN, Link, held_by, links, parting
from app.lookups.finishing import expected_by_tie
from app.lookups.present import leaves, totals
from app.lookups.tagging import pile_facts
from app.lookups.thread import live_holds, thread
from app.problems import Refused
from app.records import OnBundle, PlateStay, Yarn
from app.store.book import Book, Done
from app.work.bundling import take_off, tie_on
from app.work.dyeing import BathIn, into_bath
from app.work.finishing import finish
from app.work.holding import clear, hold, lift_hold
from app.work.loading import into_load
from app.work.mixing import lose, mix, recognise, split
from app.work.remaking import gather
from app.work.tagging import apply_tag, spoil_tags
from app.work.winding import Drawn, Wound, wind
from tests.makers import EACH_MG, LONG_MM, Clock, Studio
from tests.sums import adds_up
from tests.whole.hidden_truth import World

TIES = ("red", "yellow")


def _skeins(cone: int, count: int, tie: str) -> Wound:
    return Wound((Drawn(cone, count * LONG_MM),), count, "skein", tie)


Answers = tuple[dict[tuple[str, str], Any], dict[tuple[int, str], tuple[Link, ...]], Any]


class Thread(RuleBasedStateMachine):
    """A studio at work, with the truth kept beside."""

    def __init__(self, file: Path) -> None:
        super().__init__()
        self.folder = TemporaryDirectory()
        path = Path(self.folder.name) / "studio.book"
        shutil.copy(file, path)
        self.studio = Studio(Book(path, Clock()), furnished=True)
        self.world, self.cones = World(), self.studio.cones(3)
        self.born: dict[int, datetime] = {}
        self.told = self.answers()

    def answers(self) -> Answers:
        """All that can be asked of all rows."""
        def ask(connection: Any) -> Answers:
            rows = list(self.world.inside)
            found = thread(connection, rows)
            every = connection.execute(select(Yarn.id).where(Yarn.struck.is_(None))).scalars()
            return (
                dict(totals(leaves(connection, every.all()))),
                {(row, kind): links(found, row, kind)
                 for row in rows for kind in ("cone", "lot", "load")},
                {row: held_by(found, row) for row in self.world.open},
            )
        return self.studio.book.ask(ask)

    def do(self, work: Callable[..., Any], *args: Any, undo: bool = False, **more: Any) -> Any:
        """The answer of a deed; none where it was taken back at once, which must change nothing."""
        done: Done[Any] = self.studio.done(work, *args, **more)
        if not undo:
            return done.answer
        self.studio.undo(done.seq)
        assert self.answers() == self.told
        return None

    def became(
        self, gone: Sequence[int], made: dict[int, list[int]], kind: str, fact: bool = False
    ) -> None:
        """The rows that went and those that came; without a new fact nothing is surer now."""
        for row in gone:
            self.world.open.pop(row, None)
        for row, skeins in made.items():
            self.world.become(row, skeins, kind)
            self.born[row] = self.studio.clock.now
        before, self.told = self.told, self.answers()
        if not fact:
            kept = {key: said for key, said in self.told[1].items() if key in before[1]}
            assert kept == before[1]
            for row in made:
                self.is_no_surer(row, [before[1][parent, "cone"] for parent in gone])

    def is_no_surer(self, row: int, parents: Sequence[tuple[Link, ...]]) -> None:
        sure = {link.thing for link in self.told[1][row, "cone"] if link.word == KNOWN}
        for said in parents:
            assert sure <= {link.thing for link in said if link.least == link.of}

    def of_kind(self, *kinds: str, least: int = 1) -> list[int]:
        return [row for row, inside in self.world.open.items()
                if self.world.kind[row] in kinds and len(inside) >= least]

    def pick(self, data: st.DataObject, rows: Sequence[int], most: int = 1) -> list[int]:
        return data.draw(st.lists(st.sampled_from(rows), min_size=1, max_size=most, unique=True))

    @initialize(counts=st.tuples(*[st.integers(2, 7)] * 3), ties=st.permutations([*TIES, *TIES]))
    def begin(self, counts: Sequence[int], ties: Sequence[str]) -> None:
        """Three cones were wound, two of them perhaps with one tie colour, and two met."""
        for cone, count, tie in zip(self.cones, counts, ties, strict=False):
            self.wound(self.do(wind, [_skeins(cone, count, tie)])[0], count, tie, cone)
        pool = self.do(mix, [1, 2])
        self.became([1, 2], {pool: self.world.open[1] + self.world.open[2]}, "group")

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
        rows = self.pick(data, self.of_kind("group", "pile"), 3)
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

    def met(self, rows: Sequence[int], kind: str, thing: int) -> None:
        for row in rows:
            for skein in self.world.inside[row]:
                self.world.skeins[skein].met[kind, thing] = row
        self.told = self.answers()

    @precondition(lambda self: self.of_kind("group"))
    @rule(data=st.data(), missing=st.integers(0, 2), over=st.integers(0, 2), undo=st.booleans(),
          more=st.integers(0, 4))
    def count(self, data: st.DataObject, missing: int, over: int, undo: bool, more: int) -> None:
        """The finishing count of what really is on the table: all, too few or too many."""
        rows = self.pick(data, self.of_kind("group"), 2)
        if not any(self.world.skeins[s].met for row in rows for s in self.world.open[row]):
            bathed = self.do(into_bath, BathIn(tuple(rows), 1), self.studio.random)
            self.met(rows, "lot", bathed["lots"][0])
        here = data.draw(st.permutations([s for row in rows for s in self.world.open[row]]))
        gone = here[:min(missing, len(here) - 1)]
        world = self.world.copy()
        strangers = [world.stranger(data.draw(st.sampled_from((*TIES, "green"))))
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
        self.tag_some(data, *self.pick(data, self.of_kind("pile")), more, spoil, undo)

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
            self.tie_tag_on(data, pile, tag, undo)

    def tie_tag_on(self, data: st.DataObject, pile: int, tag: int, undo: bool) -> None:
        left = self.world.open[pile]
        skein = self.do(apply_tag, tag, undo=undo)
        if skein:
            real = data.draw(st.sampled_from(left))
            left.remove(real)
            if not left:
                del self.world.open[pile]
            self.world.become(skein, [real], "skein", state="table")
            before, self.told = self.told, self.answers()
            self.is_no_surer(skein, [before[1][pile, "cone"]])

    @precondition(lambda self: self.of_kind("skein"))
    @rule(data=st.data(), undo=st.booleans())
    def gather(self, data: st.DataObject, undo: bool) -> None:
        """Tagged skeins go back on a cord, to be dyed over: their tags come off."""
        rows = self.pick(data, self.of_kind("skein"), 4)
        group = self.do(gather, rows, undo=undo)
        if group:
            self.became(rows, {group: [self.world.open[row][0] for row in rows]}, "group")

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
    @rule(data=st.data(), lift=st.booleans())
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

    @invariant()
    def the_truth_lies_within_what_is_said(self) -> None:
        for (row, kind), said in self.told[1].items():
            assert self.world.disagrees(row, kind, said) is None

    @invariant()
    def sums_hold_and_states_are_disjoint_and_complete(self) -> None:
        amounts = Counter({key[0]: amount.count for key, amount in self.told[0].items()})
        assert amounts == self.world.states()
        assert all(amount.mg == amount.count * EACH_MG for amount in self.told[0].values())
        self.studio.book.ask(adds_up)

    @invariant()
    def no_held_skein_gets_through(self) -> None:
        for one in self.studio.book.ask(live_holds):
            for row, held in self.told[2].items():
                assert one.id in held or not self.world.must_be_held(row, one)

    @invariant()
    def one_row_asked_alone_is_told_the_same(self) -> None:
        row = next(reversed(self.world.inside), None)
        if row is not None:
            alone = self.studio.book.ask(lambda c: links(thread(c, [row]), row, "cone"))
            said = self.told[1][row, "cone"]
            assert [(k.thing, k.least, k.most, k.expected) for k in alone] == [
                (k.thing, k.least, k.most, k.expected) for k in said]

    @invariant()
    def no_disc_hangs_on_an_empty_cord(self) -> None:
        def cords(connection: Any) -> tuple[set[int], set[int], Any]:
            live = connection.execute(select(PlateStay.bundle).where(
                PlateStay.until.is_(None), PlateStay.struck.is_(None))).scalars().all()
            on = connection.execute(
                select(OnBundle.bundle, Yarn.closed).join(Yarn, Yarn.id == OnBundle.yarn)
                .where(OnBundle.until.is_(None), OnBundle.struck.is_(None))).all()
            return set(live), {row.bundle for row in on}, [row for row in on if row.closed]
        live, worn, closed = self.studio.book.ask(cords)
        assert live <= worn
        assert closed == []

    def teardown(self) -> None:
        self.studio.check()
        self.studio.book.close()
        self.folder.cleanup()


BASE = settings(database=None, deadline=None, suppress_health_check=list(HealthCheck),
                phases=[Phase.generate])  # to make a failing story shorter takes many minutes


def test_nothing_that_is_done_breaks_the_thread(studio_file: Path) -> None:
    run_state_machine_as_test(lambda: Thread(studio_file), settings=settings(
        BASE, max_examples=12, stateful_step_count=14, derandomize=True))


@pytest.mark.long
def test_nothing_that_is_done_for_long_breaks_the_thread(studio_file: Path) -> None:
    run_state_machine_as_test(lambda: Thread(studio_file), settings=settings(
        BASE, max_examples=40, stateful_step_count=24))
