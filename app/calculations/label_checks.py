"""A label held against an assay, and the percents it states reckoned from dry masses."""

from collections.abc import Mapping
from decimal import Decimal

from app.calculations.fibre_tables import allowance
from app.calculations.markets import Market
from app.calculations.moisture import composition, whole_percents
from app.problems import NotFound

MOST_STRAY, MOST_STRAY_CARDED = Decimal(2), Decimal(5)  # Reg. (EU) 1007/2011 Art. 7(2)
_TABLE_NAMES = {
    "EU": {"wool": ("wool and animal hair", "carded"), "linen": ("flax or linen", ""),
           "hemp": ("true hemp", ""), "cotton": ("cotton", "normal"),
           "polyamide": ("polyamide or nylon", "staple"),
           "ramie": ("ramie", "bleached (degummed)")},
    "US": {"wool": ("wool", ""), "linen": ("flax (linen)", ""), "ramie": ("ramie", "raw"),
           "cotton": ("cotton", "natural yarn"), "polyamide": ("nylon (polyamide)", ""),
           "viscose": ("rayon (regenerated)", ""), "elastane": ("spandex", "")},
}
_HAIR = ("virgin wool", "alpaca", "llama", "camel", "cashmere", "mohair", "vicuna", "angora", "yak")


def labelled_percents(
    dry_g: Mapping[str, Decimal], market: Market, forms: Mapping[str, str] | None = None
) -> dict[str, int]:
    """The whole percents a label states: each dry mass with its agreed allowance.

    `dry_g` by fibre in grams; `forms` names the form where the table has several ('combed',
    'filament'). Unsaid, wool counts as carded (Annex IX footnote 1, from memory) and polyamide as
    staple. Raises NotFound where no table is known for the market.
    """
    if not market.allowances:
        raise NotFound(f"No table of agreed allowances is known here for {market.title}.",
                       "Take the percents from the spinner's paper.")
    said = forms or {}
    regains = {fibre: _regain(market.allowances, fibre, said.get(fibre)) for fibre in dry_g}
    return whole_percents(composition(dry_g, regains))


def outside_tolerance(
    stated: Mapping[str, Decimal], found: Mapping[str, Decimal], market: Market
) -> tuple[str, ...]:
    """The fibres whose percent in an assay is further from the label than the market allows.

    Where the United States are told “100 %”, nothing is allowed (a guide to 16 CFR 303.43, from
    memory).
    """
    pure = market.key == "US" and any(percent == 100 for percent in stated.values())
    allowed = Decimal(0) if pure else market.tolerance
    none = Decimal(0)
    return tuple(sorted(fibre for fibre in {*stated, *found}
                        if abs(stated.get(fibre, none) - found.get(fibre, none)) > allowed))


def may_be_ignored(percent: Decimal, *, on_purpose: bool, carded: bool = False) -> bool:
    """Whether so much of a foreign fibre leaves a yarn “100 %”.

    Reg. (EU) 1007/2011 Art. 7(2): 2 %, 5 % if carded, if unavoidable and never on purpose.
    """
    return not on_purpose and percent <= (MOST_STRAY_CARDED if carded else MOST_STRAY)


def is_cashmere(mean_um: Decimal, over_30_um: Decimal, spread: Decimal) -> bool:
    """Whether a certificate's figures allow the name: µm, percent by mass, percent of variation.

    16 CFR 300.19(a): 19 µm, 3 % over 30 µm and 24 % at most.
    """
    return mean_um <= 19 and over_30_um <= 3 and spread <= 24


def _regain(rules: str, fibre: str, form: str | None) -> Decimal:
    name = "wool" if fibre in _HAIR else fibre
    table, usual = _TABLE_NAMES[rules].get(name, (name, ""))
    return allowance(rules, table, usual if form is None else form).regain
