"""The owner's desk: holds that stand and one that was lifted, finds, and a tag on a wrong skein."""

import pytest
from sqlalchemy import select

from app.calculations.codes import Kind, numbered
from app.demo.desk import missing_of
from app.lookups.holds import live_holds
from app.lookups.present import NOT_MATCHED, leaves
from app.lookups.things import by_code
from app.lookups.walks import below
from app.records import Hold, Part, TagOn, Yarn
from app.store.book import Book


def test_two_cones_are_held_and_a_lot_is_free_again(demo_book: Book) -> None:
    assert [hold.on for hold in demo_book.ask(live_holds)] == [
        f"cone {numbered(Kind.CONE, number).grouped}" for number in (114, 122)]
    with demo_book.reading() as connection:
        assert len(connection.execute(select(Hold.id)).all()) == 3


def test_one_find_was_the_missing_one_and_one_stands_beside_all_totals(demo_book: Book) -> None:
    with demo_book.reading() as connection:
        finds = connection.execute(select(Yarn.id).where(Yarn.kind == "find")).scalars().all()
        states = [leaf.state for leaf in leaves(connection, finds)]
        worn = connection.execute(select(TagOn.id).where(TagOn.yarn.in_(finds))).all()
        parents = connection.execute(select(Part.id).where(Part.child.in_(finds))).all()
    assert sorted(states) == [NOT_MATCHED, "sent, buyer known", "table"]
    assert len(worn) == 1
    assert len(parents) == 2


def test_the_skein_with_anothers_tag_is_in_the_lot_it_is_of(demo_book: Book) -> None:
    found = demo_book.ask(by_code, "2616HX8")
    assert found is not None
    with demo_book.reading() as connection:
        skeins = [leaf for leaf in leaves(connection, below(connection, "lot", found.id))
                  if leaf.kind == "skein"]
    assert len(skeins) == 7


def test_where_nothing_is_missing_no_row_is_short(demo_book: Book) -> None:
    found = demo_book.ask(by_code, "2615R6F")
    assert found is not None
    with pytest.raises(StopIteration):
        demo_book.ask(missing_of, found.id)
