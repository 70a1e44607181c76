"""The weigh bench: yarn and recipe become lines at the balance, each by the jar it came from."""

import re
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog

from app.calculations.codes import Kind, numbered, read
from app.lookups.balances import BalanceNow, balance_with
from app.lookups.jars import JarNow, jar_with
from app.lookups.now import NOW
from app.lookups.pots import Recipe, recipe_of_lot
from app.lookups.reel import DiscNow, disc_now
from app.lookups.things import by_code
from app.lookups.weigh_sources import StockNow, stock_with
from app.lookups.weighings import WeighOut, weigh_out
from app.problems import BadInput, NotFound, Refused
from app.scanning.balance_ear import Heard
from app.scanning.balance_lines import is_weight
from app.scanning.resolve import Resolution, resolve
from app.scanning.saying import no_such_plate
from app.window.bench import Around, Bench
from app.window.benches.weighing.for_stock import ForStock
from app.window.benches.weighing.hand import WeighHand
from app.window.benches.weighing.jars_page import JarsPage
from app.window.benches.weighing.line_hand import LineHand
from app.window.benches.weighing.notebook_page import NotebookPage
from app.window.benches.weighing.start import Start, hand_of
from app.window.benches.weighing.weigh_words import bare, reading_of, title
from app.window.cords.hand import take_plate
from app.window.in_turn import InTurn

_CONCERNED = frozenset({
    "weighing", "weighed_for", "weigh_line", "stock", "jar", "fill", "fill_part", "fill_reading",
    "recipe_version", "component", "colourway", "hold", "setting", "bundle", "on_bundle",
    "plate_stay", "yarn"})
_FILES = "Lists (*.csv *.xlsx *.txt *.tsv);;All files (*)"
_FIGURES = "0123456789.,"
_JAR = re.compile(r"(jar ?)?([1-9]\d{0,2})", re.IGNORECASE | re.ASCII)
"""A jar by its number; on its own a number is a jar's where jars are wanted."""


