"""What must add up in every book, whatever was done: skeins, milligrams, and each cone's share."""

from collections import Counter
from fractions import Fraction

from sqlalchemy import Connection, func, select

from app.lookups.certainty import tally
from app.lookups.present import leaves
from app.lookups.thread import thread
from app.records import Draw, Part, Waste, Yarn


def adds_up(connection: Connection) -> None:
    """Roots = present states + waste, in skeins and milligrams; each cone's share = its draws.

    Finds stand beside, but those that are known to come out of a row.
    """
    parts = connection.execute(select(Part).where(Part.struck.is_(None))).all()
    moved = {part.child for part in parts if part.mg}
    rows = {
        row.id: row
        for row in connection.execute(
            select(Yarn.id, Yarn.kind, Yarn.count.label("members"), Yarn.mg).where(
                Yarn.struck.is_(None)
            )
        )
        if row.kind != "find" or row.id in moved
    }
    children = {part.child for part in parts}
    ends = leaves(connection, rows)
    cut = dict(
        connection.execute(
            select(Waste.yarn, func.sum(Waste.mg))
            .where(Waste.yarn.is_not(None), Waste.struck.is_(None))
            .group_by(Waste.yarn)
        ).all()
    )
    roots = [row for row in rows.values() if row.id not in children]
    grown = sum(part.gave - part.took for part in parts if part.took)
    assert sum(row.members for row in roots) + grown == sum(end.count for end in ends)
    assert sum(row.mg for row in roots) == sum(end.mg for end in ends) + sum(cut.values())
    weights = Counter({(end.yarn, end.count): end.mg for end in ends})
    weights.update({(yarn, 1): mg for yarn, mg in cut.items()})
    found = thread(connection, {yarn for yarn, _ in weights})
    drawn = connection.execute(
        select(Draw.cone, func.sum(Draw.mg)).where(Draw.struck.is_(None)).group_by(Draw.cone)
    ).all()
    for cone, mg in drawn:
        shares = (
            mass * tally(found, {yarn: count}, ("cone", cone)).metres / count
            for (yarn, count), mass in weights.items()
        )
        assert sum(shares, Fraction(0)) == mg, f"cone {cone}"
