"""The room of the day, and the weights of a lot as a whole."""

from datetime import timedelta
from decimal import Decimal

import pytest

from app.lookups.put_up_weights import room_now, to_weigh, weights_of_lot
from app.lookups.skeins import named_by_tag
from app.lookups.story import story
from app.lookups.things import by_code
from app.problems import NotFound
from app.work.bases import describe_base
from app.work.put_up_weights import read_humidity, weigh_put_up, weigh_reference
from tests.calculations.test_put_up_weight import THIRTEEN
from tests.makers import Studio, tarnfield


def test_the_reference_skein_goes_before_the_humidity_and_both_are_of_their_day(
    studio: Studio,
) -> None:
    assert studio.book.ask(room_now, "wool", studio.clock.now).how == ""
    studio.do(read_humidity, 650)
    told = studio.book.ask(room_now, "wool", studio.clock.now)
    assert (told.permille, told.how, told.humidity_permille) == (160, "humidity", 650)
    assert told.regain is not None
    assert told.regain.estimated
    assert studio.book.ask(room_now, "wool and silk", studio.clock.now).regain is None
    studio.do(weigh_reference, "wool", 55_000, 50_000)
    studio.do(read_humidity, 800)
    told = studio.book.ask(room_now, "wool", studio.clock.now)
    assert (told.permille, told.how) == (100, "reference skein")
    later = studio.clock.now + timedelta(hours=20)
    assert studio.book.ask(room_now, "wool", later).how == ""


def test_thirteen_of_a_lot_pass_with_their_mean(studio: Studio) -> None:
    lot, skeins = studio.tagged(studio.cone(), 13)
    studio.do(weigh_put_up, skeins[0], 97_000)
    studio.do(weigh_reference, "wool", 58_000, 50_000)
    for skein, weight in zip(skeins, THIRTEEN.split(), strict=True):
        studio.do(weigh_put_up, skein, int(Decimal(weight) * 1000))
    weights = studio.book.ask(weights_of_lot, lot, "skein", 100_000, 160)
    assert weights.batch is not None
    assert weights.batch.count == 13
    assert weights.batch.mean_g.quantize(Decimal("0.01")) == Decimal("100.09")
    assert (weights.batch.below_t1, weights.batch.passes) == (0, True)
    assert weights.weather_not_known == 0


def test_the_story_of_a_skein_tells_its_weight(studio: Studio) -> None:
    _, (skein, other) = studio.tagged(studio.cone(), 2)
    studio.do(weigh_put_up, skein, 97_200)
    for row, told in ((skein, 1), (other, 0)):
        mark = studio.book.ask(named_by_tag, [row])[row].mark
        thing = studio.book.ask(by_code, mark or "")
        assert thing is not None
        entries = studio.book.ask(story, thing, studio.clock.now)
        assert sum(entry.said.startswith("weighed 97.2 g") for entry in entries) == told


def test_what_is_not_described_is_weighed_and_not_judged(studio: Studio) -> None:
    with pytest.raises(NotFound):
        studio.book.ask(to_weigh, 999, studio.clock.now)
    studio.do(read_humidity, 650)
    studio.do(describe_base, tarnfield(put_ups=()))
    _, (skein,) = studio.tagged(studio.cone(), 1)
    now = studio.book.ask(to_weigh, skein, studio.clock.now)
    assert (now.nominal_mg, now.checked(90_000), now.lot.batch) == (None, None, None)
