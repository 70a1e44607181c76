"""What must add up in every book, whatever was done: skeins, milligrams, and each cone's metres."""

from collections import defaultdict
from fractions import Fraction

from sqlalchemy import Connection, func, select

from app.lookups.certainty import tally
from app.lookups.present import leaves
from app.lookups.thread import thread
from app.records import Draw, Part, Waste, Yarn


def adds_up(connection: Connection) -> None:
    """Roots = present states + waste, in skeins and milligrams; each cone's metres = its draws.

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
    found = thread(connection, {end.yarn for end in ends})
    per_member = _Wound(connection)
    drawn = connection.execute(
        select(Draw.cone, func.sum(Draw.mm)).where(Draw.struck.is_(None)).group_by(Draw.cone)
    ).all()
    for cone, mm in drawn:
        shares = (
            per_member.length(end.yarn) * tally(found, {end.yarn: end.count}, ("cone", cone)).metres
            for end in ends
        )
        assert sum(shares, Fraction(0)) == mm, f"cone {cone}"


class _Wound:
    """How many millimetres of the reel are in one member of a row; a cut shares them evenly.

    Length and not mass: what two cones of different counts gave to one skein is known in metres.
    What nobody knows the cone of is as long as others of its kind.
    """

    def __init__(self, connection: Connection) -> None:
        self.count = dict(connection.execute(select(Yarn.id, Yarn.count)).all())
        self.drawn = dict(connection.execute(
            select(Draw.yarn, func.sum(Draw.mm)).where(Draw.struck.is_(None)).group_by(Draw.yarn)
        ).all())
        self.like: dict[tuple[int, str], Fraction] = {}
        self.look: dict[int, tuple[int, str]] = {}
        for yarn, base, put_up in connection.execute(select(Yarn.id, Yarn.base, Yarn.put_up)):
            self.look[yarn] = base, put_up
            if yarn in self.drawn:
                self.like[base, put_up] = Fraction(self.drawn[yarn], self.count[yarn])
        self.parts = defaultdict[int, list[tuple[int, int]]](list)
        for child, parent, took in connection.execute(
                select(Part.child, Part.parent, Part.took)
                .where(Part.struck.is_(None), Part.took > 0)):
            self.parts[child].append((parent, took))

    def length(self, yarn: int) -> Fraction:
        if yarn in self.drawn:
            return Fraction(self.drawn[yarn], self.count[yarn])
        if yarn in self.parts:
            parts = (self.length(parent) * took for parent, took in self.parts[yarn])
            return sum(parts, Fraction(0)) / self.count[yarn]
        return self.like.get(self.look[yarn], Fraction(0))
