"""The work places, in the order of the work: one visible list."""

from dataclasses import dataclass
from importlib import import_module

from app.calculations.codes import Kind, numbered
from app.window.bench import Bench
from app.window.look.icons import Icon


@dataclass(frozen=True, slots=True)
class Place:
    """One bench as the rail shows it; `bench` is `module:Class` in app.window.benches.

    Its class is brought in when the book is open, so that the window is there at once.
    """

    title: str
    icon: Icon
    number: int  # on its plate, and with Alt on the keyboard; 10 is 0
    bench: str
    apart: bool = False  # some space before it in the rail
    finds: bool = False  # opens what no other bench has a use for
    letter: str = ""  # with Alt, where the figures are used up

    @property
    def sign(self) -> str:
        """What stands beside it in the rail, and opens it with Alt."""
        return self.letter or str(self.number % 10)

    @property
    def key(self) -> str:
        """The key that opens it."""
        return f"Alt+{self.sign}"

    @property
    def plate(self) -> str:
        """The code on the bench's plate."""
        return numbered(Kind.BENCH, self.number).text

    def bench_class(self) -> type[Bench]:
        """The bench itself."""
        module, name = self.bench.split(":")
        found: type[Bench] = getattr(import_module(f"app.window.benches.{module}"), name)
        return found


PLACES = (
    Place("Receiving", Icon.CONE, 1, "receiving.bench:ReceivingBench"),
    Place("Winding", Icon.REEL, 2, "winding.bench:WindingBench"),
    Place("Weighing", Icon.BALANCE, 3, "weighing.bench:WeighingBench"),
    Place("Pots & trays", Icon.POT, 4, "pots.bench:PotsBench"),
    Place("Wash & dry", Icon.RAIL, 5, "washing.bench:WashingBench"),
    Place("Inspecting", Icon.CARD, 11, "inspecting.bench:InspectingBench", letter="I"),
    Place("Finishing", Icon.SCISSORS, 6, "finishing.bench:FinishingBench"),
    Place("Tagging", Icon.TAG, 7, "tagging.bench:TaggingBench"),
    Place("Packing", Icon.PARCEL, 8, "packing.bench:PackingBench"),
    Place("Counter", Icon.COUNTER, 9, "counter.bench:CounterBench"),
    Place("Desk", Icon.DESK, 10, "desk.bench:DeskBench", apart=True, finds=True),
)
"""Plates keep their numbers for ever: a bench that came later has the next number, and a letter."""
