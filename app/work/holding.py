"""Holds: one entry at the source stops what was not printed, promised or sold yet."""

from sqlalchemy import select

from app.lookups.holds import hold_facts
from app.lookups.source_names import source_names
from app.problems import NotFound, Refused
from app.records import Clear, Hold
from app.records.holds import SOURCES
from app.store.deed import Deed


def hold(deed: Deed, kind: str, thing: int, why: str) -> int:
    """Put a hold on what may have spoiled yarn; what is in work goes on, marked."""
    if kind not in SOURCES:
        raise Refused(f"A {kind} cannot be held; nothing was saved.",
                      "Put the hold on its cone, batch, lot, load, bath, jar fill or yarn.")
    if not why.strip():
        raise Refused("A hold needs its reason; nothing was saved.", "Say what was seen.")
    row = deed.add(Hold(why=why, **{kind: thing}))
    deed.say(f"put a hold on {_on(deed, row)}: {why}")
    return row


def clear(deed: Deed, hold: int, yarn: int, evidence: str) -> int:
    """This yarn is cleared of that one hold, and so is what is made of it."""
    _must_stand(deed, hold)
    if not evidence.strip():
        raise Refused("Clearing needs its evidence; nothing was saved.", "Say what was looked at.")
    what = source_names(deed.connection, [("yarn", yarn)])["yarn", yarn]
    deed.say(f"cleared {what} of the hold on {_on(deed, hold)}: {evidence}")
    return deed.add(Clear(hold=hold, yarn=yarn, evidence=evidence))


def lift_hold(deed: Deed, hold: int, why: str) -> None:
    """The hold ends: an entry of its own, with its reason."""
    _must_stand(deed, hold)
    if not why.strip():
        raise Refused("Lifting a hold needs its reason; nothing was saved.", "Say what was found.")
    deed.change(Hold, hold, lifted=deed.seq)
    deed.say(f"lifted the hold on {_on(deed, hold)}: {why}")


def _on(deed: Deed, hold: int) -> str:
    (facts,) = hold_facts(deed.connection, [hold])
    return facts.on


def _must_stand(deed: Deed, hold: int) -> None:
    row = deed.one(select(Hold.lifted).where(Hold.id == hold, Hold.struck.is_(None)))
    if row is None:
        raise NotFound(f"There is no hold {hold}; nothing was saved.", "Scan the held thing again.")
    if row.lifted:
        raise Refused(f"Hold {hold} was lifted already; nothing was saved.",
                      "Place a new hold if it is needed again.")
