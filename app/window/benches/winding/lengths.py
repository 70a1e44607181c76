"""A length as the winder knows it: metres, or turns off the counter."""

import re
from decimal import Decimal

from app.calculations.units import millimetres
from app.problems import BadInput

_WRITTEN = re.compile(r"(\d{1,6})(?:([.,])(\d{1,3}))?\s*(m|metres?|turns?|t)?", re.IGNORECASE)


def read_length(text: str, reel_mm: int) -> int:
    """Millimetres from `255.2`, `255,2 m` or `170 turns` of a reel with this girth."""
    found = _WRITTEN.fullmatch(text.strip())
    if found is None:
        raise BadInput(
            f"“{text.strip()}” is no length."
            if text.strip()
            else "How much of it is in this skein is not said yet.",
            "Write metres like 255.2, or turns like 170 turns.",
        )
    whole, mark, part, unit = found.groups()
    if mark == "," and len(part) == 3:
        raise BadInput(
            f"{whole},{part} can be read as {whole}{part} or as {whole}.{part}.",
            "Write which it is.",
        )
    number = Decimal(f"{whole}.{part or 0}")
    if (unit or "").lower().startswith("t"):
        return int(number * reel_mm)
    return millimetres(number)
