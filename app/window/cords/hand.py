"""What is in hand at a bench of wet work, one thing at a time."""

from PySide6.QtCore import Qt, Signal

from app.calculations.codes import Kind, numbered
from app.lookups.jars import JarNow
from app.lookups.loads import InPlace
from app.lookups.pot_plates import PotPlate
from app.lookups.reel import DiscNow
from app.lookups.trays import BoardNow
from app.lookups.weigh_sources import StockNow
from app.window.bench import Around, Bench
from app.window.parts.key_button import KeyButton

DONE, MIXED, SPLIT = (numbered(Kind.ACTION, number).text for number in (1, 3, 5))
COUNTS = {numbered(Kind.ACTION, 10 + count).text: count for count in range(1, 11)}


class Hand(Bench):
    """A bench of its own for one thing: it takes discs, pots, places, counts and DONE.

    `over` says what comes in its place, and None is nothing; `wanted` asks for MIXED or SPLIT.
    """

    over = Signal(object)  # Hand or None
    wanted = Signal(str)

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)

    def take_disc(self, disc: DiscNow) -> bool:
        """A disc was scanned; False if this hand has no use for it."""
        return False

    def take_pot(self, pot: PotPlate) -> bool:
        """A pot was scanned; False if this hand has no use for it."""
        return False

    def take_place(self, place: InPlace) -> bool:
        """A tub, machine, rail or steamer was scanned; False if this hand has no use for it."""
        return False

    def take_source(self, jar: JarNow | None, stock: StockNow | None) -> bool:
        """A jar or a bottle of stock was scanned; False if this hand has no use for it."""
        return False

    def take_board(self, board: BoardNow) -> bool:
        """A tray board was scanned; False if this hand has no use for it."""
        return False

    def take_steamer(self, steamer: int) -> bool:
        """A steamer was scanned; False if this hand has no use for it."""
        return False

    def count(self, number: int) -> None:
        """A COUNT plate, or a figure."""

    def write(self, letter: str) -> bool:
        """A letter that is no key of the bench; True if it begins a word here."""
        return False

    def done(self) -> None:
        """DONE, or Enter."""

    def look(self) -> None:
        """Look up what it shows: at the beginning, and when something was saved."""

    def put_away(self, words: str = "Put away") -> KeyButton:
        """The key that puts it out of hand."""
        key = KeyButton(words, "F8")
        key.clicked.connect(lambda: self.over.emit(None))
        return key

    def other_keys(self) -> tuple[KeyButton, KeyButton]:
        """The keys that do what the plates MIXED and SPLIT do."""
        mixed, split = KeyButton("Mixed", "M"), KeyButton("Split", "S")
        mixed.clicked.connect(lambda: self.wanted.emit(MIXED))
        split.clicked.connect(lambda: self.wanted.emit(SPLIT))
        return mixed, split
