"""The codes on the action plates that hang at every station."""

from app.calculations.codes import Kind, numbered

DONE, UNDO, MIXED, HOLD, SPLIT, SECONDS, GOOD, FAULT = (
    numbered(Kind.ACTION, number).text for number in range(1, 9)
)
COUNTS = {numbered(Kind.ACTION, 10 + count).text: count for count in range(1, 11)}
"""{code: how many}."""
