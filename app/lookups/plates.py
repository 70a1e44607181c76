"""The discs and plates that were made, kind by kind."""

from dataclasses import dataclass

from sqlalchemy import Connection, select

from app.calculations.codes import Kind
from app.records import Plate


@dataclass(frozen=True, slots=True)
class PlatesMade:
    """All plates of one kind, by their numbers, with the words each bears."""

    kind: Kind
    numbers: tuple[int, ...]
    words: tuple[str, ...]

    @property
    def next_number(self) -> int:
        """The first number after all that are taken."""
        return max(self.numbers, default=0) + 1

    @property
    def runs(self) -> str:
        """'31 to 50, 61': the numbers as a person says them."""
        said, start = [], 0
        for place, number in enumerate(self.numbers, 1):
            if place == len(self.numbers) or self.numbers[place] != number + 1:
                first = self.numbers[start]
                said.append(str(number) if first == number else f"{first} to {number}")
                start = place
        return ", ".join(said)


def plates_made(connection: Connection) -> tuple[PlatesMade, ...]:
    """Every kind of which there are plates, in the order of the kinds."""
    rows: dict[Kind, dict[int, str]] = {}
    for code, kind, words in connection.execute(
        select(Plate.code, Plate.kind, Plate.words).where(Plate.struck.is_(None))
    ):
        rows.setdefault(Kind(kind), {})[int(code[1:-1])] = words
    return tuple(
        PlatesMade(kind, tuple(sorted(rows[kind])),
                   tuple(rows[kind][number] for number in sorted(rows[kind])))
        for kind in Kind if kind in rows
    )
