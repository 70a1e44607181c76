"""Tags read back at the counter: from a photograph, or from a code with gaps."""

from collections.abc import Callable

from app.lookups.things import Found
from app.scanning.read_back import ReadBack
from app.window.bench import Bench
from app.window.benches.counter.hand import Hand
from app.window.benches.counter.looking import Answer, look_as_stated
from app.window.in_turn import InTurn
from app.window.parts.read_page import FROM_WORDS
from app.window.photo_reading import PhotoReading


class ReadingBack:
    """What is chosen is looked at as stated: only a scan lays a skein on the counter."""

    def __init__(
        self, bench: Bench, hand: Hand, turn: InTurn, found: Callable[[Answer], None]
    ) -> None:
        self._bench, self._hand, self._turn, self._found = bench, hand, turn, found
        self.photos = PhotoReading(bench, self._came)
        for key in (hand.empty.photo_key, hand.read.photo_key):
            key.clicked.connect(self.photos.choose)
        hand.read.chosen.connect(self._chosen)
        hand.read.copied.connect(lambda _: bench.say("the answer can be pasted now"))

    def _came(self, read: ReadBack) -> None:
        self._found(Answer("", read=read))

    def _chosen(self, thing: Found) -> None:
        self._turn.ask(self._found, look_as_stated, thing, FROM_WORDS[self._hand.read.came],
                       self._bench.around.session.now())
