"""Faults are told, yarn is seen good, causes decided, recall lists kept: nothing of it moves yarn.
"""

from datetime import timedelta

from hypothesis import strategies as st
from hypothesis.stateful import precondition, rule
from sqlalchemy import select

from app.calculations.evidence import Seen
from app.lookups.fault_cases import open_of_case
from app.lookups.fault_evidence import in_question
from app.lookups.recall import recall_list
from app.lookups.reports import reports
from app.records import Recall
from app.records.reports import FAULTS
from app.work.closing_cases import close_with_it
from app.work.photos import erase_photo, keep_photo
from app.work.recalling import keep_recall
from app.work.reporting import (
    FaultIn,
    decide_cause,
    report_fault,
    seen_good,
    told_by_mistake,
)
from tests.whole.walk_of_offers import OffersWalk
from tests.whole.walk_of_shelf import HERE, SENT

PICTURE = b"\x89PNG\r\n\x1a\n a stripe"


class FaultsWalk(OffersWalk):
    """All that a studio does, with the owner's day."""

    def __init__(self, *args: object) -> None:
        super().__init__(*args)  # type: ignore[arg-type]
        self.faulty: dict[str, set[int]] = {}
        self.reports: list[int] = []

    @precondition(lambda self: self.tagged(*HERE, *SENT, "fair"))
    @rule(data=st.data(), fault=st.sampled_from(FAULTS[:3]), undo=st.booleans())
    def tell_a_fault(self, data: st.DataObject, fault: str, undo: bool) -> None:
        """Every skein that was told is faulty in the evidence, and nothing else is."""
        rows = self.pick(data, self.tagged(*HERE, *SENT, "fair"), 3)
        done = self.attempt(report_fault, FaultIn(fault, "counter"), rows, undo=undo)
        if done is not None:
            self.reports.append(done.answer)
            self.faulty.setdefault(fault, set()).update(rows)
        self.only_what_was_told(fault)

    def only_what_was_told(self, fault: str) -> None:
        """A told skein that became something else since, or was lost sight of, is not faulty."""
        asked = self.studio.book.ask(in_question, fault)
        told = self.faulty.get(fault, set())
        assert (asked is None) == (not told)
        if asked is not None:
            found = {asked.row[skein.name] for skein in asked.evidence.skeins
                     if skein.seen is Seen.FAULTY}
            assert found <= told
            assert told & set(self.tagged(*HERE, *SENT, "fair")) <= found
        assert self.answers() == self.told

    @precondition(lambda self: self.tagged(*HERE))
    @rule(data=st.data(), undo=st.booleans(), report=st.booleans())
    def see_good(self, data: st.DataObject, undo: bool, report: bool) -> None:
        rows = self.pick(data, self.tagged(*HERE), 2)
        of = self.reports[-1] if report and self.reports else None
        self.attempt(seen_good, rows, "inspection", of, undo=undo)
        for fault in self.faulty:
            self.only_what_was_told(fault)

    @precondition(lambda self: self.reports)
    @rule(data=st.data(), erase=st.booleans())
    def close_with_a_picture(self, data: st.DataObject, erase: bool) -> None:
        report = data.draw(st.sampled_from(self.reports))
        photo = self.do(keep_photo, report, PICTURE)
        if erase:
            self.do(erase_photo, photo)
        self.do(decide_cause, report, "not found")
        assert self.answers() == self.told

    @precondition(lambda self: self.reports)
    @rule(data=st.data())
    def close_a_case(self, data: st.DataObject) -> None:
        """Whatever met the cone is closed with it, and open again when that is taken back."""
        report = data.draw(st.sampled_from(self.reports))
        cone = data.draw(st.sampled_from(self.cones))
        decided = self.studio.done(decide_cause, report, "cone", cone)
        others = self.studio.book.ask(open_of_case, report)
        if others:
            done = self.studio.done(close_with_it, report, others)
            assert self.studio.book.ask(open_of_case, report) == ()
            self.studio.undo(done.seq)
        assert self.studio.book.ask(open_of_case, report) == others
        self.studio.undo(decided.seq)
        assert self.answers() == self.told

    @precondition(lambda self: self.reports)
    @rule(data=st.data())
    def told_in_error(self, data: st.DataObject) -> None:
        """Nothing is known of its skeins by it, and all again when that is taken back."""
        report = data.draw(st.sampled_from(self.reports))
        told = self.studio.book.ask(reports)
        done = self.studio.done(told_by_mistake, report)
        assert {one.id for one in self.studio.book.ask(reports)} == {
            one.id for one in told if one.id != report}
        self.studio.undo(done.seq)
        assert self.studio.book.ask(reports) == told
        assert self.answers() == self.told

    @rule(data=st.data(), practice=st.booleans(), undo=st.booleans())
    def keep_a_recall(self, data: st.DataObject, practice: bool, undo: bool) -> None:
        """Its rows and its sums are the whole; what was kept is what was listed."""
        cone = data.draw(st.sampled_from(self.cones))
        listed = self.studio.book.ask(recall_list, "cone", cone)
        began = self.studio.clock.now - timedelta(minutes=1)
        done = self.attempt(keep_recall, "cone", cone, began, practice=practice, undo=undo)
        assert sum(row.count for row in listed.rows) >= listed.count >= listed.accounted >= 0
        assert all(row.hit.least <= row.hit.expected <= row.hit.most for row in listed.rows)
        assert all(row.chance is None or 0 < row.chance < 1 for row in listed.rows)
        if done is not None:
            kept = self.studio.book.ask(lambda connection: connection.execute(
                select(Recall.skeins, Recall.mg, Recall.accounted)
                .where(Recall.id == done.answer)).one())
            assert tuple(kept) == (listed.count, listed.mg, listed.accounted)
        assert self.answers() == self.told
