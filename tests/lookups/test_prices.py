"""What a put-up costs: the newest price that was not taken back."""

from app.lookups.prices import currency, money_words, price_list, price_of, prices_now
from app.work.selling import set_price
from app.work.studio import choose
from tests.makers import Studio


def test_the_newest_price_counts(studio: Studio) -> None:
    assert studio.book.ask(price_of, 1, "skein") is None
    assert studio.book.ask(prices_now) == {}
    studio.do(set_price, 1, "skein", 1850)
    studio.do(set_price, 1, "mini", 450)
    studio.do(set_price, 1, "skein", 1900)
    assert studio.book.ask(price_of, 1, "skein") == 1900
    assert studio.book.ask(prices_now) == {(1, "skein"): 1900, (1, "mini"): 450}
    studio.undo()
    assert studio.book.ask(price_of, 1, "skein") == 1850
    assert studio.book.ask(prices_now) == {(1, "skein"): 1850, (1, "mini"): 450}


def test_every_put_up_is_listed_with_its_price_and_since_when(studio: Studio) -> None:
    studio.do(set_price, 1, "mini", 450)
    skein, mini = studio.book.ask(price_list)
    assert (skein.name, skein.put_up, skein.price, skein.since) == (
        "Tarnfield 4-ply", "skein", None, None)
    assert (mini.put_up, mini.price, mini.since) == ("mini", 450, studio.clock.now)


def test_an_amount_is_written_with_the_studios_currency(studio: Studio) -> None:
    assert studio.book.ask(currency) == ""
    studio.do(choose, {"currency": "kr"})
    assert money_words(121850, studio.book.ask(currency)) == "1,218.50 kr"
    assert money_words(5) == "0.05"
