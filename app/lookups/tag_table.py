"""All that lies on the tag table: the piles that wait, and everything about the one in hand."""

from collections.abc import Mapping
from dataclasses import dataclass

from sqlalchemy import Connection, select

from app.lookups.holds import HoldFacts, hold_facts
from app.lookups.piles import ties_of
from app.lookups.printed import PrintedTag, sheets_used, tags_of
from app.lookups.tagging import PileFacts, pile_facts, piles_waiting
from app.lookups.trail import Stop
from app.lookups.trails import trail_of
from app.records import BaseVersion
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class PileToTag:
    """A pile that waits, with the ties its skeins wore at the count."""

    facts: PileFacts
    ties: str


@dataclass(frozen=True, slots=True)
class OnTable:
    """The pile in hand: its tags one by one, what holds it, what may be printed on which sheet."""

    facts: PileFacts
    ties: str
    tags: tuple[PrintedTag, ...]
    holds: tuple[HoldFacts, ...]
    texts: Mapping[int, str]
    """{base version: fibre content}: two where cones of two compositions lie in one pile."""
    used: Mapping[str, frozenset[int]]
    """{stock: the used cells of its sheet in hand}, the stock that was printed on last first."""
    stops: tuple[Stop, ...]


def piles_to_tag(connection: Connection) -> tuple[PileToTag, ...]:
    """The piles with skeins that wear no tag yet, the oldest first."""
    return tuple(
        PileToTag(facts, ties_of(connection, facts.id)) for facts in piles_waiting(connection))


def on_table(connection: Connection, pile: int) -> OnTable:
    """One pile with all that the labeller needs; raises NotFound."""
    facts = pile_facts(connection, pile)
    texts = dict(connection.execute(
        select(BaseVersion.id, BaseVersion.fibre).where(among(BaseVersion.id, "ids")),
        {"ids": listed(facts.versions)}).all())
    return OnTable(
        facts, ties_of(connection, pile), tags_of(connection, pile),
        hold_facts(connection, facts.holds), texts, sheets_used(connection),
        trail_of(connection, facts.lot) if facts.lot else (),
    )
