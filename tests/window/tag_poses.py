"""Tags and printers at the desk: what is done there before a picture is taken."""

from typing import Any

from app.window.benches.desk.tags_page import MARKET, PRINTERS, TagsAndPrinters
from app.window.posing import quiet


def _page(it: Any) -> TagsAndPrinters:
    it.press("F3")
    it.window.floor.bench().turn_to("Tags")
    quiet(it.window)
    return it.window.floor.bench().back.tags


def _describe(it: Any) -> None:
    _page(it).stocks.page.list.like_key.click()
    quiet(it.window)


def _see(it: Any) -> None:
    _page(it).stocks.show_page()
    quiet(it.window)


def _calibrate(it: Any) -> None:
    page = _page(it)
    page.page.turn_to(PRINTERS)
    page.calibrating.page.printers.named.emit("laser in the office")
    grid = page.calibrating.page.grid
    grid.printers["laser in the office"].click()
    grid.across.line.setText("-2.1")
    grid.down.line.setText("-1.4")
    grid.keep_key.click()
    quiet(it.window)


def _market(it: Any) -> None:
    page = _page(it)
    page.page.turn_to(MARKET)
    page.market.choose("EU")
    page.market.speak("de")
    quiet(it.window)


TAGS_AND_PRINTERS = {"desk-tags": _page, "desk-stock": _describe, "desk-true-size": _see,
                     "desk-printer": _calibrate, "desk-market": _market}
