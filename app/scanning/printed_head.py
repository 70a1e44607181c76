"""The journal's head as a paper carries it: whether this book still has that entry."""

import re

from sqlalchemy import Connection, select

from app.records import DeedRow

_HEAD = re.compile(r"E([1-9]\d{0,9})-([0-9A-F]{64})", re.IGNORECASE)


def printed_head(connection: Connection, text: str) -> tuple[str, str] | None:
    """What a scanned head says of paper and book, and what to do; none where it is no head."""
    said = _HEAD.fullmatch(text)
    if said is None:
        return None
    entry, digest = int(said[1]), said[2].lower()
    found = connection.execute(select(DeedRow.hash).where(DeedRow.seq == entry)).scalar()
    if found is None:
        return (f"This paper was printed after entry {entry}, and this book has no such entry.",
                "Look whether it belongs to another book, or to a newer copy of this one.")
    if found.hex() != digest:
        return (f"Entry {entry} of this book is not the one that this paper was printed after.",
                "It belongs to another book, or the book was changed: compare with a copy.")
    return (f"Paper and book agree: entry {entry} is the one that it was printed after.",
            "A check of the whole book says whether all before it stands as it was written.")
