"""A balance is set up from its own plate, and weighs nothing below its least."""

from decimal import Decimal

import pytest

from app.lookups.balances import balances_now
from app.problems import Refused
from app.work.balances import BalanceIn, set_up_balance
from app.work.weigh_lines import BELOW_LEAST, LineIn, begin_line, take_weight
from tests.dyehouse import Dyehouse
from tests.makers import Studio

D = Decimal
KITCHEN = BalanceIn(1, "kitchen balance", D("0.1"), D(3000))
FINE = BalanceIn(3, "fine balance", D("0.01"), D(600))


def test_saying_it_anew_keeps_the_plate_and_changes_what_it_reads_to(studio: Studio) -> None:
    plate = studio.do(set_up_balance, FINE)
    assert studio.do(set_up_balance, BalanceIn(3, "bench balance", D("0.001"))) == plate
    (one,) = studio.book.ask(balances_now)
    assert (one.plate, one.title, one.facts.step_g, one.facts.most_g) == (
        plate, "bench balance 03", D("0.001"), None)


def test_a_balance_without_a_name_or_that_could_weigh_nothing_is_refused(studio: Studio) -> None:
    with pytest.raises(Refused, match="without a name"):
        studio.do(set_up_balance, BalanceIn(1, " ", D("0.1")))
    with pytest.raises(Refused, match="could weigh nothing"):
        studio.do(set_up_balance, BalanceIn(1, "kitchen", D("0.1"), D(3)))
    assert studio.book.ask(balances_now) == ()


def test_too_little_for_this_balance_is_refused_before_it_is_weighed(studio: Studio) -> None:
    house = Dyehouse(studio)
    kitchen, fine = (studio.do(set_up_balance, one) for one in (KITCHEN, FINE))
    weighing = house.begin()
    line = LineIn(weighing, fill=house.fills[3], target_mg=602, balance=kitchen)
    with pytest.raises(Refused) as refused:
        studio.do(begin_line, line)
    assert refused.value.what == (
        "0.602 g is less than 5 g, the least on kitchen balance 01, which reads to 0.1 g (common "
        "practice: one step is 2 % of it); nothing was weighed.")
    assert refused.value.next_step == "On fine balance 03 it can be weighed."
    assert house.out(weighing).lines == ()
    on_fine = LineIn(weighing, fill=house.fills[3], target_mg=602, balance=fine)
    studio.do(take_weight, studio.do(begin_line, on_fine), 600, balance=fine)
    assert house.out(weighing).lines[0].balance == "fine balance"


def test_without_a_finer_one_the_way_out_is_a_stock(studio: Studio) -> None:
    house = Dyehouse(studio)
    fine = studio.do(set_up_balance, FINE)
    with pytest.raises(Refused) as refused:
        studio.do(begin_line, LineIn(house.begin(), fill=house.fills[3], target_mg=120,
                                     balance=fine))
    assert refused.value.next_step.startswith("Take 12.0 mL of a 1 % stock")


def test_what_was_weighed_below_the_least_is_kept_and_marked(studio: Studio) -> None:
    house = Dyehouse(studio)
    kitchen = studio.do(set_up_balance, KITCHEN)
    weighing = house.begin()
    line = studio.do(begin_line, LineIn(weighing, fill=house.fills[3], balance=kitchen))
    done = studio.done(take_weight, line, 600)
    assert any("is less than 5 g, the least on kitchen balance 01" in one for one in done.findings)
    assert [(one.mg, one.why) for one in house.out(weighing).lines] == [(600, BELOW_LEAST)]


def test_a_little_on_top_of_what_is_in_is_not_refused(studio: Studio) -> None:
    house = Dyehouse(studio)
    fine = studio.do(set_up_balance, FINE)
    weighing = house.begin()
    house.take(weighing, house.fills[1], 5000)
    assert studio.do(begin_line, LineIn(weighing, fill=house.fills[1], target_mg=117,
                                        balance=fine))
