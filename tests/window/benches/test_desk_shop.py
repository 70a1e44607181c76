"""Prices, free counts and removal at the desk; the scanners of this computer."""

import pytest

from app.calculations.codes import Kind, numbered, shown
from app.lookups.customers import customers_named
from app.lookups.prices import currency, money_words, price_list, price_of
from app.lookups.recent import entries
from app.lookups.shelves import on_shelf
from app.problems import BadInput
from app.window.scanners import read_sign
from app.work.bundling import make_plates
from app.work.moving import To, move
from app.work.selling import know_customer, sell, set_price
from tests.window.benches.desk_hands import open_desk
from tests.window.hands import send


@pytest.fixture
def desk(qtbot, settings, studio):
    yield from open_desk(qtbot, settings, studio)


@pytest.fixture
def shop(desk):
    desk.press("F11")
    return desk.bench.back.shop.page


def test_a_put_up_gets_its_price(desk, shop):
    assert [list(row) for row in shop.prices.table._rows] == [
        ["Tarnfield 4-ply", "skein", "none yet", ""], ["Tarnfield 4-ply", "mini", "none yet", ""]]
    assert not shop.prices.set_key.isEnabled()
    shop.prices.table.opened.emit(0)
    desk.type("18.50")
    desk.press("Enter")
    assert desk.said == "priced skeins at 18.50"
    assert desk.studio.book.ask(price_of, 1, "skein") == 1850
    assert desk.studio.book.ask(price_of, 1, "mini") is None
    assert shop.prices.table._rows[0][2:] == ("18.50", "6 Apr 2026")
    shop.prices.table.opened.emit(0)
    assert shop.prices.price.line.text() == "18.50"
    shop.prices.price.line.setText("19,00")
    desk.press("Enter")
    assert desk.studio.book.ask(price_of, 1, "skein") == 1900
    desk.press("F2")
    assert desk.studio.book.ask(price_of, 1, "skein") == 1850
    assert shop.prices.table._rows[0][2] == "18.50"


@pytest.mark.parametrize("text", ["", "dear", "18.555", "-3"])
def test_what_is_no_price_is_told_and_kept(desk, shop, text):
    shop.prices.table.opened.emit(0)
    shop.prices.price.line.setText(text)
    desk.press("Enter")
    assert shop.prices.price.wrong.isVisible()
    assert shop.prices.price.line.text() == text
    assert desk.studio.book.ask(price_list)[0].price is None


def test_the_currency_is_the_studios_word(desk, shop):
    shop.prices.currency.line.setFocus()
    desk.type("kr")
    desk.press("Enter")
    assert desk.studio.book.ask(currency) == "kr"
    assert money_words(121850, "kr") == "1,218.50 kr"
    assert money_words(5) == "0.05"


def test_free_counts_are_written_beside_the_book(desk, shop):
    studio = desk.studio
    (shelf,) = studio.do(make_plates, Kind.SHELF, [3])
    lot, skeins = studio.tagged(studio.cone(), 3)
    studio.do(move, skeins, To("shelf", place=shelf))
    desk.press("F9")
    path = studio.book.path.with_name(f"{studio.book.path.stem} shop") / "free-counts.csv"
    assert shop.counts_at.text() == f"They are in {path}."
    assert f"{studio.code(lot)},Sluice Keeper's Glove,Tarnfield 4-ply,skein,3,388" in (
        path.read_text("utf-8-sig"))


def test_a_customer_is_removed_on_request_with_a_reason(desk, shop):
    studio = desk.studio
    hanna = studio.do(know_customer, "Hanna Tallow")
    _, skeins = studio.tagged(studio.cone(), 1)
    studio.do(sell, skeins, hanna)
    shop.removal.name.line.setFocus()
    desk.type("tall")
    desk.press("Enter")
    assert shop.removal.told.text() == "1 customer: tap who is meant."
    assert shop.removal.table._rows[0][:2] == ("Hanna Tallow", "1")
    shop.removal.table.opened.emit(0)
    assert "cannot be brought back" in desk.words(shop)
    desk.quiet()
    assert shop.removal.why.field.line.hasFocus()
    desk.type("asked by letter")
    desk.press("Enter")
    assert studio.book.ask(customers_named, "tallow") == ()
    assert studio.book.ask(entries, 1)[0].reason == "asked by letter"
    assert "Tallow" not in desk.words(shop)
    studio.check()


def test_nobody_of_that_name_is_told(desk, shop):
    shop.removal.name.line.setText("Nobody")
    desk.click(shop.removal.seek_key)
    assert shop.removal.told.text() == "Nobody in the book is called so."


def test_a_shelf_shows_what_lies_on_it(desk):
    studio = desk.studio
    (shelf,) = studio.do(make_plates, Kind.SHELF, [12])
    lot, skeins = studio.tagged(studio.cone(), 3)
    studio.do(move, skeins, To("shelf", place=shelf))
    desk.scan(numbered(Kind.SHELF, 12).text)
    page = desk.hand.page
    assert page.lies.isVisible()
    assert not page.where_from.isVisible()
    assert [list(row)[1:5] for row in page.lies.table._rows] == [
        [shown(studio.code(lot)), "Sluice Keeper's Glove", "Tarnfield 4-ply", "3 skeins"]]
    desk.scan(studio.book.ask(on_shelf, shelf)[0].marks[0])
    assert page.where_from.isVisible()
    assert not page.lies.isVisible()


def test_a_scanner_is_named_heard_and_forgotten(desk, qtbot, settings):
    desk.press("F7")
    card = desk.bench.back.plates.scanners
    card.sign.line.setText("#")
    card.name.line.setText("pots")
    desk.click(card.name_key)
    assert settings.scanners == {"#": "pots"}
    assert desk.note == "the scanner that begins with # is pots"
    with qtbot.waitSignal(desk.window.head.scan_line.scanned) as heard:
        send(desk.window, "#D0316\r", 60)  # as slow as fingers: only its sign tells
    assert heard.args == ["D0316"]
    desk.click(card.forget_keys["#"])
    assert settings.scanners == {}
    assert card.forget_keys == {}


@pytest.mark.parametrize("text", ["", "A", "7", "-", "##", "ab"])
def test_a_sign_that_codes_or_words_hold_is_refused(text):
    with pytest.raises(BadInput):
        read_sign(text)


def test_a_price_that_another_station_set_is_shown(desk, shop):
    desk.studio.do(set_price, 1, "mini", 450)
    desk.quiet()
    assert shop.prices.table._rows[1][2] == "4.50"
