"""A find is matched to the lot in hand; a skein is told to be of another lot than its tag says."""

from typing import Any, Protocol

from app.lookups.things import Found
from app.lookups.untagged import Gap, LotMeant, Untagged
from app.problems import NotFound, Refused
from app.scanning.how_known import Came
from app.scanning.resolve import Resolution
from app.window.bench import Bench
from app.window.benches.desk.looking import InHand, which_lot
from app.window.benches.desk.questions import (
    which_other_lot,
    why_missing,
    why_one_of,
    why_other_lot,
    why_waiting,
)
from app.window.benches.desk.thing_page import ThingPage
from app.window.parts.why_card import Why, WhyCard
from app.work.matching import belongs_to, is_missing_from, is_one_of


class Asking(Protocol):
    """The hand at the desk, which asks one question at a time under the thing in hand."""

    thing: InHand | None
    came: Came
    page: ThingPage

    def ask(self, why: Why, answered: Any) -> WhyCard:
        """Put a question; `answered` gets the words."""

    def do(self, deed: Any, *args: Any, **terms: Any) -> None:
        """Do what was answered, and take the question away."""

    def answered(self) -> None:
        """The question is answered: it goes."""

    def open(self, thing: Found) -> None:
        """Take up another thing."""


class Matching:
    """Few keys: the lot is scanned or typed, the evidence is one of four or a few words."""

    def __init__(self, bench: Bench, hand: Asking) -> None:
        self._bench, self._hand = bench, hand
        self._which: WhyCard | None = None
        page = hand.page
        page.tagless.missing.connect(self._ask_missing)
        page.tagless.waiting.connect(self._ask_waiting)
        page.tagless.one_of.connect(self._ask_one_of)
        page.evidence.other_lot.connect(self._ask_which)

    def takes(self, code: str) -> bool:
        """Whether a scan answers the question for the lot."""
        asked = self._which is not None and self._hand.page.why is self._which
        if asked:
            self._look_up(code)
        return asked

    def _ask_missing(self, find: Untagged, gap: Gap) -> None:
        if self._hand.thing is not None:
            self._hand.ask(why_missing(find, self._hand.thing.found), lambda why: self._hand.do(
                is_missing_from, find.yarn, gap.missing, "matched", reason=why))

    def _ask_waiting(self, find: Untagged, gap: Gap) -> None:
        if self._hand.thing is not None:
            self._hand.ask(why_waiting(find, self._hand.thing.found), lambda why: self._hand.do(
                is_missing_from, find.yarn, gap.waiting, "matched", reason=why))

    def _ask_one_of(self, find: Untagged, gap: Gap) -> None:
        if self._hand.thing is not None:
            why = why_one_of(find, self._hand.thing.found, len(gap.tagged))
            self._hand.ask(why, lambda said: self._hand.do(
                is_one_of, find.yarn, gap.tagged, "matched", reason=said))

    def _ask_which(self) -> None:
        if self._hand.thing is not None:
            self._which = self._hand.ask(which_other_lot(self._hand.thing.found), self._look_up)

    def _look_up(self, text: str) -> None:
        self._bench.ask(self._lot_came, which_lot, text)

    def _lot_came(self, answer: LotMeant | Resolution) -> None:
        skein = self._hand.thing
        if skein is None or self._which is None or self._hand.page.why is not self._which:
            return
        if isinstance(answer, Resolution):
            self._refuse(NotFound(answer.sentence or "This is no lot.", answer.next_step))
        elif answer.found.code == skein.found.code[:-2].rstrip("-"):
            self._refuse(Refused(f"{answer.found.shown} is the lot that its tag says.",
                                 "Scan the lot that the skein is of."))
        elif answer.pile is None:
            self._refuse(Refused(f"{answer.found.shown} was not counted yet: no skein of it can "
                                 "wear a tag.", "Count it first, or scan another lot."))
        else:
            self._ask_evidence(skein.found, answer.found, answer.pile)

    def _ask_evidence(self, skein: Found, lot: Found, pile: int) -> None:
        self._hand.ask(why_other_lot(skein, lot), lambda why: self._bench.do(
            belongs_to, skein.id, pile, "matched", reason=why,
            then=lambda _done: self._hand.open(lot)))

    def _refuse(self, problem: NotFound | Refused) -> None:
        self._bench.around.trouble(problem)
