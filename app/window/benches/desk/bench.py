"""The desk: whatever no other bench takes is found and shown here."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QWidget

from app.documents.plates import plate_for
from app.lookups.holds import HoldFacts
from app.problems import NotFound
from app.window.bench import Around, Bench
from app.window.benches.desk.back_pages import BackPages
from app.window.benches.desk.desk_words import kind_words
from app.window.benches.desk.graphs import Graphs
from app.window.benches.desk.hand import Hand
from app.window.benches.desk.recalls import Recalls
from app.window.look.look import Gap, look
from app.window.parts.action_plates import COUNTS, DONE, FAULT, GOOD, HOLD
from app.window.parts.card import Actions
from app.window.parts.key_button import KeyButton
from app.window.parts.why_card import WhyCard
from app.window.places import PLACES
from app.window.shades.showing import Showing

_RECALL, _SHADES, _PICTURE = "Who has it", "Shades", "The trail"
_OF_A_THING = (_RECALL, _SHADES, _PICTURE)  # pages without a key of their own: a thing opens them
_LARGE = 1.5  # a text factor
_PAGE_KEYS = ("F3", "F1", "F4", "F5", "F6", "F7", "F11", "Alt+T", "Alt+B")
"""F8 to F10 are keys of the pages."""


class DeskBench(Bench):
    """The thing in hand first; behind it, by named keys, holds, the book, people and plates."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.setAccessibleName("desk")
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        plates = tuple(plate_for(place.plate, word=place.title) for place in PLACES)
        self.hand, self.back = Hand(self), BackPages(self, plates)
        self.pages: dict[str, QWidget] = {
            "In hand": self.hand, "Faults": self.back.faults.page, "Holds": self.back.holds,
            "Book": self.back.book, "People": self.back.people, "Plates": self.back.plates,
            "Shop": self.back.shop.page, "Tags": self.back.tags.page,
            "Balances": self.back.balances,
        }
        self.recalls = Recalls(self)
        self.keys = {name: _PageKey(name, key)
                     for name, key in zip(self.pages, _PAGE_KEYS, strict=True)}
        self._page_keys = Actions(*self.keys.values(), gap=Gap.SMALL)
        self.body.addWidget(self._page_keys)
        for name, key in self.keys.items():
            key.setCheckable(True)
            key.clicked.connect(lambda _=False, name=name: self.turn_to(name))
            self.body.addWidget(self.pages[name], 1)
        self.shades, self.graphs = Showing(self), Graphs(self)
        for name, page in ((_RECALL, self.recalls.page), (_SHADES, self.shades.page),
                           (_PICTURE, self.graphs.page)):
            self.pages[name] = page
            self.body.addWidget(page, 1)
        for name, key in self.keys.items():  # there the row of keys is not in sight
            QShortcut(QKeySequence(key.key), self.graphs.page, partial(self.turn_to, name))
        self._join()
        self.turn_to("In hand")

    def _join(self) -> None:
        self.back.held_thing.connect(self._show_held)
        self.back.held_now.connect(self._count_holds)
        self.back.faults.opened.connect(self._show_code)
        self.back.balances.opened.connect(self._show_code)
        self.back.faults.listed.connect(self.recalls.open)
        self.back.holds.recalled.connect(self.recalls.open_hold)
        self.hand.page.name.recall_key.clicked.connect(self._recall_in_hand)
        self.recalls.asked_for.connect(lambda: self.turn_to(_RECALL))
        self.recalls.left.connect(lambda: self.turn_to(self._before))
        self.hand.page.name.shades_key.clicked.connect(self._shades_in_hand)
        self.shades.page.left.connect(lambda: self.turn_to(self._before))
        self.shades.page.wanted.connect(lambda _lot, code: self._show_code(code))
        self.hand.page.name.picture_key.clicked.connect(self._draw_in_hand)
        self.hand.turned.connect(self._hand_turned)
        self.graphs.asked_for.connect(lambda: self.turn_to(_PICTURE))
        self.graphs.left.connect(lambda: self.turn_to("In hand"))
        self.graphs.wanted.connect(lambda code: self.hand.seek(code, typed=False))

    def turn_to(self, name: str) -> None:
        """Show one of the pages."""
        if name not in _OF_A_THING:
            self._before = name
        self.at = name
        for other, page in self.pages.items():
            page.setVisible(other == name)
        for other, key in self.keys.items():
            key.setChecked(other == name)
        self.back.plates.check.shut()
        self._page_keys.setVisible(name != _PICTURE)  # it needs the room, and has keys of its own
        self.hand.hangs = name != _PICTURE
        self.hand.show_trail()
        self.back.look_again(self.pages[name])
        self.setFocus()

    def entered(self) -> None:
        self.turn_to(self.at)
        self.hand.look_again()

    def look_again(self, kinds: frozenset[str]) -> None:
        self.hand.look_again()
        self.back.look_again(self.pages[self.at])
        if self.at == _RECALL:
            self.recalls.look_again()
        elif self.at == _SHADES:
            self.shades.look_again()
        elif self.at == _PICTURE:
            self.graphs.look_again()

    def take(self, code: str) -> bool:
        """Everything: a scan is taken as it is."""
        if self.back.plates.check.open:
            self.back.plates.check.judge(code)
        elif self.at != "In hand" and self._answers(code):
            pass
        elif self.at == _SHADES and code in COUNTS:
            self.shades.count(COUNTS[code])
        elif code in (HOLD, DONE, FAULT, GOOD, *COUNTS):
            self._act(code)
        elif code:
            self._take_up(code, typed=False)
        return True

    def _answers(self, code: str) -> bool:
        """Whether a plate answers the question that is open on a further page."""
        asked = next((one for one in self.pages[self.at].findChildren(WhyCard)
                      if one.isVisibleTo(self)), None)
        if asked is None or code not in (DONE, *COUNTS):
            return False
        if code == DONE:
            asked.save()
        else:
            asked.choose(COUNTS[code])
        return True

    def take_again(self, code: str) -> bool:
        return self.back.plates.check.open and self.take(code)

    def take_list(self, codes: Sequence[str]) -> bool:
        self.turn_to("In hand")
        self.hand.seek_all(codes)
        return True

    def take_picture(self, picture: bytes) -> bool:
        """A picture of a fault while its card is open; else one of tags to be read back."""
        if self.hand.reporting.take_picture(picture):
            return True
        self.turn_to("In hand")
        return self.hand.photos.take(picture)

    def seek(self, words: str) -> bool:
        """A key, the figure of a choice, a code or a part of one, a name."""
        if self.back.plates.check.open:
            self.back.plates.check.judge(words, slow=True)
        elif len(words) != 1 or not (self.hand.choose(words) or self.press(words)):
            self._take_up(words, typed=True)
        return True

    def _act(self, code: str) -> None:
        """An action plate acts on what is in hand; that is shown on its page for it."""
        if self.at != "In hand" and code in (DONE, *COUNTS):
            self.around.trouble(NotFound("Nothing is open here that could be done or chosen."))
            return
        if self.at != "In hand":
            self.turn_to("In hand")
        if code == HOLD:
            self.hand.hold_plate()
        elif code == DONE:
            self.hand.done_plate()
        elif code in COUNTS:
            self.hand.count_plate(COUNTS[code])
        else:
            self.hand.looked_plate(good=code == GOOD)

    def _take_up(self, text: str, *, typed: bool) -> None:
        """What is found is shown on its page; while a picture is open, as a picture."""
        if self.at != _PICTURE:
            self.turn_to("In hand")
        self.hand.seek(text, typed=typed)

    def _draw_in_hand(self) -> None:
        if self.hand.thing is not None:
            self.graphs.open(self.hand.thing.found)

    def _hand_turned(self, one_thing: bool) -> None:
        if self.at == _PICTURE and one_thing:
            self._draw_in_hand()
        elif self.at == _PICTURE:
            self.turn_to("In hand")

    def _count_holds(self, count: int) -> None:
        self.keys["Holds"].say(f"Holds: {count}" if count else "Holds")

    def _recall_in_hand(self) -> None:
        thing = self.hand.thing
        if thing is not None and thing.source is not None:
            self.recalls.open(*thing.source, f"{kind_words(thing.found.kind)} {thing.found.shown}")

    def _shades_in_hand(self) -> None:
        if self.hand.thing is not None:
            self.shades.open_of(self.hand.thing.found)
            self.turn_to(_SHADES)

    def _show_held(self, hold: HoldFacts) -> None:
        if hold.code is not None:
            self._show_code(hold.code)

    def _show_code(self, code: str) -> None:
        self.turn_to("In hand")
        self.hand.seek(code, typed=False)


class _PageKey(KeyButton):
    """Opens a page. All stand in one row: with little room, and in large text without their keys.
    """

    pad = int(Gap.SMALL)

    def _cap_width(self) -> float:
        return super()._cap_width() if look().text <= _LARGE else 0
