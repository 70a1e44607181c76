"""A whole sheet of sample tags on a stock: what would come out of the printer."""

from dataclasses import replace
from itertools import islice, product

from app.calculations.codes import CHARACTERS
from app.calculations.label_words import label_words
from app.calculations.markets import market
from app.documents.stocks import Correction, Stock
from app.documents.tag_words import TagWords
from app.documents.tags import Tag, tag_sheets
from app.exchange.tag_printing import tag_words
from app.lookups.market_words import tag_facts
from app.lookups.sample_tags import SAMPLE_LOT, Samples
from app.lookups.tagging import TagText

_PLAIN = TagText(
    studio="Studio", address="Street and town", colourway="Colourway", base="Base",
    fibre="100 % wool", net="100 g   400 m", ounces="3.53 oz   437 yd",
    knit="3.25 mm needles, 28 stitches × 36 rows = 10 cm.", care="Hand wash 30 °C, dry flat.",
    origin="Spun in one place, dyed by hand in another.",
    differ="Lots differ: use one, or alternate two rows.", lot=SAMPLE_LOT,
)
"""Stands in where no base is described yet."""


def sample_words(samples: Samples, number: int) -> TagWords:
    """The words of the sample with this number, as the chosen market reads them.

    A studio without a name or address yet has plain ones in their place.
    """
    text = samples.texts[number % len(samples.texts)] if samples.texts else _PLAIN
    text = replace(text, studio=text.studio or _PLAIN.studio,
                   address=text.address or _PLAIN.address)
    if not samples.market:
        return tag_words(text, None)
    there = market(samples.market)
    language = samples.language or there.languages[0]
    return tag_words(text, label_words(tag_facts(text), there, language))


def sample_sheet(
    words: TagWords, stock: Stock, correction: Correction = (0.0, 0.0)
) -> bytes:
    """One page full of these tags, proven; refused like any other where they do not fit."""
    marks = ("".join(pair) for pair in product(CHARACTERS, repeat=2))
    tags = [Tag(words, mark) for mark in islice(marks, stock.cells)]
    return tag_sheets(tags, stock, correction=correction,
                      slug="Sample: not printed for any skein").pdf
