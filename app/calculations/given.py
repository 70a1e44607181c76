"""What a reckoning is given, refused in a sentence where it cannot be so."""

from decimal import Decimal

from app.problems import BadInput


def more_than_nothing(what: str, value: Decimal | int, unit: str = "") -> None:
    """Refuses a weight, a volume or a strength of zero or less, or one that is no number."""
    if not (Decimal(value).is_finite() and value > 0):
        raise _impossible(what, value, unit, "more than 0")


def not_below_nothing(what: str, value: Decimal | int, unit: str = "") -> None:
    """Refuses a negative amount, or one that is no number; zero may be."""
    if not (Decimal(value).is_finite() and value >= 0):
        raise _impossible(what, value, unit, "0 or more")


def a_share(what: str, value: Decimal) -> None:
    """Refuses a fraction that is not between 0 and 1, both included."""
    if not (value.is_finite() and 0 <= value <= 1):
        raise _impossible(what, value, "", "between 0 and 1")


def _impossible(what: str, value: Decimal | int, unit: str, limits: str) -> BadInput:
    said = f"{value} {unit}".strip()
    return BadInput(
        f"The {what} is given as {said}, and it must be {limits}.",
        f"Look at the {what} again; nothing was reckoned from it.",
    )