class WeighingBench(Bench):
    """One weigh-out is in hand at a time."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.turn = InTurn(self)
        self.hand: WeighHand = Start(around)
        self._show(self.hand)
        self.body.addStretch(1)
        if around.balance is not None:
            around.balance.heard.connect(self._hear)

    def entered(self) -> None:
        """Keys belong to the bench now; the balance on the wire is listened to."""
        if self.around.balance is not None:
            self.around.balance.listen()
        self.hand.setFocus()
        self.hand.look()

    def look_again(self, kinds: frozenset[str]) -> None:
        """Look again at what is in hand."""
        if kinds & _CONCERNED:
            self.hand.look()

    def take_in_hand(self, hand: WeighHand | None) -> None:
        """This comes in the place of what was in hand."""
        old, self.hand = self.hand, hand or Start(self.around)
        self._show(self.hand)
        self.setFocus()  # what is hidden with the focus would hand it on to any widget
        old.hide()
        old.deleteLater()
        self.hand.show()
        self.hand.setFocus()

    def take(self, code: str) -> bool:
        """Jars, stock bottles, discs, balances, the sheet of a weigh-out, the lot's code on a
        bath card, and the plates DONE and COUNT.
        """
        kind = read(code).kind
        if kind is Kind.JAR:
            self.turn.ask(lambda jar: self._jar_came(code, jar), jar_with, code)
        elif kind is Kind.VESSEL and isinstance(self.hand, ForStock) and self.hand.wants_bottle:
            self.turn.ask(self.hand.stand_in, by_code, code)
        elif kind is Kind.VESSEL:
            self.turn.ask(lambda stock: self._bottle_came(code, stock), stock_with, code)
        elif kind is Kind.DISC:
            self.turn.ask(lambda disc: self._disc_came(code, disc), disc_now, code, NOW)
        elif kind is Kind.BALANCE:
            self.turn.ask(lambda one: self._balance_came(code, one), balance_with, code)
        elif kind is Kind.SHEET:
            number = read(code).number or 0
            self.turn.ask(lambda out: self._sheet_came(code, out), weigh_out, number)
        elif kind is Kind.LOT:
            self.turn.ask(lambda recipe: self._lot_came(code, recipe), recipe_of_lot, code)
        else:
            return take_plate(code, self.turn, lambda: self.hand)
        return True

    def take_other(self, text: str) -> bool:
        """A balance that types as fast as a scanner."""
        try:
            reading = reading_of(text)
        except BadInput as why:
            self.around.trouble(why)
            return True
        taken = bool(reading) and self.hand.weigh(reading)
        if not taken and is_weight(text):
            self.around.trouble(Refused(f"No weight is wanted here now; {text.strip()} was not "
                                        "taken.", "Scan the jar first."))
            return True
        return taken

    def take_again(self, code: str) -> bool:
        """The same weight twice is two weights; a jar scanned twice at once is a bounce."""
        return self.take_other(code)

    def press(self, key: str) -> bool:
        """Figures are a weight where one is wanted; a letter begins a name."""
        if super().press(key):
            return True
        if key in _FIGURES:
            return self.hand.write_figure(key)
        return key.isalpha() and self.hand.write(key)

    def seek(self, words: str) -> bool:
        """What was typed into the scan line: a weight where one is wanted, a jar or a disc."""
        if self.take_other(words):
            return True
        jar = _JAR.fullmatch(words)
        if jar and (jar[1] or not isinstance(self.hand, Start)):
            return self.take(numbered(Kind.JAR, int(jar[2])).text)
        if not any(character.isdigit() for character in words):
            return False
        self.turn.ask(self._resolved, resolve, words, True, frozenset({"jar", "disc"}))
        return True

    def take_file(self, path: Path) -> bool:
        """A notebook of recipes that was dropped."""
        self.take_in_hand(NotebookPage(self.around, path))
        return True

    def choose_file(self) -> None:
        """Ask for a file, in a window of its own that blocks nothing."""
        dialog = QFileDialog(self, "The notebook", "", _FILES)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.fileSelected.connect(lambda name: self.take_file(Path(name)))
        dialog.open()

    def _show(self, hand: WeighHand) -> None:
        hand.over.connect(self.take_in_hand)
        if isinstance(hand, Start | NotebookPage):
            hand.file_wanted.connect(self.choose_file)
        self.body.insertWidget(0, hand)

    def _resolved(self, answer: Resolution) -> None:
        found = [answer.found] if answer.found else list(answer.choices)
        if len(found) == 1 and found[0].kind in ("jar", "disc"):
            self.take(found[0].code)
        else:
            self.around.trouble(NotFound(answer.sentence, answer.next_step))

    def _jar_came(self, code: str, jar: JarNow | None) -> None:
        if jar is None:
            self.around.trouble(NotFound(
                f"{read(code).grouped} is no jar in the book; nothing was weighed.",
                "Open it with what is in it: F4."))
        elif not self.hand.take_jar(jar):
            self.around.trouble(Refused(
                f"Jar {jar.shown} holds {jar.dye}; nothing is weighed yet.",
                "Say for which yarn and colourway, or take up an open weigh-out."))

    def _hear(self, heard: Heard) -> None:
        if self.isVisible():
            self.hand.hear(heard)

    def _balance_came(self, code: str, balance: BalanceNow | None) -> None:
        """It is used from here on; what stands in the cup stays there."""
        if balance is None:
            self.around.trouble(NotFound(
                f"{read(code).grouped} is no balance in the book; nothing was changed.",
                "Set it up with what it reads to: F5, with nothing in hand."))
        elif self.around.balance is not None:
            self.around.balance.plate = balance.number
            self.hand.look()
            self.say(f"on {balance.title}: not less than "
                     f"{bare(balance.facts.minimum_g)} g ({balance.facts.rule})")

    def _bottle_came(self, code: str, stock: StockNow | None) -> None:
        if stock is None:
            self.around.trouble(NotFound(
                f"No stock of the book stands in {read(code).grouped}; nothing was weighed.",
                "Make the stock, and say which bottle it stands in."))
        elif not self.hand.take_bottle(stock):
            self.around.trouble(Refused("Nothing is weighed yet; nothing was saved.",
                                        "Say for which yarn and colourway."))

    def _sheet_came(self, code: str, out: WeighOut | None) -> None:
        """The paper of a weigh-out takes it up again, unless a cup stands on the balance."""
        cup = self.hand.now.open_line if isinstance(self.hand, LineHand) and self.hand.now else None
        if out is None:
            self.around.trouble(NotFound(
                f"{read(code).grouped} is the sheet of a weigh-out that is not in this book.",
                "Look whether it belongs to another book."))
        elif out.closed:
            self.around.trouble(Refused(
                f"Weigh-out {out.id} is closed: {title(out)}. Nothing was weighed.",
                "Scan the pot and the discs: what was weighed for them goes in."))
        elif cup is not None:
            self.around.trouble(Refused(
                f"{cup.asked} stands on the balance, and stays there.",
                "Take its weight, then scan the sheet again."))
        else:
            self.take_in_hand(hand_of(self.around, out))

    def _lot_came(self, code: str, recipe: Recipe | None) -> None:
        """Once more what this lot was dyed as, by the recipe as it is now."""
        if recipe is None:
            self.around.trouble(NotFound(
                f"{read(code).grouped} is the code of a dye lot that is not in this book.",
                "Look whether it belongs to another book."))
        elif isinstance(self.hand, Start):
            self.hand.choose(recipe)
            self.say(f"{read(code).grouped} was dyed as {recipe.colourway}: chosen in version "
                     f"{recipe.number}")
        else:
            self.around.trouble(Refused(
                f"{read(code).grouped} was dyed as {recipe.colourway}; another thing is in hand.",
                "Put it by with F8, and scan the code again."))

    def _disc_came(self, code: str, disc: DiscNow | None) -> None:
        if disc is None:
            self.around.trouble(no_such_plate(code, "disc"))
        elif isinstance(self.hand, JarsPage) and self.hand.is_idle:
            self.take_in_hand(Start(self.around))
            self.hand.take_disc(disc)
        elif not self.hand.take_disc(disc):
            self.around.trouble(Refused(
                f"Disc {disc.number} was not added; a weigh-out is in hand.",
                "Put it by with F8, and begin another."))
