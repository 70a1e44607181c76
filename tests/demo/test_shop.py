"""The shop: orders are filled from one lot, put-bys, kits, the fair and returns are what they are.
"""

from collections import Counter

from sqlalchemy import select

from app.demo.opening import base_called, colourway_called
from app.demo.shop import customer_called, free_skeins, lots_there, open_lines, sent_with
from app.lookups.things import by_code
from app.records import CustomerOrder, Kit, Personal, Whereabouts
from app.store.book import Book

KIT_STOCK = {
    ("Ferry Ledger", "Tarnfield 4-ply"): 31, ("Moth at the Window", "Gossamer Lamb"): 22,
    ("Wet Thatch Tuesday", "Downholm Sock"): 9, ("Whey Blue", "Gossamer Lamb"): 17,
    ("Seventh Buoy", "Tarnfield 4-ply"): 14,
}


def orders_of(book: Book, name: str) -> int:
    customer = book.ask(customer_called, name)
    with book.reading() as connection:
        return len(connection.execute(select(CustomerOrder.id).where(
            CustomerOrder.customer == customer)).all())


def test_what_is_left_is_enough_for_nine_kits_and_the_grey_brown_is_the_shortest(
    demo_book: Book
) -> None:
    left = {}
    for colourway, base in KIT_STOCK:
        lots = demo_book.ask(lots_there, (), demo_book.ask(colourway_called, colourway),
                             demo_book.ask(base_called, base))
        left[colourway, base] = sum(len(demo_book.ask(free_skeins, lot)) for lot in lots)
    assert left == KIT_STOCK


def test_three_customers_have_two_to_five_orders(demo_book: Book) -> None:
    assert [orders_of(demo_book, name) for name in
            ("Isa Thornby", "Jonna Weald", "Peer Oxley-Moss")] == [5, 3, 2]


def test_nobody_is_known_twice(demo_book: Book) -> None:
    with demo_book.reading() as connection:
        names = connection.execute(select(Personal.value).where(
            Personal.field == "name", Personal.customer.is_not(None))).scalars().all()
    assert len(names) == len(set(names))


def test_six_kits_were_made_four_sold_one_opened_one_stands_there(demo_book: Book) -> None:
    with demo_book.reading() as connection:
        kits = connection.execute(select(Kit.id, Kit.name)).all()
        states = Counter(connection.execute(
            select(Whereabouts.state).where(Whereabouts.kit.is_not(None),
                                            Whereabouts.until.is_(None))).scalars())
    assert Counter(kit.name for kit in kits) == {
        "Stair-Rail Cowl": 4, "Lock-Gate Mitts": 1, "Weir Cap": 1}
    assert states == {"sent": 4 * 6, "kit": 2}


def test_the_order_that_has_three_of_each_pot_lost_the_tag_of_one(demo_book: Book) -> None:
    assert len(demo_book.ask(sent_with, "S-402")) == 6
    with demo_book.reading() as connection:
        find = connection.execute(select(Whereabouts.yarn).where(
            Whereabouts.state == "table", Whereabouts.until.is_(None))).scalars().all()
    assert len(find) == 4  # this one, two of S-407, and the find that nobody matched
    assert demo_book.ask(by_code, "2614K14") is not None


def test_all_that_was_ordered_left(demo_book: Book) -> None:
    assert demo_book.ask(open_lines) == []


def test_two_were_sold_at_the_fair_and_one_was_lost(demo_book: Book) -> None:
    with demo_book.reading() as connection:
        fair = connection.execute(select(CustomerOrder.id).where(
            CustomerOrder.channel == "fair")).all()
        lost = connection.execute(select(Whereabouts.id).where(
            Whereabouts.state == "lost", Whereabouts.until.is_(None))).all()
    assert (len(fair), len(lost)) == (2, 1)
