"""Pictures that were kept with a report of a fault."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, bindparam, select

from app.records import DeedRow, Photo


@dataclass(frozen=True, slots=True)
class KeptPhoto:
    """One picture, when and by whom it was kept; of one that was removed nothing is there."""

    id: int
    at: datetime
    person: str
    picture: bytes | None


_OF_REPORT = (
    select(Photo.id, DeedRow.happened, DeedRow.person, Photo.picture)
    .join(DeedRow, DeedRow.seq == Photo.deed)
    .where(Photo.report == bindparam("report"), Photo.struck.is_(None)).order_by(Photo.id)
)
_ONE = select(Photo.picture).where(Photo.id == bindparam("photo"), Photo.struck.is_(None))


def photos_of(connection: Connection, report: int) -> tuple[KeptPhoto, ...]:
    """All pictures of a report, the first kept first; a removed one stays in its place."""
    return tuple(KeptPhoto(*row) for row in connection.execute(_OF_REPORT, {"report": report}))


def picture_of(connection: Connection, photo: int) -> bytes | None:
    """The picture byte for byte as it was kept; none where it was removed or never kept."""
    return connection.execute(_ONE, {"photo": photo}).scalar()
