"""Tie colours: which one a cone wears, which ones are in work, which comes next."""

from sqlalchemy import Connection, exists, select
from sqlalchemy.orm import aliased

from app.lookups.studio import tie_colours
from app.records import Draw, Yarn
from app.records.yarn import IN_WORK

_OTHER = aliased(Draw)
_JOINED = exists().where(_OTHER.yarn == Draw.yarn, _OTHER.cone != Draw.cone)
"""A skein over a join wears the colours of both cones, which is neither's own."""


def tie_of(connection: Connection, cone: int, base: int) -> str:
    """The tie colour of this cone: the one it wears already, else the next of the rotation.

    The next is the first colour after the last one handed out that no other open cone of the base
    wears; where all are worn, the one after the last.
    """
    worn = connection.execute(
        select(Yarn.tie).join(Draw, Draw.yarn == Yarn.id)
        .where(Draw.cone == cone, Draw.struck.is_(None), Yarn.tie.is_not(None), ~_JOINED)
        .order_by(Draw.id).limit(1)
    ).scalar()
    if worn is not None:
        return worn
    colours = tie_colours(connection)
    last = connection.execute(
        select(Yarn.tie).join(Draw, Draw.yarn == Yarn.id)
        .where(Yarn.tie.in_(colours), Yarn.struck.is_(None), Draw.struck.is_(None))
        .order_by(Draw.id.desc()).limit(1)
    ).scalar()
    start = colours.index(last) + 1 if last in colours else 0
    order = [colours[(start + n) % len(colours)] for n in range(len(colours))]
    taken = open_ties(connection, base, cone)
    return next((colour for colour in order if colour not in taken), order[0])


def open_ties(connection: Connection, base: int, but_cone: int) -> dict[str, int]:
    """Tie colours of the base that skeins of other cones in work wear, each with such a cone."""
    rows = connection.execute(
        select(Yarn.tie, Draw.cone).join(Draw, Draw.yarn == Yarn.id)
        .where(IN_WORK, Yarn.kind == "group", Yarn.base == base, Yarn.tie.is_not(None),
               Draw.struck.is_(None), Draw.cone != but_cone)
    )
    return {tie: cone for tie, cone in rows if tie is not None}
