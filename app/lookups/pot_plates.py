"""A pot by its plate, and the lots in it with their nearest relatives."""

from collections.abc import Iterator
from dataclasses import dataclass

from sqlalchemy import Connection

from app.calculations.codes import bare_characters, code_of
from app.lookups.fills import dyed_of
from app.lookups.now import NOW
from app.lookups.pots import PotNow, pots_now, relatives
from app.lookups.things import Found, by_code
from app.lookups.trail import Stop, trail


@dataclass(frozen=True, slots=True)
class PotPlate:
    """A pot by the number on its plate, and the bath in it if there is one."""

    id: int
    number: int
    bath: int | None


@dataclass(frozen=True, slots=True)
class Dyed:
    """A bath with its lots, the lots that are near to them, and the trail of the first."""

    pot: PotNow
    sisters: tuple[str, ...]
    fills_not_known: tuple[str, ...]
    """Lots of the same recipe and day, of which nobody knows whether the jars were the same."""
    stops: tuple[Stop, ...]
    off_recipe: tuple[str, ...] = ()
    """Why it is off its recipe; nothing where it is on it, as far as is known."""


def pot_with(connection: Connection, code: str) -> PotPlate | None:
    """The pot whose plate has this code, or none; of two baths in it the newer counts."""
    found = by_code(connection, code)
    if found is None or found.kind != "pot":
        return None
    baths = [pot.bath for pot in pots_now(connection) if pot.pot == code[1:-1]]
    return PotPlate(found.id, int(code[1:-1]), baths[-1] if baths else None)


def dyed(connection: Connection, bath: int) -> Dyed | None:
    """A bath that was not lifted yet, or none."""
    pot = next((pot for pot in pots_now(connection) if pot.bath == bath), None)
    if pot is None:
        return None
    lots = list(_lots(connection, pot))
    near = [relatives(connection, lot.id) for lot in lots]
    sisters = dict.fromkeys(code for one in near for code in one.sisters)
    perhaps = dict.fromkeys(code for one in near for code in one.fills_not_known)
    off = dyed_of(connection, [lot.id for lot in lots[:1]])
    return Dyed(pot, tuple(sisters), tuple(perhaps),
                trail(connection, lots[0], NOW) if lots else (),
                next((of.off_recipe for of in off.values()), ()))


def _lots(connection: Connection, pot: PotNow) -> Iterator[Found]:
    for lot in pot.lots:
        code = code_of(bare_characters(lot.code))
        found = by_code(connection, code.text) if code else None
        if found is not None:
            yield found
