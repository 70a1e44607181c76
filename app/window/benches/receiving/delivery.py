"""A delivery while it is weighed: nothing of it is in the book yet."""

from dataclasses import dataclass, field
from datetime import datetime
from uuid import uuid4

from app.lookups.door import BaseNow
from app.window.benches.receiving.door_words import supplier_words
from app.work.receiving import ConeIn, DeliveryIn, batches_apart, looks_off

OPENING = "opening stock"


@dataclass(frozen=True, slots=True)
class Heading:
    """What is said once for all cones of a delivery."""

    supplier: str
    note_no: str
    base: BaseNow
    opening: bool = False

    @property
    def words(self) -> str:
        """'Aske Mill, note 2241'."""
        note = OPENING if self.opening else f"note {self.note_no}"
        return f"{supplier_words(self.supplier)}, {note}"


@dataclass(slots=True)
class InHand:
    """The cones that were weighed so far; the token tells a second DONE from a second delivery."""

    heading: Heading
    begun: datetime
    cones: list[ConeIn] = field(default_factory=list)
    token: str = field(default_factory=lambda: uuid4().hex)

    @property
    def net_mg(self) -> int:
        """The yarn on all cones."""
        return sum(cone.gross_mg - cone.tare_mg for cone in self.cones)

    def delivery(self) -> DeliveryIn:
        """As it is taken in."""
        said = self.heading
        return DeliveryIn(said.supplier, said.note_no, said.base.name, self.begun,
                          tuple(self.cones), said.opening)

    def off(self, place: int) -> tuple[str, ...]:
        """What looks wrong with the cone at this place, from 0."""
        said = self.heading
        return looks_off(f"Cone {place + 1}", self.cones[place], said.base.millitex,
                         opened=said.opening)

    def apart(self) -> str:
        """What is said where there is more than one batch; '' where there is not."""
        batches = len({cone.batch for cone in self.cones})
        return batches_apart(batches) if batches > 1 else ""
