"""A kit bag's label out of the book: each lot in it, with the fibre as the skeins' tags say it."""

import json
from collections import Counter

from sqlalchemy import Connection, select

from app.documents.kit_label import KitLabel, KitLine, kit_label_pdf
from app.documents.stocks import Correction, Stock
from app.lookups.kit_patterns import pattern_now
from app.lookups.kits import InBag, KitNow, kit_now
from app.lookups.studio import setting
from app.records import Tag, TagOn
from app.store.dialect import among, listed

_WORDS = (
    select(TagOn.yarn, Tag.words).join(Tag, Tag.id == TagOn.tag)
    .where(among(TagOn.yarn, "ids"), TagOn.until.is_(None), TagOn.struck.is_(None))
)


def kit_label_sheet(
    connection: Connection, kit: int, stock: Stock, first_cell: int = 1,
    correction: Correction = (0.0, 0.0),
) -> bytes:
    """The label as a PDF on one cell of this stock, moved by its printer's correction, its code
    read back.

    Raises Refused where nothing is in the bag, or not all of its lots fit the stock.
    """
    return kit_label_pdf(kit_label_of(connection, kit), stock, first_cell=first_cell,
                         correction=correction)


def kit_label_of(connection: Connection, kit: int) -> KitLabel:
    """What stands on the label; a place has its letter where the bag's pattern stands still."""
    bag = kit_now(connection, kit)
    letters = _letters(connection, bag)
    fibres = {row.yarn: json.loads(row.words or "{}").get("fibre", "") for row in
              connection.execute(_WORDS, {"ids": listed(one.yarn for one in bag.skeins)})}
    counted = Counter((letters.get((one.colourway, one.base), ""), one.colourway, one.base,
                       one.lot, fibres.get(one.yarn, "")) for one in bag.skeins)
    return KitLabel(
        code=bag.code, name=bag.name, studio=setting(connection, "name"),
        address=setting(connection, "address"),
        lines=tuple(KitLine(count=count, colourway=colourway, base=base, lot=lot, fibre=fibre,
                            place=letter)
                    for (letter, colourway, base, lot, fibre), count in sorted(counted.items())))


def _letters(connection: Connection, bag: KitNow) -> dict[tuple[str, str], str]:
    """{(colourway, base): the letter of its place}; what stands in has the letter it stands in for.
    """
    pattern = None if bag.pattern is None else pattern_now(connection, bag.pattern)
    if pattern is None:
        return {}
    own = {(place.name, place.base_name): place.letter for place in pattern.places}
    there = {_yarn(one) for one in bag.skeins}
    free = [place for place in pattern.places if (place.name, place.base_name) not in there]
    for place in free:
        for one in place.stand_ins:
            own.setdefault((one.name, place.base_name), place.letter)
    return own


def _yarn(one: InBag) -> tuple[str, str]:
    return one.colourway, one.base
