"""How the door says weights, counts and suppliers."""

from collections.abc import Collection

from app.calculations.moments import day_words
from app.calculations.units import grams
from app.exchange.delivery_note import NOT_STATED
from app.lookups.door import CameBefore
from app.problems import BadInput


def g(mg: int) -> str:
    """'1,398 g'."""
    return f"{grams(mg).normalize():,f} g"


def kg(mg: int) -> str:
    """'33.7 kg'."""
    return f"{mg / 1_000_000:.1f} kg"


def cones(count: int) -> str:
    """'1 cone', '24 cones'."""
    return "1 cone" if count == 1 else f"{count} cones"


def supplier_words(supplier: str) -> str:
    """The supplier's name, or that it is not stated."""
    return supplier or f"supplier {NOT_STATED}"


def came_words(note_no: str, before: CameBefore) -> str:
    """'Note 2241 of Aske Mill came in on 6 Apr 2026 with 24 cones of it.'"""
    whose = "" if before.supplier == NOT_STATED else f" of {before.supplier}"
    return (f"Note {note_no}{whose} came in on {day_words(before.arrived)} with "
            f"{cones(before.cones)} of it.")


def the_one(written: str, names: Collection[str], what: str) -> str:
    """The name that was written, or the only one that has these words in it; raises BadInput."""
    words = written.strip().casefold()
    exact = [name for name in names if name.casefold() == words]
    having = exact or [name for name in names if words and words in name.casefold()]
    if len(having) == 1:
        return having[0]
    if not words:
        raise BadInput(f"Say which {what} it is.", f"Choose one of: {', '.join(names)}.")
    if having:
        raise BadInput(f"“{written.strip()}” may be {' or '.join(having)}.", "Write more of it.")
    raise BadInput(f"No {what} is called “{written.strip()}”.",
                   f"Choose one of: {', '.join(names)}; or describe a new one.")
