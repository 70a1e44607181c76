"""What is in hand at a bench of wet work, one thing at a time."""

from collections.abc import Callable, Collection

from PySide6.QtCore import Qt, Signal

from app.lookups.jars import JarNow
from app.lookups.loads import InPlace
from app.lookups.pot_plates import PotPlate
from app.lookups.reel import DiscNow
from app.lookups.trays import BoardNow
from app.lookups.weigh_sources import StockNow
from app.problems import NotFound
from app.window.bench import Around, Bench
from app.window.in_turn import InTurn
from app.window.parts.action_plates import COUNTS, DONE, MIXED, SPLIT
from app.window.parts.key_button import KeyButton


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

    def goes_in(
        self, disc: DiscNow, there: Collection[int], so: str, way: str, where: str = "in"
    ) -> bool:
        """Whether yarn hangs on this disc that is not there yet; else it is said why not."""
        if disc.bundle is None:
            self.around.trouble(
                NotFound(f"Disc {disc.number} hangs on nothing, so {so}.", way)
            )
        elif disc.id in there:
            self.say(f"disc {disc.number} is {where} already")
        else:
            return True
        return False

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


def take_plate(
    code: str, turn: InTurn, hand: Callable[[], Hand], start: Callable[[str], None] | None = None
) -> bool:
    """COUNT and DONE are for the hand that is there when their turn comes; MIXED, SPLIT `start`."""
    if code in COUNTS:
        turn.then(lambda: hand().count(COUNTS[code]))
    elif code == DONE:
        turn.then(lambda: hand().done())
    elif start is not None and code in (MIXED, SPLIT):
        turn.then(lambda: start(code))
    else:
        return False
    return True
