"""The stocks of the studio: ours and its own, described, laid out, put away and taken out."""

import json
from dataclasses import replace

from sqlalchemy import Connection

from app.documents.own_stocks import (
    Layout,
    StudioStocks,
    check_title,
    next_name,
    studio_stocks,
    told_layouts,
    told_stocks,
    written_layouts,
    written_stocks,
)
from app.documents.stocks import Stock
from app.documents.tag_words import TagWords
from app.documents.tags import Tag, try_on
from app.lookups.studio import setting
from app.problems import Refused
from app.store.deed import Deed
from app.work.studio import choose

OWN, LAYOUTS, AWAY = "own stocks", "tag layouts", "stocks put away"
_LEAST_WORDS = TagWords(
    studio="Studio", address="Town", colourway="Blue", base="Wool", fibre="100 % wool",
    net="100 g   400 m", lot="2619K44",
)
"""A tag that says as little as any may: what has no room for it is no stock."""


def tag_stocks(connection: Connection) -> StudioStocks:
    """Every stock, as the studio describes it and lays it out."""
    return studio_stocks(*(setting(connection, key) for key in (OWN, LAYOUTS, AWAY)))


def tag_stock(connection: Connection, name: str) -> Stock:
    """The stock of this name; raises NotFound."""
    return tag_stocks(connection).named(name)


def describe_stock(deed: Deed, stock: Stock) -> str:
    """A stock of the studio's own, under a name that none had before; the name.

    Refused where even a tag of the fewest words would be set under the least sizes.
    """
    known, own = tag_stocks(deed.connection), told_stocks(setting(deed.connection, OWN))
    check_title(stock.title, known.every)
    new = replace(stock, name=next_name(own), title=stock.title.strip())
    _check_room(new)
    choose(deed, {OWN: written_stocks([*own, new])})
    deed.say(f"described the stock {new.title}")
    return new.name


def lay_out(deed: Deed, name: str, layout: Layout) -> None:
    """From now on the tags of this stock are set so; sheets that were printed stay as they are."""
    stock = tag_stock(deed.connection, name)
    _check_room(replace(stock, layout=layout.layout, choices=layout.choices))
    layouts = told_layouts(setting(deed.connection, LAYOUTS))
    choose(deed, {LAYOUTS: written_layouts({**layouts, name: layout})})
    deed.say(f"laid out the tags of {stock.title}")


def put_away_stock(deed: Deed, name: str) -> None:
    """It is not offered any more; what was printed on it stays known."""
    stocks = tag_stocks(deed.connection)
    stock = stocks.named(name)
    if stocks.in_use == (stock,):
        raise Refused(f"{stock.title} is the last stock; nothing was changed.",
                      "Describe or take out another first.")
    _hide(deed, {one.name for one in stocks.away} | {name})
    deed.say(f"put {stock.title} away")


def take_out_stock(deed: Deed, name: str) -> None:
    """It is offered again."""
    stocks = tag_stocks(deed.connection)
    _hide(deed, {one.name for one in stocks.away} - {name})
    deed.say(f"took {stocks.named(name).title} out again")


def _check_room(stock: Stock) -> None:
    """Refuses what has no room even for a tag of the fewest words."""
    try:
        try_on(Tag(_LEAST_WORDS, "7M"), stock)
    except Refused as refused:
        across, down = stock.tag
        raise Refused(
            f"{stock.title}: tags of {across:g} × {down:g} mm have no room for the code and "
            "even the fewest words so; nothing was kept.",
            "Measure it again; else choose another layout, smaller sizes, or a smaller edge.",
        ) from refused


def _hide(deed: Deed, names: set[str]) -> None:
    choose(deed, {AWAY: json.dumps(sorted(names))})
