"""A customer's own data as a file, on request: JSON with everything, or CSV of what they bought."""

import csv
import io
import json
from datetime import datetime
from typing import Any

from sqlalchemy import Connection

from app.calculations.codes import shown
from app.exchange.free_counts import plain
from app.lookups.bought import Bought
from app.lookups.customer_data import CustomerData, customer_data
from app.problems import NotFound

HEADINGS = ("order", "placed", "channel", "what", "lot", "colourway", "base", "put-up", "wanted",
            "sold", "brought back", "waiting")


def customer_json(connection: Connection, customer: int) -> bytes:
    """All that is kept, in a form that programs read: UTF-8, moments in UTC (ISO 8601)."""
    data = _data(connection, customer)
    return json.dumps({
        "customer": data.customer,
        "removed on request": data.removed,
        "about you": dict(data.fields),
        "bought": [dict(zip(HEADINGS, _bought(one), strict=True)) for one in data.bought],
        "put by": [{"skein": shown(one.mark), "until": _moment(one.until)} for one in data.kept],
        "offered": [{"at": _moment(one.at), "lot": shown(one.lot), "way": one.way,
                     "wanted": one.wanted, "answer": one.answer} for one in data.offered],
        "faults told": [{"at": _moment(one.at), "fault": one.fault, "words": one.words}
                        for one in data.reported],
    }, ensure_ascii=False, indent=2).encode()


def customer_csv(connection: Connection, customer: int) -> bytes:
    """What they bought, as a table: UTF-8 with its mark, commas, CRLF (RFC 4180)."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(HEADINGS)
    for one in _data(connection, customer).bought:
        writer.writerow([plain(str(cell)) for cell in _bought(one)])
    return text.getvalue().encode("utf-8-sig")


def _data(connection: Connection, customer: int) -> CustomerData:
    found = customer_data(connection, customer)
    if found is None:
        raise NotFound(f"There is no customer {customer} in the book; no file was written.",
                       "Look the name up again.")
    return found


def _bought(one: Bought) -> tuple[Any, ...]:
    lot = one.lot
    return (one.number, _moment(one.placed), one.channel, one.what, lot.shown if lot else "",
            lot.colourway if lot else "", lot.base if lot else "", one.put_up, one.wanted,
            one.count, one.back, one.waiting)


def _moment(moment: datetime) -> str:
    return moment.isoformat(timespec="seconds")
