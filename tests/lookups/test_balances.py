"""Two balances in a studio: each with its own least, by the studio's rule."""

from decimal import Decimal

import pytest

from app.calculations.balances import Balance, Rule
from app.calculations.codes import Kind, numbered
from app.lookups.balances import (
    RULE,
    balance_used,
    balance_with,
    balances_now,
    least_words,
)
from app.work.balances import BalanceIn, set_up_balance
from app.work.bundling import make_plates
from app.work.studio import choose
from tests.makers import Studio

D = Decimal
KITCHEN = BalanceIn(1, "kitchen balance", D("0.1"), D(3000))
FINE = BalanceIn(3, "fine balance", D("0.01"), D(600))


@pytest.fixture
def two(studio: Studio) -> Studio:
    for one in (KITCHEN, FINE):
        studio.do(set_up_balance, one)
    return studio


def test_each_balance_has_its_own_least(two: Studio) -> None:
    assert [(one.title, one.facts.minimum_g, one.facts.most_g)
            for one in two.book.ask(balances_now)] == [
        ("kitchen balance 01", 5, 3000), ("fine balance 03", D("0.5"), 600)]


def test_the_studios_rule_counts_for_all_of_them(two: Studio) -> None:
    two.do(choose, {RULE: Rule.USP_41.value})
    assert [one.facts.minimum_g for one in two.book.ask(balances_now)] == [82, D("8.2")]
    fine = two.book.ask(balance_with, numbered(Kind.BALANCE, 3).text)
    assert fine is not None
    assert least_words(fine.facts, fine) == (
        "8.2 g, the least on fine balance 03, which reads to 0.01 g (USP 41: twice its "
        "repeatability is 0.10 % of it)")


def test_the_one_in_use_counts_and_while_nobody_said_which_the_coarsest(two: Studio) -> None:
    facts, on, others = two.book.ask(balance_used, 3)
    assert on is not None
    assert (facts.step_g, on.number, [one.number for one in others]) == (D("0.01"), 3, [1])
    facts, on, others = two.book.ask(balance_used, 0)
    assert (facts.step_g, on, len(others)) == (D("0.1"), None, 2)


def test_the_only_balance_need_not_be_said_and_without_one_the_studios_step_counts(
    studio: Studio
) -> None:
    assert studio.book.ask(balance_used, 0) == (Balance(D("0.01")), None, ())
    studio.do(set_up_balance, FINE)
    _, on, others = studio.book.ask(balance_used, 0)
    assert on is not None
    assert (on.number, others) == (3, ())


def test_a_plate_without_facts_reads_as_the_studio_said(studio: Studio) -> None:
    studio.do(make_plates, Kind.BALANCE, [7])
    (one,) = studio.book.ask(balances_now)
    assert (one.title, one.facts) == ("balance 07", Balance(D("0.01")))
    assert studio.book.ask(balance_with, numbered(Kind.BALANCE, 8).text) is None
