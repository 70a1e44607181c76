"""Free counts for the web shop: what is left to sell of every lot, as a table in a file."""

import csv
import io
from collections.abc import Iterable

from sqlalchemy import Connection

from app.calculations.units import metres
from app.lookups.free_counts import FreeCount, free_counts
from app.lookups.prices import currency

HEADINGS = ("lot", "colourway", "base", "put-up", "left to sell", "metres each", "price",
            "currency")
BEGINS = "\ufefflot,colourway,base,".encode()
"""How such a file begins, so that none but our own is written over."""
_RECKONS = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")


def free_counts_file(connection: Connection) -> bytes:
    """The whole table as CSV: UTF-8 with its mark, commas, a point in numbers, CRLF (RFC 4180)."""
    return as_csv(free_counts(connection), currency(connection))


def as_csv(counts: Iterable[FreeCount], currency: str) -> bytes:
    """These counts; words that a spreadsheet would reckon with stand behind an apostrophe."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(HEADINGS)
    writer.writerows(_row(one, currency) for one in counts)
    return text.getvalue().encode("utf-8-sig")


def _row(one: FreeCount, currency: str) -> tuple[str, ...]:
    each = "" if one.each_mm is None else f"{metres(one.each_mm).normalize():f}"
    price = "" if one.price is None else f"{one.price / 100:.2f}"
    words = (one.code, one.colourway, one.base, one.put_up)
    return (*map(plain, words), str(one.left), each, price,
            plain(currency) if price else "")


def plain(words: str) -> str:
    """Words for a cell: those that a spreadsheet would reckon with behind an apostrophe."""
    return f"'{words}" if words.startswith(_RECKONS) else words
