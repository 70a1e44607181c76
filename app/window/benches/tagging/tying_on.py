"""A tag goes on its skein with one scan, and a second where a skein of its lot lost its own."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QObject, Signal

from app.calculations.codes import shown
from app.calculations.moments import day_words
from app.calculations.units import grams
from app.lookups.printed import PrintedTag
from app.lookups.untagged import Untagged, bare_for
from app.window.bench import Bench
from app.window.in_turn import InTurn
from app.window.parts.findings import Finding
from app.window.session import Done
from app.work.matching import new_tag
from app.work.tagging import apply_tag

_TAKE_IT = "Take that pile in hand"
_ON_THAT, _ONE_MORE = "Yes, on that one", "No, on one more than was counted"


class TyingOn(QObject):
    """`told` gives a tag, what is said of it, and its skein once it hangs.

    `other_pile` when the tag is of another pile, and that one is wanted.
    """

    told = Signal(object, str, object)  # PrintedTag, words, skein or None
    other_pile = Signal(int)

    def __init__(self, bench: Bench, turn: InTurn, pile: int) -> None:
        super().__init__(bench)
        self._bench, self._turn, self._pile = bench, turn, pile
        self._of_bare: int | None = None  # the tag that may be meant for a skein without one

    def scan(self, tag: PrintedTag) -> None:
        """A printed tag that hangs nowhere was scanned."""
        self._turn.ask(partial(self._bare_came, tag), bare_for, tag.id)

    def _bare_came(self, tag: PrintedTag, bare: Sequence[Untagged]) -> None:
        """A skein of this lot wears no tag: the tag may be meant for it."""
        again, self._of_bare = tag.id == self._of_bare, tag.id
        if again or not bare:
            self._tie(tag, bare[0] if bare else None)
            return
        first = bare[0]
        self.told.emit(tag, "was printed for this lot", None)
        self._bench.around.found(
            [Finding(
                f"1 {first.put_up} of this lot, {grams(first.mg):.1f} g, has been without a tag "
                f"since {day_words(first.since)}: does {shown(tag.mark)} go on it? Scan it once "
                "more for yes.",
                (_ON_THAT, _ONE_MORE))],
            lambda _finding, answer: self._tie(tag, first if answer == _ON_THAT else None))

    def _tie(self, tag: PrintedTag, bare: Untagged | None) -> None:
        self._of_bare = None
        self._bench.around.found((), lambda _finding, _answer: None)
        if bare is None:
            self._bench.do(apply_tag, tag.id, then=partial(self._tied_on, tag))
        else:
            self._bench.do(new_tag, bare.yarn, tag.id,
                           then=lambda _done: self.told.emit(tag, "is tied on", bare.yarn))

    def _tied_on(self, tag: PrintedTag, done: Done[int]) -> None:
        self.told.emit(tag, "is tied on", done.answer)
        if tag.pile not in (None, self._pile):
            sentence = (
                f"{shown(tag.mark)} belongs to another pile: it is tied on there, and not "
                "counted here."
            )
            self._bench.around.found(
                [Finding(sentence, (_TAKE_IT, "Go on"))],
                lambda _finding, answer: self._answered(tag, answer),
            )

    def _answered(self, tag: PrintedTag, answer: str) -> None:
        if answer == _TAKE_IT and tag.pile is not None:
            self.other_pile.emit(tag.pile)
