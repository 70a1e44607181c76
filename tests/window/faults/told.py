"""What was told of faults: on the card that is open, and in the book."""

from sqlalchemy import select

from app.records import Sighting


def card_of(work):
    """The card that is open."""
    return work.bench.in_front.telling.card


def seen(work):
    """[(yarn, faulty, where it was seen)] as the book has them."""
    return work.studio.book.ask(lambda c: [tuple(row) for row in c.execute(
        select(Sighting.yarn, Sighting.faulty, Sighting.seen_at)
        .where(Sighting.struck.is_(None)).order_by(Sighting.id))])
