"""What the book keeps of a customer, said in sentences; and what goes and stays on request."""

from app.calculations.codes import shown
from app.calculations.listing import listing
from app.calculations.moments import day_words
from app.lookups.customer_data import CustomerData
from app.window.benches.desk.desk_words import how_many


def kept_words(data: CustomerData) -> str:
    """All that is kept, one line each: about the person, and what they have to do with yarn."""
    lines = [f"{field[:1].upper()}{field[1:]}: {value}" for field, value in data.fields]
    lines.append(_bought(data))
    lines += [f"Put by: {shown(one.mark) if one.mark else 'a skein without a tag'}, until "
              f"{day_words(one.until)}." for one in data.kept]
    lines += [f"Offered on {day_words(one.at)}: {one.way} for {one.wanted} of {shown(one.lot)}; "
              f"{one.answer}." for one in data.offered]
    lines += [f"Told on {day_words(one.at)}: {one.fault}"
              f"{f' (“{one.words}”)' if one.words else ''}." for one in data.reported]
    return "\n".join(lines)


def goes_words(data: CustomerData) -> str:
    """Before: what will go, and what will stay."""
    return (f"{_fields(data)} will go, and pictures they sent. {_stays(data)}. It cannot be "
            "brought back, not even by Undo: the entry keeps only that it was removed, by whom "
            "and why.")


def gone_words(data: CustomerData) -> str:
    """After: what went, and what stayed."""
    return (f"Removed: {_fields(data).lower()} of customer {data.customer}, and files of their "
            f"data beside the book. {_stays(data)}, as bought by nobody known.")


def _fields(data: CustomerData) -> str:
    names = [field for field, _ in data.fields]
    said = listing(names) or "nothing"
    return f"{said[:1].upper()}{said[1:]}"


def _stays(data: CustomerData) -> str:
    orders = len({one.order for one in data.bought})
    sold = sum(one.count for one in data.bought)
    return f"The yarn’s history stays: {how_many(orders, 'order')}, {how_many(sold, 'skein')} sold"


def _bought(data: CustomerData) -> str:
    if not data.bought:
        return "Bought nothing yet."
    orders = len({one.order for one in data.bought})
    sold, back = (sum(one.count for one in data.bought), sum(one.back for one in data.bought))
    last = max(one.placed for one in data.bought)
    came = f", {back} of them came back" if back else ""
    return (f"Bought: {how_many(sold, 'skein')} on {how_many(orders, 'order')}{came}; the last "
            f"order of {day_words(last)}.")
