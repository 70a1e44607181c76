"""Prices, free counts and removal at the desk; the scanners of this computer."""

from datetime import timedelta

import pytest

from app.calculations.codes import Kind, numbered, shown
from app.calculations.shade_words import USUAL, Bands
from app.lookups.customers import customers_named
from app.lookups.prices import currency, money_words, price_list, price_of
from app.lookups.recent import entries
from app.lookups.shade_bands import shade_bands
from app.lookups.shelves import on_shelf
from app.lookups.skeins import now_of
from app.problems import BadInput
from app.window.scanners import read_sign
from app.work.bundling import make_plates
from app.work.moving import To, move
from app.work.offering import OfferIn, offered
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
    hanna = studio.do(know_customer, "Hanna Tallow", {"mail": "hanna@tallow.example"})
    _, skeins = studio.tagged(studio.cone(), 1)
    studio.do(sell, skeins, hanna)
    shop.customer.name.line.setFocus()
    desk.type("tall")
    desk.press("Enter")
    assert shop.customer.kept.text().split("\n") == [
        "Name: Hanna Tallow", "Mail: hanna@tallow.example",
        "Bought: 1 skein on 1 order; the last order of 6 Apr 2026."]
    desk.press("F10")
    folder = studio.book.path.with_name(f"{studio.book.path.stem} shop")
    files = [folder / f"customer-{hanna}.{form}" for form in ("json", "csv")]
    assert "hanna@tallow.example" in files[0].read_text("utf-8")
    assert shop.customer.told.text().startswith(
        f"customer-{hanna}.json and customer-{hanna}.csv are in {folder}. Give them")
    desk.click(shop.customer.remove_key)
    assert ("Name and mail will go, and pictures they sent. The yarn’s history stays: 1 order, "
            "1 skein sold. It cannot be brought back") in desk.words(shop)
    desk.quiet()
    assert shop.customer.why.field.line.hasFocus()
    desk.type("asked by letter")
    desk.press("Enter")
    assert studio.book.ask(customers_named, "tallow") == ()
    assert studio.book.ask(entries, 1)[0].reason == "asked by letter"
    assert shop.customer.told.text() == (
        f"Removed: name and mail of customer {hanna}, and files of their data beside the book. "
        "The yarn’s history stays: 1 order, 1 skein sold, as bought by nobody known.")
    assert "Tallow" not in desk.words(shop)
    assert not any(file.exists() for file in files)
    assert studio.book.ask(now_of, skeins[0]).state == "sent"
    studio.check()


def test_what_is_to_be_dyed_for_customers_stands_on_the_page(desk, shop):
    lot, _ = desk.studio.tagged(desk.studio.cone(), 1)
    desk.studio.do(offered, OfferIn(lot, 3, "redye", "taken"))
    desk.press("F3", "F11")
    ((since, what, wanted),) = shop.redyes._rows
    assert (since, what) == ("6 Apr 2026", "Sluice Keeper's Glove, Tarnfield 4-ply")
    assert wanted == f"3 to match {shown(desk.studio.code(lot))}"


def test_a_customer_is_found_by_an_orders_number_and_by_the_month(desk, shop):
    studio = desk.studio
    hanna, bo = (studio.do(know_customer, name) for name in ("Hanna Tallow", "Bo Ek"))
    _, skeins = studio.tagged(studio.cone(), 3)
    studio.do(sell, skeins[:1], hanna)
    studio.clock.now += timedelta(days=60)
    studio.do(sell, skeins[1:], bo)
    for words, names in (("t2", ["Bo Ek"]), ("april", ["Hanna Tallow"]), ("june 2026", ["Bo Ek"]),
                         ("april bo", []), ("march", [])):
        shop.customer.name.line.setText(words)
        desk.click(shop.customer.seek_key)
        desk.quiet()
        shown_name = shop.customer.kept.text().partition("\n")[0].removeprefix("Name: ")
        assert [name for name in [shown_name] if name] == names, words
    assert shop.customer.told.text() == "Nobody in the book is called so, or bought then."
    studio.do(know_customer, "Bo Lind")
    shop.customer.name.line.setText("bo")
    desk.click(shop.customer.seek_key)
    assert shop.customer.told.text() == "2 customers: tap who is meant."
    assert [row[0] for row in shop.customer.table._rows] == ["Bo Ek", "Bo Lind"]
    shop.customer.table.opened.emit(1)
    desk.quiet()
    assert shop.customer.kept.text() == "Name: Bo Lind\nBought nothing yet."


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


def test_how_far_shades_may_be_apart_is_the_studio_s_to_say(desk, shop):
    limits = shop.limits
    assert [field.line.text() for field in limits.fields.values()] == [
        "0.8", "0.6", "1.5", "1.5", "2.5", "4"]
    limits.fields["same"].line.setFocus()
    limits.fields["same"].line.selectAll()
    desk.type("2,7")
    desk.press("Enter")
    assert limits.wrong.text().startswith("The limits of the shade words do not rise")
    assert limits.fields["same"].line.text() == "2,7"
    assert desk.studio.book.ask(shade_bands) == USUAL
    limits.fields["same"].line.selectAll()
    desk.type("wide")
    desk.press("Enter")
    assert "is no number above 0 and up to 20" in limits.fields["same"].wrong.text()
    limits.fields["same"].line.selectAll()
    desk.type("0.7")
    desk.press("Enter")
    assert desk.said == "chose shade limits"
    assert desk.studio.book.ask(shade_bands) == Bands(same=0.7)
    assert not limits.wrong.isVisible()
    desk.press("F2")
    assert limits.fields["same"].line.text() == "0.8"
