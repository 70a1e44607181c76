"""A tag for a light skein: it says the grams it is sold as, and takes the place of its old one."""

import json
from collections.abc import Sequence
from dataclasses import replace
from decimal import ROUND_FLOOR, Decimal
from random import Random

from app.calculations.codes import shown
from app.calculations.label_phrases import in_figures
from app.calculations.units import metres, ounces, yards
from app.documents.tag_words import TagWords
from app.documents.tags import Tag
from app.exchange.tag_printing import OnStock, Printed, cells_of, sheets_on, used_after
from app.exchange.tag_reprinting import Replacement, replace_tags
from app.lookups.printed import worn_by
from app.lookups.put_up_weights import ToWeigh, to_weigh
from app.lookups.studio import setting
from app.lookups.tagging import marks_for
from app.problems import NotFound, Refused
from app.store.book import Book
from app.store.deed import By, Deed
from app.work.put_up_weights import sell_as


def print_sold_as(
    book: Book, by: By, weight: tuple[int, int, int], on: OnStock, random: Random
) -> Printed:
    """A new tag for the skein: `weight` is the row of its weight, the skein, and whole grams.

    The words are those of its old tag but for mass and length. Raises NotFound where it wears none.
    """
    row, skein, whole_g = weight
    worn = book.ask(worn_by, skein)
    if worn is None:
        raise NotFound("No tag hangs on this skein; nothing was printed.",
                       "Tie its tag on first, then sell it as what it holds.")
    now = book.ask(to_weigh, skein, book.clock())
    language = book.ask(setting, "language") if book.ask(setting, "market") else "en"
    words = _sold_as(TagWords(**json.loads(worn.words)), now, whole_g, language)
    (mark,) = book.ask(marks_for, worn.mark.rpartition("-")[0], 1, random)
    sheets = sheets_on(on, [Tag(words, mark.rpartition("-")[2])],
                       f"Sold as {whole_g} g, in place of {shown(worn.mark)} · by {by.person}")
    (cell,) = cells_of(sheets, on)
    kept = json.dumps(json.loads(worn.words) | {"net": words.net, "ounces": words.ounces},
                      ensure_ascii=False, sort_keys=True)
    done = book.do(tag_sold_as, (row, whole_g), Replacement(skein, mark, kept, (on.stock, cell)),
                   used_after(sheets, on), by=by)
    return Printed(sheets.pdf, tuple(done.answer), sheets.places, sheets.left_on_last,
                   sheets.left_out, done.said, done.seq)


def tag_sold_as(
    deed: Deed, weight: tuple[int, int], tag: Replacement, used: Sequence[int]
) -> list[int]:
    """What it is sold as, and the tag that says so, leave the tag table together; the new tag."""
    row, whole_g = weight
    sell_as(deed, row, tag.skein, whole_g)
    tags = replace_tags(deed, [tag], used)
    deed.say(f"sold as {whole_g} g: {shown(tag.mark)} takes the place of its tag")
    return tags


def _sold_as(words: TagWords, now: ToWeigh, whole_g: int, language: str) -> TagWords:
    """Mass and length in the same share: why it is light is not known, and a tag never promises
    more than is inside."""
    if now.nominal_mg is None or now.nominal_mm is None:
        raise Refused(f"What a {now.put_up} holds is not described; nothing was printed.",
                      "Describe this put-up of the base first.")
    share = Decimal(whole_g * 1000) / now.nominal_mg
    length = (metres(now.nominal_mm) * share).to_integral_value(ROUND_FLOOR)
    imperial = f"{ounces(Decimal(whole_g))} oz   {yards(length)} yd" if words.ounces else ""
    return replace(words, net=in_figures(f"{whole_g} g   {length:f} m", language),
                   ounces=in_figures(imperial, language))
