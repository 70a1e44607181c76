"""The codes on the action plates that hang at every station."""

from app.calculations.codes import Kind, numbered

DONE, UNDO, MIXED, HOLD, SPLIT, SECONDS = (
    numbered(Kind.ACTION, number).text for number in range(1, 7)
)
COUNTS = {numbered(Kind.ACTION, 10 + count).text: count for count in range(1, 11)}
"""{code: how many}."""
