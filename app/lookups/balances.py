"""The balances of the studio: what each reads to, carries, and by the studio's rule weighs least.

The plate gives a balance its number and name; what it reads to and carries are choices of the
studio, so that an earlier one stays in the book.
"""

import json
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation

from sqlalchemy import Connection, select

from app.calculations.balances import LINE_TOLERANCE, Balance, Rule
from app.calculations.codes import Kind
from app.lookups.studio import setting
from app.records import Plate

FACTS, RULE, STEP = "balances", "weighing rule", "balance step"
"""The settings that hold them: by number, for the studio, and where no balance has a plate."""


@dataclass(frozen=True, slots=True)
class BalanceNow:
    """A balance with its plate."""

    plate: int
    code: str
    name: str
    facts: Balance

    @property
    def number(self) -> int:
        """The number on its plate."""
        return int(self.code[1:-1])

    @property
    def title(self) -> str:
        """'fine balance 03'."""
        return f"{self.name or 'balance'} {self.number:02}"


def rule_now(connection: Connection) -> Rule:
    """By which rule the studio says how little may be weighed."""
    return Rule(setting(connection, RULE))


def balances_now(connection: Connection) -> tuple[BalanceNow, ...]:
    """Every balance that has a plate, by number."""
    said = json.loads(setting(connection, FACTS))
    rule, step = rule_now(connection), setting(connection, STEP)
    rows = connection.execute(
        select(Plate.id, Plate.code, Plate.words)
        .where(Plate.kind == Kind.BALANCE.value, Plate.struck.is_(None)).order_by(Plate.code))
    return tuple(BalanceNow(row.id, row.code, row.words, Balance(
        _grams(said, row.code, "step") or Decimal(step), rule,
        most_g=_grams(said, row.code, "most"))) for row in rows)


def balance_with(connection: Connection, code: str) -> BalanceNow | None:
    """The balance whose plate has this code, or none."""
    return next((one for one in balances_now(connection) if one.code == code), None)


def balance_used(
    connection: Connection, number: int
) -> tuple[Balance, BalanceNow | None, tuple[BalanceNow, ...]]:
    """What is weighed by, the balance it is where that is known, and all the others.

    `number` is that on its plate, 0 where nobody said it. With one balance in the studio nobody
    need say which. Of several, while nobody said which, the coarsest counts: what it may weigh,
    each of them may.
    """
    known = balances_now(connection)
    on = known[0] if len(known) == 1 else next((one for one in known if one.number == number), None)
    if on is not None:
        return on.facts, on, tuple(one for one in known if one is not on)
    if known:
        return max((one.facts for one in known), key=lambda one: one.step_g), None, known
    return Balance(Decimal(setting(connection, STEP)), rule_now(connection)), None, ()


def least_words(balance: Balance, on: BalanceNow | None) -> str:
    """'0.5 g, the least on fine balance 03, which reads to 0.01 g (common practice: ...)'."""
    where = f"{on.title}, which" if on else "a balance that"
    if balance.rule is Rule.COMMON_PRACTICE:
        rule = f"common practice: one step is {LINE_TOLERANCE * 100:.0f} % of it"
    else:
        rule = "USP 41: twice its repeatability is 0.10 % of it"
    return (f"{balance.minimum_g.normalize():f} g, the least on {where} reads to "
            f"{balance.step_g.normalize():f} g ({rule})")


def _grams(said: object, code: str, what: str) -> Decimal | None:
    """What was chosen for the balance with this number; none where nothing readable was."""
    facts = said.get(str(int(code[1:-1]))) if isinstance(said, dict) else None
    try:
        grams = Decimal(str(facts[what])) if isinstance(facts, dict) else None
    except (KeyError, InvalidOperation):
        return None
    return grams if grams and grams > 0 else None
