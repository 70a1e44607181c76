"""What may have spoiled yarn: the suspects of one kind of fault, and what to look at next."""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import tzinfo

from sqlalchemy import Connection

from app.calculations.evidence import Suspect
from app.calculations.fault_settings import Settings
from app.calculations.next_looks import Look, next_looks
from app.calculations.plain_tests import Tested, plain_tests
from app.calculations.suspects import Ranking, rank
from app.lookups.cones import cone_facts
from app.lookups.fault_evidence import InQuestion, in_question
from app.lookups.jars import jar_of
from app.lookups.thread import Thing

OPEN_TO_LOOK = 3
"""Groups of skeins that are worth naming as the next look."""


@dataclass(frozen=True, slots=True)
class Suspects:
    """One kind of fault: the ranking, the next looks, and beside them what plain tests say."""

    asked: InQuestion
    ranking: Ranking
    looks: tuple[Look, ...]
    tested: tuple[Tested, ...]


def suspects(
    connection: Connection, fault: str, zone: tzinfo | None = None,
    settings: Settings | None = None, report: int | None = None,
) -> Suspects | None:
    """The suspects of this fault, as this report asks; none where no skein that is known has it."""
    asked = in_question(connection, fault, zone, report)
    if asked is None:
        return None
    still = _still_there(connection, asked.thing.items())
    return Suspects(
        asked, rank(asked.evidence, settings, fault, still),
        next_looks(asked.evidence, settings, fault)[:OPEN_TO_LOOK], plain_tests(asked.evidence))


def _still_there(
    connection: Connection, things: Collection[tuple[Suspect, Thing]]
) -> frozenset[Suspect]:
    """Cones with yarn left on them, and jars that hold this fill still: they can be looked at."""
    there = set()
    for suspect, (kind, number) in things:
        if number is None:
            continue
        if kind == "cone" and cone_facts(connection, number).left_mm > 0:
            there.add(suspect)
        if kind == "fill":
            jar = jar_of(connection, number)
            if jar is not None and jar.fill == number and jar.left_mg > 0:
                there.add(suspect)
    return frozenset(there)
