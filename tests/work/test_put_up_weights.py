"""What a put-up weighs is judged at the agreed moisture; what is light is sold as what it holds."""

import json

import pytest

from app.lookups.put_up_weights import reference_skeins, to_weigh
from app.lookups.studio import setting
from app.problems import NotFound, Refused
from app.work.put_up_weights import read_humidity, sell_as, weigh_put_up, weigh_reference
from tests.makers import Studio


def tagged(studio: Studio, count: int = 2) -> list[int]:
    return studio.tagged(studio.cone(), count)[1]


def rows(studio: Studio) -> list[tuple[object, ...]]:
    return studio.book.ask(lambda c: [tuple(row) for row in c.exec_driver_sql(
        "SELECT yarn, mg, regain_permille, regain_from, sell_as_mg FROM put_up_weight "
        "WHERE struck IS NULL ORDER BY id")])


def test_a_weight_is_kept_with_the_regain_of_its_day(studio: Studio) -> None:
    one, two = tagged(studio)
    done = studio.done(weigh_put_up, one, 97_200)
    assert done.said == "weighed 97.2 g: the room's moisture not known"
    studio.do(weigh_reference, "wool", 58_500, 50_000)
    assert studio.done(weigh_put_up, one, 97_200).said == "weighed 97.2 g: 96.4 g at 16 %"
    studio.do(read_humidity, 650)
    studio.do(weigh_put_up, two, 101_000)
    assert rows(studio) == [(one, 97_200, None, "", None),
                            (one, 97_200, 170, "reference skein", None),
                            (two, 101_000, 170, "reference skein", None)]
    studio.check()


def test_the_dry_mass_of_the_reference_skein_is_kept(studio: Studio) -> None:
    studio.do(weigh_reference, "wool", 55_000, 50_000)
    studio.do(weigh_reference, "cotton", 43_000, 40_000)
    assert studio.book.ask(reference_skeins) == {"wool": 50_000, "cotton": 40_000}
    assert json.loads(studio.book.ask(setting, "reference skeins")) == {
        "wool": 50_000, "cotton": 40_000}


@pytest.mark.parametrize(("reading", "dry"), [(49_000, 50_000), (55_000, 0), (80_000, 50_000)])
def test_a_reference_skein_that_cannot_be_is_refused(
    studio: Studio, reading: int, dry: int
) -> None:
    with pytest.raises(Refused):
        studio.do(weigh_reference, "wool", reading, dry)
    with pytest.raises(Refused):
        studio.do(read_humidity, 1001)


def test_what_is_too_light_is_noted_and_never_where_the_weather_is_not_known(
    studio: Studio,
) -> None:
    (one,) = tagged(studio, 1)
    assert studio.done(weigh_put_up, one, 90_000).findings == ()
    studio.do(read_humidity, 650)
    (found,) = studio.done(weigh_put_up, one, 95_000).findings
    assert found.startswith("95.0 g is too light for 100 g: few of a lot may be so. Sell it as 95")
    assert "none may be" in studio.done(weigh_put_up, one, 90_000).findings[0]
    with pytest.raises(Refused):
        studio.do(weigh_put_up, one, 0)


def test_a_light_one_is_sold_as_what_it_holds_and_is_no_full_weight_any_more(
    studio: Studio,
) -> None:
    (skein,) = tagged(studio, 1)
    studio.do(weigh_reference, "wool", 58_500, 50_000)
    weight = studio.do(weigh_put_up, skein, 97_200)
    with pytest.raises(Refused, match=r"It holds 96\.4 g"):
        studio.do(sell_as, weight, skein, 97)
    with pytest.raises(Refused, match="not less than its tag says"):
        studio.do(sell_as, weight, skein, 100)
    studio.do(sell_as, weight, skein, 96)
    assert rows(studio) == [(skein, 97_200, 170, "reference skein", 96_000)]
    now = studio.book.ask(to_weigh, skein, studio.clock.now)
    assert (now.lot.batch, now.lot.sold_as_less) == (None, 1)
    studio.undo()
    assert rows(studio) == [(skein, 97_200, 170, "reference skein", None)]
    with pytest.raises(NotFound):
        studio.do(sell_as, 99, skein, 96)


def test_one_of_a_pile_is_told_by_its_tag_and_not_accused_without_the_weather(
    studio: Studio,
) -> None:
    group = studio.wind(studio.cone(), 2)
    studio.dye(group)
    (pile,) = studio.finish(group, red=2)
    (stranger,) = tagged(studio, 1)
    unknown = studio.do(weigh_put_up, pile, 97_200)
    studio.do(read_humidity, 700)
    weight = studio.do(weigh_put_up, pile, 97_200)
    (skein,) = studio.tag(pile, 1)
    with pytest.raises(Refused, match="Another skein was weighed"):
        studio.do(sell_as, weight, stranger, 96)
    with pytest.raises(Refused, match="air is dry is not known"):
        studio.do(sell_as, unknown, skein, 96)
    studio.do(sell_as, weight, skein, 96)
    assert rows(studio)[-1] == (skein, 97_200, 172, "humidity", 96_000)
