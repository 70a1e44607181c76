"""What the balance at the tag table says: in words, with the number at the agreed moisture."""

from decimal import ROUND_HALF_UP, Decimal

from app.calculations.moments import clock_words
from app.calculations.put_up_weight import CheckedWeight, Verdict, tolerable_error_g
from app.calculations.units import grams
from app.lookups.put_up_weights import LotWeights, RoomNow, ToWeigh

LIGHT = (Verdict.LIGHT, Verdict.TOO_LIGHT, Verdict.FAR_TOO_LIGHT)


def tenths(g: Decimal) -> str:
    """'96.4'."""
    return f"{g.quantize(Decimal('0.1'), ROUND_HALF_UP):f}"


def verdict_words(
    to_weigh: ToWeigh, mg: int, checked: CheckedWeight | None
) -> tuple[str, str, str]:
    """The number that decides, the verdict, and how both are known."""
    if to_weigh.nominal_mg is None:
        return (f"{grams(mg):f}", "grams as it lies there",
                f"What a {to_weigh.put_up} should weigh is not described: describe this put-up of "
                "the base at Receiving.")
    if checked is None:
        return (f"{grams(mg):f}", "grams as it lies there",
                "The weather is not taken out: whether yarn is light or the air is dry is not "
                "known. Weigh the reference skein, or read the humidity.")
    standard = f"at the agreed {_percent(to_weigh.standard_permille)} of moisture"
    how = ", estimated from the humidity of the room" if checked.estimated else ""
    return (tenths(checked.standard_g), f"grams: {checked.verdict.value}",
            f"{standard}{how}")


def room_words(room: RoomNow) -> str:
    """What the fibre holds in this room today, and who says so."""
    fibre = room.fibre[:1].upper() + room.fibre[1:]
    if not room.fibre:
        return "Two bases lie here together: none of their weights is judged."
    if room.permille is not None and room.at is not None:
        if room.how == "humidity":
            damp = _percent(room.humidity_permille or 0)
            return (f"{fibre} holds about {_percent(room.permille)}: estimated from {damp} "
                    f"humidity, read at {clock_words(room.at)}.")
        return (f"{fibre} holds {_percent(room.permille)} by its reference skein, weighed at "
                f"{clock_words(room.at)}.")
    if room.humidity_permille is not None:
        return (f"No table says what {room.fibre} holds at {_percent(room.humidity_permille)} "
                "humidity: weigh its reference skein.")
    return (f"The room was not read today: weigh the reference skein of {room.fibre}, or read the "
            "humidity.")


def lot_words(lot: LotWeights, nominal_mg: int | None, put_up: str) -> str:
    """'13 weighed of the lot: mean 100.1 g, none below 95.5 g. They pass.'"""
    told = []
    if lot.batch is not None and nominal_mg is not None:
        batch, nominal = lot.batch, grams(nominal_mg)
        error = tolerable_error_g(nominal)
        told.append(
            f"{batch.count} weighed of the lot: mean {batch.mean_g:.2f} g, "
            f"{_number(batch.below_t1)} below {nominal - error:.1f} g, "
            f"{_number(batch.below_t2)} below {nominal - 2 * error:.1f} g.")
        if batch.count > 1:
            told.append("They pass." if batch.passes else f"They do not pass as {nominal:f} g.")
    if lot.weather_not_known:
        told.append(f"{_counted(lot.weather_not_known, put_up)} weighed without the room’s "
                    "moisture.")
    if lot.sold_as_less:
        told.append(f"{_counted(lot.sold_as_less, put_up)} sold as less.")
    return " ".join(told) or "Nothing of this lot was weighed yet."


def _percent(permille: int) -> str:
    return f"{permille / 10:g} %"


def _number(count: int) -> str:
    return "none" if count == 0 else str(count)


def _counted(count: int, put_up: str) -> str:
    return f"{count} {put_up}{'' if count == 1 else 's'}"
