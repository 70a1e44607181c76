"""The truth beside the book: what every walk can ask, and what must be so after every deed."""

import shutil
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant
from sqlalchemy import Connection, select

from app.calculations.codes import Kind
from app.lookups.certainty import KNOWN, Link, held_by, links
from app.lookups.left_to_sell import Left, left_of
from app.lookups.present import NOT_MATCHED, Amount, leaves, totals
from app.lookups.thread import live_holds, thread
from app.records import OnBundle, PlateStay, Yarn
from app.store.book import Book, Done
from app.work.bundling import make_plates
from app.work.moving import To, move
from tests.makers import EACH_MG, Clock, Studio
from tests.sums import adds_up
from tests.whole.hidden_truth import World

MASS = {"skein": EACH_MG, "mini": (EACH_MG - 600) // 5}


@dataclass(frozen=True)
class Answers:
    """All that can be asked of all rows and lots."""

    present: Mapping[tuple[str, str], Amount]
    links: Mapping[tuple[int, str], tuple[Link, ...]]
    held: Mapping[int, tuple[int, ...]]
    left: Mapping[int, Left]


class Walk(RuleBasedStateMachine):
    """A studio at work, with the truth kept beside."""

    def __init__(self, file: Path) -> None:
        super().__init__()
        self.folder = TemporaryDirectory()
        path = Path(self.folder.name) / "studio.book"
        shutil.copy(file, path)
        self.studio = Studio(Book(path, Clock()), furnished=True)
        self.world, self.cones = World(), self.studio.cones(3)
        self.born: dict[int, datetime] = {}
        self.shelf, self.fair = self.studio.do(make_plates, Kind.SHELF, [3, 90])
        self.told = self.answers()

    def answers(self) -> Answers:
        """All that can be asked now."""
        def ask(connection: Connection) -> Answers:
            rows = list(self.world.inside)
            found = thread(connection, rows)
            every = connection.execute(select(Yarn.id).where(Yarn.struck.is_(None))).scalars()
            return Answers(
                dict(totals(leaves(connection, every.all()))),
                {(row, kind): links(found, row, kind)
                 for row in rows for kind in ("cone", "lot", "load")},
                {row: held_by(found, row) for row in self.world.open},
                dict(left_of(connection, sorted(set(self.world.tag_lot.values())))),
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
        self.world.gone(gone)
        for row, skeins in made.items():
            self.world.become(row, skeins, kind)
            self.born[row] = self.studio.clock.now
        before, self.told = self.told, self.answers()
        if not fact:
            kept = {key: said for key, said in self.told.links.items() if key in before.links}
            assert kept == before.links
            for row in made:
                self.is_no_surer(row, [before.links[parent, "cone"] for parent in gone])

    def is_no_surer(self, row: int, parents: Sequence[tuple[Link, ...]]) -> None:
        sure = {link.thing for link in self.told.links[row, "cone"] if link.word == KNOWN}
        for said in parents:
            assert sure <= {link.thing for link in said if link.least == link.of}

    def of_kind(self, *kinds: str, least: int = 1) -> list[int]:
        return [row for row, inside in self.world.open.items()
                if self.world.kind[row] in kinds and len(inside) >= least]

    def alike(self, *kinds: str) -> list[int]:
        """Rows of one put-up, which may meet."""
        rows = self.of_kind(*kinds)
        put_up = self.world.put_up(rows[0])
        return [row for row in rows if self.world.put_up(row) == put_up]

    def pick(self, data: st.DataObject, rows: Sequence[int], most: int = 1) -> list[int]:
        return data.draw(st.lists(st.sampled_from(rows), min_size=1, max_size=most, unique=True))

    def shelve(self, rows: Sequence[int]) -> None:
        """Where the shop sells from."""
        if rows:
            self.do(move, rows, To("shelf", place=self.shelf))
            self.world.go(rows, "shelf", self.studio.clock.now)
            self.told = self.answers()

    def tagged(self, *states: str, kinds: Sequence[str] = ("skein", "find")) -> list[int]:
        """Single skeins in one of these states."""
        return [row for row in self.of_kind(*kinds) if self.world.of(row).state in states]

    def met(self, rows: Sequence[int], kind: str, thing: int) -> None:
        for row in rows:
            self.world.meet(row, kind, thing)
        self.told = self.answers()

    @invariant()
    def the_truth_lies_within_what_is_said(self) -> None:
        for (row, kind), said in self.told.links.items():
            assert self.world.disagrees(row, kind, said) is None

    @invariant()
    def sums_hold_and_states_are_disjoint_and_complete(self) -> None:
        present = self.told.present
        assert {key: amount.count for key, amount in present.items()} == self.world.states()
        assert all(amount.mg == amount.count * MASS[put_up]
                   for (state, put_up), amount in present.items() if state != NOT_MATCHED)
        self.studio.book.ask(adds_up)

    @invariant()
    def left_to_sell_is_what_lies_free_and_nobody_was_promised(self) -> None:
        for lot, left in self.told.left.items():
            assert list(left.skeins) == self.free(lot)
            assert left.promised == sum(line.open for line in self.world.lines.values()
                                        if line.lot == lot)
            assert 0 <= left.count <= len(left.skeins)

    def free(self, lot: int) -> list[int]:
        """Rows that really lie on the shelf with this lot on their tags, and are not held."""
        return sorted(row for row in self.tagged("shelf")
                      if self.world.tag_lot.get(row) == lot and not self.told.held[row])

    @invariant()
    def no_held_skein_gets_through(self) -> None:
        for one in self.studio.book.ask(live_holds):
            for row, held in self.told.held.items():
                assert one.id in held or not self.world.must_be_held(row, one)

    @invariant()
    def one_row_asked_alone_is_told_the_same(self) -> None:
        row = next(reversed(self.world.inside), None)
        if row is not None:
            alone = self.studio.book.ask(lambda c: links(thread(c, [row]), row, "cone"))
            said = self.told.links[row, "cone"]
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
