"""The codes by which the benches know the plates are those that are printed."""

from app.documents.plates import action_plates
from app.window.parts.action_plates import (
    COUNTS,
    DONE,
    FAULT,
    GOOD,
    HOLD,
    MIXED,
    SECONDS,
    SPLIT,
    UNDO,
)


def test_the_plates_on_the_wall_are_the_plates_the_benches_know() -> None:
    words = {plate.code: f"{plate.word} {plate.number}".strip() for plate in action_plates()}
    assert [words[code] for code in (DONE, MIXED, HOLD, SPLIT, SECONDS, GOOD, FAULT)] == [
        "DONE", "MIXED", "HOLD", "SPLIT", "SECONDS", "SEEN GOOD", "FAULT"]
    assert words[UNDO].startswith("UNDO")
    assert {words[code]: count for code, count in COUNTS.items()} == {
        f"COUNT {count}": count for count in range(1, 11)}
