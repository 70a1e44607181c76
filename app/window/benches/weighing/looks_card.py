"""How a recipe looks: solid or by zones, for which fibre, and what is poured on each zone."""

from collections.abc import Sequence
from decimal import Decimal

from app.calculations.zones import SATURATION, room_ml
from app.lookups.trays import SPUN_TO_PAINT
from app.problems import BadInput
from app.records.recipes import LOOKS
from app.window.benches.weighing.rows_card import RowsCard
from app.window.parts.amounts import read_count
from app.window.parts.card import Actions
from app.window.parts.fields import TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head
from app.window.parts.words import SECOND, Words
from app.work.recipes import ZoneIn

SKEIN_G = Decimal(100)


class LooksCard(RowsCard[ZoneIn]):
    """The look and the fibre in words, and the zones A, B, C with their parts and volumes."""

    def __init__(self, *leave: KeyButton) -> None:
        self.look_field = TextField("How it looks", ", ".join(LOOKS))
        self.fibre = TextField("For which fibre", "wool, treated")
        self.letter, self.part = TextField("Zone", "A"), TextField("Part of the skein, %", "40")
        self.ml, self.named = TextField("mL on 100 g", "60"), TextField("Called", "whey blue")
        super().__init__(
            "How it looks",
            ("zone", Head("part %", right=True), Head("mL on 100 g", right=True), "called"),
            "zones", "No zones: it is dyed in a pot.",
            self.letter, self.part, self.ml, self.named)
        self.room = Words("", bold=True)
        self.add_zone = KeyButton("Add this zone", "Enter", strong=True)
        self.out = KeyButton("Take the zone out", "F7")
        self.back = KeyButton("Back to the dyes", "F4")
        self.add_row(self.look_field, self.fibre)
        self.add(self.table, self.room)
        self.add_row(self.letter, self.part, self.ml, self.named)
        self.add(Words("What is in a zone's bottle is written among the dyes, as “% in A”.",
                       ink=SECOND))
        self.add_last(Actions(self.add_zone, self.out, self.back, *leave))
        self.changed.connect(self._reckon)

    def read(self) -> ZoneIn:
        """The zone in the fields."""
        letter = self.letter.line.text().strip().upper()
        if len(letter) != 1 or not "A" <= letter <= "Z":
            raise BadInput(f"“{letter}” is no letter of a zone.", "Write A, B, C and so on.")
        part = read_count(self.part.line.text().replace("%", ""))
        if not 0 < part <= 100:
            raise BadInput("A zone is 1 to 100 % of the skein.", "Write its part.")
        swatch = next((row.swatch for row in self.rows if row.letter == letter), None)
        return ZoneIn(letter, part * 10, read_count(self.ml.line.text()),
                      self.named.line.text().strip(), swatch)

    def words(self, row: ZoneIn) -> tuple[str, ...]:
        """'A', '40', '60', 'whey blue'."""
        return row.letter, f"{row.share_permille / 10:g}", str(row.ml_per_100_g), row.name

    def show_looks(self, look: str | None, fibre: str | None, zones: Sequence[ZoneIn]) -> None:
        """Begin with these."""
        self.look_field.line.setText(look or "")
        self.fibre.line.setText(fibre or "")
        self.show_rows(zones)

    def look_said(self) -> str:
        """The look; one with zones is not solid, whatever stood there before."""
        said = " ".join(self.look_field.line.text().casefold().split())
        if said in ("", LOOKS[0]):
            return "zones" if self.rows else LOOKS[0]
        return said

    def _reckon(self) -> None:
        """What is laid on a skein against the room it has."""
        poured = sum(row.ml_per_100_g for row in self.rows)
        room = room_ml(SKEIN_G, SPUN_TO_PAINT, SATURATION)
        over = poured - room
        said = f"{poured} mL are laid on 100 g; spun to 80 % it has room for {room:.0f} mL."
        if over > 0:
            said += f" {over:.0f} mL would puddle: spin it harder, or make a bottle stronger."
        self.room.setText(said if self.rows else "")
        self.room.setVisible(bool(self.rows))
