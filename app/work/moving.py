"""Where finished skeins go: shelf, put by, kit, fair, order, customer, and back.

One open row a skein: nothing can be in two places, so nothing is sold twice.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import select

from app.calculations.moments import moment_words
from app.lookups.certainty import held_by
from app.lookups.skeins import then_of
from app.lookups.thread import thread
from app.problems import Refused
from app.records import OrderLine, Second, Whereabouts, Yarn
from app.store.deed import Deed
from app.work.bundling import number_of
from app.work.dividing import mark_of, must_be_known, skeins
from app.work.promising import keep_for_orders, note_for_orders
from app.work.reporting import note_told

TO_BUYERS = ("taken", "sent", "put by", "kit", "fair")
"""What has not happened yet and may be refused: a hold stops it."""
ALLOWED = {
    "taken": ("table", "shelf", "put by", "fair"),
    "sent": ("taken", "table", "shelf", "put by", "fair"),
    "put by": ("table", "shelf"),
    "kit": ("table", "shelf"),
    "fair": ("table", "shelf"),
}
"""From which states a skein may go to a buyer; to any other place it went because it is there.

Out of a kit it goes with the whole kit.
"""
WORDS = {
    "table": "on the table", "shelf": "on a shelf", "put by": "put by", "kit": "in a kit",
    "taken": "taken for an order", "sent": "sold", "fair": "at a fair", "lost": "lost",
    "given": "given away", "discarded": "thrown away",
}


@dataclass(frozen=True, slots=True)
class To:
    """Where skeins go: the state, and what it needs (place, order line, kit, customer, end)."""

    state: str
    place: int | None = None
    line: int | None = None
    kit: int | None = None
    customer: int | None = None
    ends: datetime | None = None
    basis: str = "scanned"


def move(deed: Deed, tagged: Sequence[int], to: To) -> None:
    """These skeins go there, all of them or none.

    Refused at the desk: a skein that is not where it could come from, a hold on what goes to a
    buyer, one that an order was promised. Entered late it has happened: kept, and marked. Marked
    too: what goes to a buyer though a fault was told of it.
    """
    rows = list(dict.fromkeys(tagged))
    if not rows:
        raise Refused("No skein was scanned; nothing was saved.", "Scan their tags.")
    must_be_known(deed, rows)
    for row in rows:
        _may_go(deed, row, to)
    if to.state in TO_BUYERS:
        _may_go_to_a_buyer(deed, rows, to.line)
    elif to.state not in ("table", "shelf"):
        note_for_orders(deed, rows)
    for row in rows:
        deed.begin(Whereabouts(yarn=row, state=to.state, place=to.place, line=to.line,
                               kit=to.kit, customer=to.customer, ends=to.ends, basis=to.basis))
    deed.say(f"{skeins(len(rows))} {_where(deed, to)}")


def _where(deed: Deed, to: To) -> str:
    """'on shelf 004', 'put by 004', 'sold'."""
    if to.place is None:
        return WORDS[to.state]
    words = "on shelf" if to.state == "shelf" else WORDS[to.state]
    return f"{words} {number_of(deed, to.place)}"


def lay(deed: Deed, tagged: Sequence[int], shelf: int, basis: str = "scanned") -> None:
    """These lie on this shelf: what is put by stays put by, there; what left its kit is marked."""
    rows = list(dict.fromkeys(tagged))
    stays = {row.yarn: row for row in deed.all(
        select(Whereabouts.yarn, Whereabouts.state, Whereabouts.customer, Whereabouts.ends)
        .where(Whereabouts.yarn.in_(rows), Whereabouts.state.in_(("put by", "kit")),
               Whereabouts.until.is_(None), Whereabouts.struck.is_(None)))}
    kept = [row for row, stay in stays.items()
            if stay.state == "put by" and stay.ends > deed.written]
    for row in kept:
        deed.begin(Whereabouts(yarn=row, state="put by", place=shelf, basis=basis,
                               customer=stays[row].customer, ends=stays[row].ends))
    for row in stays.keys() - kept:
        if stays[row].state == "kit":
            deed.note(f"{mark_of(deed, row)} was in a kit, which lacks it now: look for the bag.")
    rest = [row for row in rows if row not in kept]
    if rest or not rows:
        move(deed, rest, To("shelf", place=shelf, basis=basis))
    deed.say(f"{skeins(len(rows))} on shelf {number_of(deed, shelf)}"
             + (f", {len(kept)} of them put by as before" if kept else ""))


def put_by(
    deed: Deed, tagged: Sequence[int], place: int | None, until: datetime,
    customer: int | None = None, basis: str = "scanned",
) -> None:
    """Kept for someone until a day; after it the skeins are offered again."""
    if until <= deed.written:
        raise Refused(f"{moment_words(until)} is over already; nothing was put by.",
                      "Choose a later day.")
    move(deed, tagged, To("put by", place=place, customer=customer, ends=until, basis=basis))


def end_put_bys(deed: Deed, shelf: int, basis: str = "scanned") -> int:
    """Put-bys whose day is over go back on a shelf, known so; how many."""
    over = [yarn for (yarn,) in deed.all(
        select(Whereabouts.yarn).where(
            Whereabouts.state == "put by", Whereabouts.until.is_(None),
            Whereabouts.struck.is_(None), Whereabouts.ends <= deed.written))]
    if over:
        move(deed, over, To("shelf", place=shelf, basis=basis))
    deed.say(f"{skeins(len(over))} of ended put-bys back on the shelf" if over
             else "no put-by is over yet")
    return len(over)


def end_put_by(deed: Deed, tagged: Sequence[int], place: int | None = None) -> None:
    """Before its day: who it was kept for does not want it. Onto this shelf, else where it lies."""
    rows = list(dict.fromkeys(tagged))
    must_be_known(deed, rows)
    lies = {row.yarn: row.place for row in deed.all(
        select(Whereabouts.yarn, Whereabouts.place)
        .where(Whereabouts.yarn.in_(rows), Whereabouts.state == "put by",
               Whereabouts.until.is_(None), Whereabouts.struck.is_(None)))}
    if not rows or lies.keys() != set(rows):
        raise Refused("Not all of these are put by; nothing was saved.",
                      "Look where they are, by their tags.")
    if place is None and None in lies.values():
        raise Refused("It is not known on which shelf they lie; nothing was saved.",
                      "Scan the shelf that they are laid on.")
    for shelf in sorted({place or lies[row] or 0 for row in rows}):
        move(deed, [row for row in rows if (place or lies[row]) == shelf],
             To("shelf", place=shelf, basis="scanned" if place else "stated"))
    deed.say(f"ended the put-by of {skeins(len(rows))}: on the shelf again")


def call_second(deed: Deed, tagged: Sequence[int], why: str) -> None:
    """Sound yarn to be sold below price, with what is seen; it keeps its lot."""
    if not why.strip():
        raise Refused("A second needs its reason; nothing was saved.", "Say what is seen.")
    must_be_known(deed, tagged)
    known = {yarn for (yarn,) in deed.all(select(Second.yarn).where(
        Second.yarn.in_(tagged), Second.struck.is_(None)))}
    fresh = [row for row in dict.fromkeys(tagged) if row not in known]
    if not fresh:
        raise Refused("Nothing here is not called a second already; nothing was saved.",
                      "Scan the tags of the others.")
    deed.add_all([Second(yarn=row, why=why) for row in fresh])
    deed.say(f"{skeins(len(fresh))} called {'a second' if len(fresh) == 1 else 'seconds'}: {why}")


def _may_go_to_a_buyer(deed: Deed, rows: Sequence[int], line: int | None) -> None:
    found = thread(deed.connection, rows)
    for row in rows:
        if held_by(found, row):
            deed.refuse(f"HOLD: {mark_of(deed, row)} may not go to a buyer; nothing was saved.",
                        "Ask who placed the hold.")
    promised = None if line is None else deed.value(
        select(OrderLine.lot).where(OrderLine.id == line))
    keep_for_orders(deed, rows, but=promised)
    note_told(deed, rows)


def _may_go(deed: Deed, row: int, to: To) -> None:
    now = then_of(deed.connection, row, deed.happened)
    if now is None:
        if deed.value(select(Yarn.closed).where(Yarn.id == row)):
            raise Refused(f"{mark_of(deed, row)} became something else: it is no skein of its own "
                          "any more; nothing was saved.", "Scan what it became.")
        deed.refuse(f"{mark_of(deed, row)} was no skein with a tag then; nothing was saved.",
                    "Look whether the moment is right.")
    elif to.state not in ALLOWED:
        if now in ("sent", "lost", "given", "discarded") and to.state != "table":
            deed.note(f"{mark_of(deed, row)} was {WORDS[now]} and is {WORDS[to.state]} again: look "
                      "whether it is the same skein.")
    elif now == "kit" and to.kit is None:
        deed.refuse(f"{mark_of(deed, row)} is in a kit: it cannot be {WORDS[to.state]}; nothing "
                    "was saved.", "Open the kit first.")
    elif now not in ALLOWED[to.state] and not (now == "kit" and to.state == "sent"):
        deed.refuse(f"{mark_of(deed, row)} is {WORDS[now]}: it cannot be {WORDS[to.state]}; "
                    "nothing was saved.", "Look where it is, or take the last deed back.")
