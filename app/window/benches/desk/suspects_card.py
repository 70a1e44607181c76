"""Suspects of one fault: the word first, what to look at next, then counts and numbers."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout

from app.calculations.fault_settings import Settings
from app.calculations.next_looks import Look
from app.calculations.plain_tests import Tested
from app.calculations.suspect_words import (
    assumed,
    headline,
    if_so,
    look_at,
    percent,
    reasons,
)
from app.calculations.suspects import Ranked, Ranking, Word
from app.lookups.fault_evidence import InQuestion
from app.lookups.met_untagged import MetUntagged
from app.lookups.suspects import Suspects
from app.lookups.winder_days import WINDER_DAY
from app.window.benches.desk.desk_words import how_many
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words

MOST, NAMED = 8, 4
BESIDE = ("Beside it, plain arithmetic: how many of all that surely went through it are faulty, "
          "and of all others; how likely that is by chance alone (Fisher's exact test, only skeins "
          "that were looked at), and of so many suspects (Benjamini and Hochberg).")
_RANKED = ("suspect", "word", Head("chance", right=True), "what it rests on")
_TESTED = ("suspect", Head("faulty of its", right=True), Head("of others", right=True),
           Head("chance", right=True), Head("of many", right=True))


class SuspectsCard(Card):
    """A row of the suspects is chosen by Enter or a tap; the keys below are for that one."""

    acted = Signal(str, object)  # 'open', 'hold', 'list' or 'close', and the Ranked
    met = Signal(object)  # the Ranked whose yarn without a tag is asked for

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.asked: Suspects | None = None
        self.ranked: Sequence[Ranked] = ()
        self.picked: Ranked | None = None
        self.headline, self.assumed = Words("", Size.TITLE, bold=True), Words(ink=SECOND)
        self.there, self.stated, self.of = Words(bold=True), Words(ink=SECOND), Words(bold=True)
        self.bare, self.beside = Words(), Words(BESIDE, Size.SMALL, ink=SECOND)
        self.looks: list[Words] = []
        self._looks = QVBoxLayout()
        self._looks.setSpacing(Gap.HAIR)
        self.table = ThingTable(_RANKED, "suspects", opens=True, most_rows=MOST + 1)
        self.tests = ThingTable(_TESTED, "plain tests", most_rows=MOST)
        self.keys = {
            "open": KeyButton("Open it"), "hold": KeyButton("Put a hold on it", "F9"),
            "list": KeyButton("Who has it"), "close": KeyButton("It came from this", "F10"),
            "not found": KeyButton("Cause not found"),
        }
        self.add(self.headline, self._looks, self.there, self.stated, self.table, self.of,
                 self.bare, Actions(*self.keys.values()), self.assumed,
                 self.beside, self.tests)
        self.table.opened.connect(self._pick_row)
        for name, key in self.keys.items():
            key.clicked.connect(lambda _=False, name=name: self.acted.emit(name, self.picked))

    def begin(self, fault: str) -> None:
        """It is being reckoned, which may take long where much was dyed."""
        self.headline.setText(f"Looking into “{fault}” …")
        self._clear()
        self.show()

    def _clear(self) -> None:
        for part in (self.table, self.tests, self.there, self.stated, self.of, self.bare,
                     self.beside, *self.keys.values()):
            part.hide()
        take_down(self._looks)
        self.assumed.setText("")

    def show_suspects(self, asked: Suspects | None) -> None:
        """Show what may have spoiled them."""
        self.asked = asked
        if asked is None:
            self._clear()
            self.headline.setText("Not decided: no skein that is known has this fault.")
            self.assumed.setText("A lot as stated is not reckoned with: scan a tag of a skein that "
                                 "has it, and press F.")
            self.keys["not found"].show()
            return
        self.ranked = asked.ranking.ranked[:MOST]
        self.headline.setText(headline(asked.ranking))
        self.assumed.setText(assumed(asked.ranking))
        self._show_looks(asked)
        self.table.show_rows([*map(_ranked, self.ranked), *_others(asked.ranking.ranked[MOST:])])
        self.tests.show_rows([_tested(one) for one in asked.tested[:MOST]])
        for part in (self.table, self.tests, self.beside, self.of, *self.keys.values()):
            part.show()
        self.pick(self.ranked[0])

    def _pick_row(self, row: int) -> None:
        if row < len(self.ranked):  # the last row may stand for all others
            self.pick(self.ranked[row])

    def pick(self, one: Ranked) -> None:
        """The keys are for this suspect now."""
        self.picked = one
        self.of.setText(f"{str(one.suspect)[:1].upper()}{str(one.suspect)[1:]}: "
                        f"{' '.join(reasons(one))}")
        self.bare.hide()
        self.met.emit(one)
        thing = self.asked.asked.thing.get(one.suspect) if self.asked else None
        kind = thing[0] if thing else ""
        for name, kinds, why in (
            ("open", ("cone", "lot"), "It has no page of its own."),
            ("hold", ("cone", "lot", "fill", "load"), "It is nothing that can be held."),
            ("list", ("cone", "lot", "fill", "load"), "It is nothing that yarn came of."),
            ("close", ("cone", "lot", "fill", "load", WINDER_DAY), "It names no cause."),
        ):
            if kind in kinds:
                self.keys[name].allow()
            else:
                self.keys[name].refuse(why)

    def show_bare(self, found: Sequence[MetUntagged]) -> None:
        """What met the picked one and wears no tag yet: it can be looked at where it lies."""
        self.bare.setText(f"Without a tag yet, and may have it too: {bare_words(found)}.")
        self.bare.setVisible(bool(found))

    def _show_looks(self, asked: Suspects) -> None:
        take_down(self._looks)
        self.looks = []
        decided = asked.ranking.decided
        lead = "To be surer" if decided else "Next"
        for number, look in enumerate(asked.looks[:1] if decided else asked.looks):
            first = number == 0
            self.looks.append(Words(f"{lead if first else 'Or'}: {_which(look)}", bold=first))
            self.looks += [Words(if_so(outcome, look), Size.SMALL, ink=SECOND)
                           for outcome in look.outcomes if first]
        for words in self.looks:
            self._looks.addWidget(words)
        there = asked.ranking.to_look_at
        self.there.setText(f"Still there, look at it first: {', '.join(map(str, there))}.")
        self.there.setVisible(bool(there))
        self.stated.setText(" ".join((*_too_few(asked.ranking), *_left_out(asked.asked))))
        self.stated.setVisible(bool(self.stated.text()))


def _too_few(ranking: Ranking) -> Iterator[str]:
    """Why the first is not called likely, where its chance alone would say so."""
    first, settings = ranking.ranked[0], Settings()
    faulty = first.exposure.may_be_its_faulty if first.exposure else settings.least_faulty
    if first.chance >= settings.likely and faulty < settings.least_faulty:
        yield (f"Nothing is called likely on fewer than {settings.least_faulty} faulty skeins: "
               f"{faulty} may be chance.")


def _left_out(asked: InQuestion) -> Iterator[str]:
    if asked.stated:
        yield f"{how_many(asked.stated)} told of without a tag: not reckoned with."
    if asked.other_cases:
        yield (f"{how_many(asked.other_cases)} of other reports: left out, for what one of the two "
               "came from never touched the other.")


def _which(look: Look) -> str:
    """The group to look at; where only names tell which are meant, the first of them."""
    if look.only or len(look.skeins) <= NAMED:
        return look_at(look)
    return (f"{look_at(replace(look, only=True))} These among others: "
            f"{', '.join(look.skeins[:NAMED])}.")


def bare_words(found: Sequence[MetUntagged]) -> str:
    """'6 skeins on disc 047 (26·20·K44), counted, not tagged; 1 skein on the table'."""
    said = []
    for one in found:
        disc = f" on disc {one.disc}" if one.disc else ""
        lot = f" ({one.lot})" if one.lot else ""
        said.append(f"{how_many(one.count, one.put_up)}{disc}{lot}, {one.step}")
    more = f"; and in {len(said) - NAMED} more places" if len(said) > NAMED else ""
    return "; ".join(said[:NAMED]) + more


def _ranked(one: Ranked) -> tuple[str, ...]:
    seen = one.exposure
    if seen is None:
        return (str(one.suspect), one.word, percent(one.chance), "chance, or a cause not listed")
    of_a_pool = sum(pool.seen.faulty for pool in seen.pools)
    sure = f"{seen.sure.faulty} faulty, {seen.sure.good} good, {seen.sure.silent} silent"
    more = f"; {of_a_pool} faulty of a pool, not known which" if of_a_pool else ""
    word = one.word if one.word is not Word.HARDLY else "hardly"
    return (str(one.suspect), word, percent(one.chance), sure + more)


def _others(rest: Sequence[Ranked]) -> Iterator[tuple[str, ...]]:
    """All that stand no row of their own, so that the chances add up."""
    if rest:
        most = percent(max(one.chance for one in rest))
        yield (f"{len(rest)} more", "", percent(sum(one.chance for one in rest)),
               f"together; the likeliest of them {most}")


def _tested(one: Tested) -> tuple[str, ...]:
    rates = [("" if rate is None else f"{float(rate):.0%}".replace("%", " %"))
             for rate in (one.rate, one.others_rate)]
    return (str(one.suspect), *rates, f"{float(one.chance):.3f}", f"{float(one.adjusted):.3f}")
