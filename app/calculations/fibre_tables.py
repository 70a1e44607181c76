"""The shipped tables about fibres: agreed allowances, and regain by the room's humidity."""

import csv
from dataclasses import dataclass
from decimal import Decimal
from functools import cache

from app.paths import resource
from app.problems import NotFound


@dataclass(frozen=True, slots=True)
class Allowance:
    """The moisture one rule book agrees on for a fibre, as a fraction of its dry mass."""

    rules: str
    fibre: str
    form: str
    regain: Decimal
    source: str


@cache
def agreed_allowances() -> tuple[Allowance, ...]:
    """Every agreed allowance that is shipped."""
    return tuple(
        Allowance(
            row["rules"],
            row["fibre"],
            row["form"],
            Decimal(row["allowance_percent"]) / 100,
            row["source"],
        )
        for row in _rows("fibres/agreed_allowances.csv")
    )


def allowance(rules: str, fibre: str, form: str = "") -> Allowance:
    """What the rule book, `EU` or `US`, agrees on for a fibre in this form."""
    for agreed in agreed_allowances():
        if (agreed.rules, agreed.fibre, agreed.form) == (rules, fibre, form):
            return agreed
    raise NotFound(
        f"The {rules} table has no allowance for {' '.join(filter(None, (form, fibre)))}.",
        "Choose the fibre by the name and form in that table.",
    )


@cache
def regain_by_humidity(fibre: str) -> tuple[tuple[Decimal, Decimal], ...]:
    """The usual regain of a fibre by the room's relative humidity, both as fractions, rising."""
    table = tuple(
        (Decimal(row["humidity_percent"]) / 100, Decimal(row["regain_percent"]) / 100)
        for row in _rows("fibres/regain_by_humidity.csv")
        if row["fibre"] == fibre
    )
    if not table:
        raise NotFound(
            f"There is no humidity table for {fibre}.",
            "Hang a reference skein of that fibre by the balance.",
        )
    return table


def _rows(name: str) -> list[dict[str, str]]:
    with resource(name).open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))
