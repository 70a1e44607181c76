"""The balances of the studio: a plate for each, what it reads to and what it carries."""

import json
from dataclasses import dataclass
from decimal import Decimal

from app.calculations.balances import Balance
from app.calculations.codes import Kind, numbered
from app.lookups.balances import FACTS, balance_with
from app.lookups.studio import setting
from app.problems import Refused
from app.records import Plate, Setting
from app.store.deed import Deed
from app.work.bundling import make_plates


@dataclass(frozen=True, slots=True)
class BalanceIn:
    """A balance as its own plate and booklet say: number, name, reading step, most it carries."""

    number: int
    name: str
    step_g: Decimal
    most_g: Decimal | None = None


def set_up_balance(deed: Deed, balance: BalanceIn) -> int:
    """A new balance gets its plate; of one that is there name, step and load are said anew.

    What was weighed on it keeps what was written of it then. The plate.
    """
    name = balance.name.strip()
    if not name:
        raise Refused("A balance without a name; nothing was saved.",
                      "Say what it is called, such as fine balance.")
    facts = Balance(balance.step_g, most_g=balance.most_g)
    if not facts.can_carry(facts.minimum_g):
        raise Refused(
            f"A balance that reads to {balance.step_g} g and carries {balance.most_g} g could "
            "weigh nothing; nothing was saved.", "Read both on its own plate once more.")
    there = balance_with(deed.connection, numbered(Kind.BALANCE, balance.number).text)
    if there is None:
        (plate,) = make_plates(deed, Kind.BALANCE, [balance.number], name)
    else:
        plate = there.plate
        if there.name != name:
            deed.change(Plate, plate, words=name)
    said = json.loads(setting(deed.connection, FACTS))
    new = {"step": str(balance.step_g)} | (
        {} if balance.most_g is None else {"most": str(balance.most_g)})
    if said.get(str(balance.number)) != new:
        deed.add(Setting(key=FACTS, value=json.dumps({**said, str(balance.number): new})))
    deed.say(f"set up {name} {balance.number:02}: it reads to {balance.step_g} g")
    return plate
