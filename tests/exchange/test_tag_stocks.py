"""Stocks of the studio's own: kept in the book as settings, refused where they cannot be printed.
"""

import json
from dataclasses import replace

import pytest
from sqlalchemy import select

from app.documents.own_stocks import Layout
from app.documents.proof import read_back
from app.documents.stocks import stock
from app.documents.tag_choices import Choices
from app.exchange.tag_printing import OnStock, PrintOrder, print_for_pile
from app.exchange.tag_stocks import (
    describe_stock,
    lay_out,
    put_away_stock,
    tag_stock,
    tag_stocks,
    take_out_stock,
)
from app.problems import Refused
from app.records import Tag
from app.store.deed import By
from app.work.studio import choose
from tests.documents.samples import text_of
from tests.makers import Studio

KRAFT = replace(stock("tag-70x50"), name="", title="Kraft card 70 × 50")


def test_a_stock_of_its_own_is_kept_printed_on_and_put_away(studio: Studio) -> None:
    studio.do(choose, {"name": "Quernlow Dyeyard", "address": "Staithe Row 3, Quernlow"})
    name = studio.do(describe_stock, KRAFT)
    own = studio.book.ask(tag_stock, name)
    assert (own.title, own.cells) == ("Kraft card 70 × 50", 15)
    yarn = studio.wind(studio.cone(), 4)
    studio.dye(yarn)
    (pile,) = studio.finish(yarn, red=4)
    on = OnStock(name, used=(1, 2), as_studio=own)
    printed = print_for_pile(studio.book, By("LP", "tagging"), PrintOrder(pile, 4, on),
                             studio.random)
    assert [place.cell for place in printed.places] == [3, 4, 5, 6]
    assert len(read_back(printed.pdf, own.dpi)[0]) == 4
    studio.do(put_away_stock, name)
    stocks = studio.book.ask(tag_stocks)
    assert own not in stocks.in_use
    assert stocks.named(name) == own
    studio.do(take_out_stock, name)
    assert own in studio.book.ask(tag_stocks).in_use


def test_a_layout_is_printed_so_and_what_it_leaves_out_is_still_in_the_book(
    studio: Studio,
) -> None:
    studio.do(choose, {"name": "Quernlow Dyeyard", "address": "Staithe Row 3, Quernlow"})
    studio.do(lay_out, "swing-85x55", Layout("card", Choices(leaves_out=("care", "differ"))))
    swing = studio.book.ask(tag_stock, "swing-85x55")
    assert (swing.layout, swing.tag) == ("card", (85, 55))
    yarn = studio.wind(studio.cone(), 1)
    studio.dye(yarn)
    (pile,) = studio.finish(yarn, red=1)
    on = OnStock(swing.name, as_studio=swing)
    printed = print_for_pile(studio.book, By("LP", "tagging"), PrintOrder(pile, 1, on),
                             studio.random)
    (said,) = text_of(printed.pdf)
    assert "Hand wash" not in said
    assert printed.left_out == ()
    kept = studio.book.ask(lambda book: book.execute(select(Tag.words)).scalar())
    assert "Hand wash" in json.loads(kept)["care"]


@pytest.mark.parametrize(("measures", "why"), [
    ({"tag": (40.0, 22.0), "step": (40.0, 22.0)}, "tags of 40 × 22 mm have no room"),
    ({"title": "Kraft " * 11}, "A name of 65 letters fits no list"),
    ({"title": KRAFT.title.upper()}, "already"),
    ({"title": " "}, "no name"),
])
def test_what_cannot_be_a_stock_is_refused_and_nothing_is_kept(
    studio: Studio, measures: dict[str, object], why: str
) -> None:
    studio.do(describe_stock, KRAFT)
    before = studio.book.ask(tag_stocks)
    with pytest.raises(Refused, match=why):
        studio.do(describe_stock, replace(KRAFT, **{"title": "Another", **measures}))
    with pytest.raises(Refused, match="no room"):
        studio.do(lay_out, "roll-62x40", Layout("band"))
    assert studio.book.ask(tag_stocks) == before


def test_the_last_stock_is_not_put_away(studio: Studio) -> None:
    first, *others = studio.book.ask(tag_stocks).in_use
    for one in others:
        studio.do(put_away_stock, one.name)
    with pytest.raises(Refused, match="last stock"):
        studio.do(put_away_stock, first.name)
