"""How far apart a fault comes back, as people write it."""

import re
from decimal import Decimal

from app.problems import BadInput

_DISTANCE = re.compile(r"([0-9]{1,4})(?:[.,]([0-9]{1,3}))?\s*(mm|cm|m)?\.?", re.IGNORECASE)
_MM = {"mm": 1, "cm": 10, "m": 1000}
_SAY = "Write it in centimetres, like 150, or with its unit, like 1.5 m."


def read_mm(text: str) -> int:
    """Whole millimetres from `150`, `12,5 cm` or `1.5 m`; a number alone is centimetres."""
    if not text.strip():
        raise BadInput("Nothing is written here yet.", _SAY)
    parts = _DISTANCE.fullmatch(text.strip())
    if parts is None:
        raise BadInput(f"“{text.strip()}” is no distance.", _SAY)
    mm = Decimal(f"{parts[1]}.{parts[2] or 0}") * _MM[(parts[3] or "cm").lower()]
    if mm != int(mm):
        raise BadInput(f"{text.strip()} is finer than a millimetre.", "Write fewer decimals.")
    if not mm:
        raise BadInput("The distance is nothing.", "Measure from one place to the next.")
    return int(mm)
