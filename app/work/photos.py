"""Pictures of a fault: kept in the book, and erased on request without breaking its chain."""

from hashlib import sha256

from sqlalchemy import select

from app.problems import NotFound, Refused
from app.records import Photo, Report
from app.store.deed import Deed

MOST_BYTES = 20_000_000
KINDS = {b"\xff\xd8\xff": "image/jpeg", b"\x89PNG\r\n\x1a\n": "image/png"}
"""How a picture begins, and what it is then."""


def kind_of(picture: bytes) -> str:
    """What kind of file it is. Raises Refused where it is none that can be kept."""
    kind = next((kind for first, kind in KINDS.items() if picture.startswith(first)), None)
    if kind is None:
        raise Refused("This file is no JPEG or PNG picture; nothing was saved.",
                      "Save it as one of these and drop it again.")
    if len(picture) > MOST_BYTES:
        raise Refused(f"The picture is larger than {MOST_BYTES // 1_000_000} MB; nothing was "
                      "saved.", "Make it smaller and drop it again.")
    return kind


def keep_photo(deed: Deed, report: int, picture: bytes) -> int:
    """A picture of what a report says, as a JPEG or PNG file; its row."""
    kind = kind_of(picture)
    if deed.value(select(Report.id).where(Report.id == report, Report.struck.is_(None))) is None:
        raise NotFound("This report is not in the book; nothing was saved.",
                       "Choose it on the Desk again.")
    deed.say("kept a picture of a fault")
    return deed.add(Photo(
        report=report, kind=kind, picture=picture, sha256=sha256(picture).hexdigest()))


def erase_photo(deed: Deed, photo: int) -> None:
    """On request: the picture goes; that there was one stays, with its digest."""
    row = deed.one(select(Photo.report, Photo.picture).where(Photo.id == photo))
    if row is None or row.picture is None:
        raise NotFound("This picture is not in the book; nothing was removed.",
                       "Look whether it was removed before.")
    deed.change(Photo, photo, picture=None)
    deed.say(f"removed a picture of report {row.report}")


def erase_photos_of(deed: Deed, customer: int) -> int:
    """All pictures that came with what one customer told; how many there were."""
    rows = [row for (row,) in deed.all(
        select(Photo.id).join(Report, Report.id == Photo.report)
        .where(Report.customer == customer, Photo.picture.is_not(None)))]
    for row in rows:
        deed.change(Photo, row, picture=None)
    return len(rows)
