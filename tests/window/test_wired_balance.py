"""A balance on a real pair of terminals, listened to beside the screen's thread."""

from decimal import Decimal

import pytest

from app.scanning.balance_ear import Sends, Wiring
from app.window.wired_balance import WiredBalance, ports_here
from tests.window.a_wire import AWire


@pytest.fixture
def wire():
    made = AWire()
    yield made
    made.unplug()


@pytest.fixture
def balance(qtbot, settings):
    made = WiredBalance(settings.balances)
    yield made
    made.close()


def test_nothing_is_opened_where_no_port_was_named(balance):
    balance.listen()
    assert not balance.is_wired
    assert balance.now.sentence == ""


def test_what_it_says_is_told_on_the_screens_thread(qtbot, balance, wire):
    with qtbot.waitSignal(balance.heard, check_params_cb=lambda heard: heard.weight is not None):
        balance.wire(Wiring(wire.port))
        qtbot.wait(150)
        wire.say("+  5.12 g\r\n")
    assert balance.now.weight.g == Decimal("5.12")


def test_it_is_asked_as_its_booklet_says(qtbot, balance, wire):
    balance.wire(Wiring(wire.port, sends=Sends.ASKED, asks_with="P\\r"))
    qtbot.waitUntil(lambda: b"P\r" in wire.asked())


def test_a_flood_is_told_at_a_calm_pace_and_ends_with_the_last(qtbot, balance, wire):
    told = []
    balance.heard.connect(told.append)
    balance.wire(Wiring(wire.port))
    qtbot.wait(150)
    for n in range(300):
        wire.say(f"{n / 100:.2f} g\r\n")
        qtbot.wait(2)
    qtbot.waitUntil(lambda: balance.now.weight and balance.now.weight.figures == "2.99")
    assert len(told) < 60


def test_unplugged_it_says_so_and_comes_back_by_itself(qtbot, balance, wire, settings):
    balance.wire(Wiring(wire.port))
    qtbot.wait(150)
    with qtbot.waitSignal(balance.heard, check_params_cb=lambda heard: bool(heard.sentence)):
        wire.unplug()
    assert "is unplugged. What was weighed is kept" in balance.now.sentence
    other = AWire()
    balance.wire(Wiring(other.port))
    qtbot.wait(150)
    with qtbot.waitSignal(balance.heard, check_params_cb=lambda heard: heard.weight is not None):
        other.say("1.00 g\r")
    other.unplug()


def test_a_port_that_is_not_there_is_a_sentence(qtbot, balance):
    with qtbot.waitSignal(balance.heard, check_params_cb=lambda heard: bool(heard.sentence)):
        balance.wire(Wiring("/dev/no-such-port"))
    assert "No balance answers at /dev/no-such-port" in balance.now.sentence
    assert all(isinstance(port, str) for port in ports_here())
