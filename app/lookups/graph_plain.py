"""Skeins that are what their pile was: most of a large fan, known by the pile alone."""

from collections import Counter
from collections.abc import Collection, Mapping

from sqlalchemy import Connection, select

from app.lookups.present import Leaf
from app.records import Clear, Hold, InBath, InLoad, Part, Told
from app.store.dialect import among, listed

_CAME = select(Part.child, Part.parent, Part.took, Part.gave).where(
    among(Part.child, "ids"), Part.struck.is_(None))
_OF_THEIR_OWN = tuple(
    select(fact.yarn).where(among(fact.yarn, "ids"), fact.struck.is_(None))
    for fact in (Told, InBath, InLoad, Clear, Hold))


def plain_skeins(
    connection: Connection, leaves: Collection[Leaf], asked: Collection[int]
) -> dict[int, int]:
    """{skein: the row it came out of}, of those that nothing more is known of than of that row.

    Left out are those that are `asked` for themselves, came of several rows, were told apart,
    dyed, washed, put on hold or cleared of a hold.
    """
    ids = [leaf.yarn for leaf in leaves if leaf.kind == "skein" and leaf.yarn not in asked]
    came = connection.execute(_CAME, {"ids": listed(ids)}).all()
    often = Counter(child for child, *_ in came)
    own = {row for question in _OF_THEIR_OWN
           for row in connection.execute(question, {"ids": listed(ids)}).scalars().all()}
    return {child: parent for child, parent, took, gave in came
            if often[child] == 1 and took == gave and child not in own}


def known_as(rows: Mapping[int, int], plain: Mapping[int, int]) -> dict[int, int]:
    """The same members, {row: members}, plain skeins counted as members of their rows."""
    found: dict[int, int] = {}
    for row, count in rows.items():
        of = plain.get(row, row)
        found[of] = found.get(of, 0) + count
    return found
