"""Stocks of tags in words: what they are, and how their tags are laid out."""

from app.documents.stocks import LayoutName, Stock
from app.window.parts.millimetres import pair_words

LAYOUT_WORDS: dict[LayoutName, str] = {
    "swing": "tag with a hole",
    "small": "small label",
    "card": "card",
    "roll": "label on a roll",
    "band": "band round a ball",
}
LEFT_OUT_WORDS = {
    "care": "Care",
    "origin": "Origin",
    "ounces": "Ounces and yards",
    "knit": "Needles and gauge",
    "differ": "Lots differ",
}


def stock_row(one: Stock, *, away: bool) -> tuple[str, str]:
    """Its title, and how many tags are on a page."""
    return f"{one.title}{', put away' if away else ''}", str(one.cells)


def page_words(one: Stock) -> str:
    """'15 tags of 70 × 50 mm on a page of 210 × 297 mm, at 300 dots an inch.'"""
    tags = "1 tag" if one.cells == 1 else f"{one.cells} tags"
    return (f"{tags} of {pair_words(one.tag)} mm on a page of {pair_words(one.page)} mm, "
            f"at {one.dpi} dots an inch.")
