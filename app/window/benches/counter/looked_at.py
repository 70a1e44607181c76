"""What is looked at when a fault is told at the counter: the skein that was scanned, or its lot."""

from app.calculations.codes import shown
from app.lookups.counter import AtCounter
from app.window.faults.fault_card import Seen


def seen_at_counter(lot: AtCounter | None, mark: str) -> Seen | None:
    """A skein that came back is seen at its return; one with a buyer brings its order's number."""
    if lot is None:
        return None
    skein = lot.tagged(mark)
    if skein is None:
        return Seen(lot.line.shown, "counter", lot=lot.line.lot)
    at = "return" if skein.state == "table" else "counter"
    order = skein.order if skein.state == "sent" else None
    return Seen(shown(skein.mark), at, {skein.yarn: shown(skein.mark)}, order=order or "")
