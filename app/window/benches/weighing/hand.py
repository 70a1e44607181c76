"""What is in hand at the weigh bench, one thing at a time."""

from app.lookups.jars import JarNow
from app.lookups.weigh_sources import StockNow
from app.scanning.balance_ear import Heard
from app.window.cords.hand import Hand


class WeighHand(Hand):
    """Takes jars, stock bottles and what a balance says, beside discs, counts and DONE."""

    def take_jar(self, jar: JarNow) -> bool:
        """A jar was scanned; False if this hand has no use for it."""
        return False

    def take_bottle(self, stock: StockNow) -> bool:
        """A bottle of a stock was scanned; False if this hand has no use for it."""
        return False

    def weigh(self, reading: str) -> bool:
        """A balance that types, or fingers, gave a weight and Enter; False if none is wanted."""
        return False

    def hear(self, heard: Heard) -> None:
        """The balance on the wire says something; its own key is as good as typing."""
        if heard.printed is not None:
            self.weigh(heard.printed.figures)

    def write_figure(self, figure: str) -> bool:
        """A figure or mark was typed while nothing had the focus; True if a weight begins so."""
        return False
