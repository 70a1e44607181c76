"""A tag's words as the studio's market reads them."""

from datetime import datetime

from sqlalchemy import Connection, select

from app.calculations.label_words import LabelWords, TagFacts, label_words
from app.calculations.markets import market
from app.lookups.bleeding import bled
from app.lookups.studio import setting
from app.lookups.tagging import TagText
from app.records import DyeLot


def for_market(connection: Connection, text: TagText, at: datetime) -> LabelWords | None:
    """The words for the market and language the studio chose; none where it chose no market.

    Without a language, the market's first. Raises NotFound for a market that has no rules here.
    """
    key = setting(connection, "market")
    if not key:
        return None
    chosen = market(key)
    language = setting(connection, "language") or chosen.languages[0]
    return label_words(tag_facts(text, _bled(connection, text.lot, at)), chosen, language)


def tag_facts(text: TagText, bled: str = "") -> TagFacts:
    """What a market is asked about: the words as they were described, and how the lot bled."""
    return TagFacts(text.colourway, text.base, text.fibre, text.net, text.ounces, text.care,
                    text.origin, bled)


def _bled(connection: Connection, code: str, at: datetime) -> str:
    lot = connection.execute(select(DyeLot.id).where(
        DyeLot.code == code, DyeLot.struck.is_(None))).scalar()
    look = bled(connection, [lot], at).get(lot) if lot else None
    return look.words if look else ""
