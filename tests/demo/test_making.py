"""Door, reel and pots: cones give what they hold, joins are joins, companions have their codes."""

from sqlalchemy import func, select

from app.calculations.codes import Kind, numbered
from app.calculations.units import grams
from app.lookups.certainty import links
from app.lookups.cones import cone_facts, cones_on_hand
from app.lookups.pots import pots_now, relatives
from app.lookups.things import by_code
from app.lookups.thread import thread
from app.records import Draw, DyeLot, Waste, Yarn
from app.store.book import Book


def id_of(book: Book, code: str) -> int:
    found = book.ask(by_code, code)
    assert found is not None
    return found.id


def test_the_oily_cone_has_left_what_the_card_says(demo_book: Book) -> None:
    facts = demo_book.ask(cone_facts, id_of(demo_book, "C0114F"))
    assert grams(facts.net_mg) == 1_516
    assert 317_000 <= facts.left_mm < 318_000
    assert facts.drawn_mm == 14 * 412_500


def test_no_cone_gave_more_than_it_held_and_every_end_was_weighed(demo_book: Book) -> None:
    with demo_book.reading() as connection:
        cones = connection.execute(select(Draw.cone).distinct()).scalars().all()
        wasted = set(connection.execute(select(Waste.cone).where(
            Waste.cone.is_not(None))).scalars())
    facts = [demo_book.ask(cone_facts, cone) for cone in cones]
    assert not any(one.overdrawn for one in facts)
    assert {one.id for one in facts if one.ended} == wasted
    for one in facts:
        if one.ended:
            unexplained = one.fibre_mg - one.drawn_mg - one.waste_mg
            assert abs(unexplained) * 100 <= one.fibre_mg
    assert len(demo_book.ask(cones_on_hand)) == 100 - len(wasted)


def test_one_skein_spans_the_join_of_two_cones_sixty_two_to_thirty_eight(
    demo_book: Book
) -> None:
    first, second = (
        id_of(demo_book, numbered(Kind.CONE, number).text) for number in (121, 122))
    with demo_book.reading() as connection:
        joined = connection.execute(
            select(Draw.yarn).where(Draw.cone.in_([first, second])).group_by(Draw.yarn)
            .having(func.count(Draw.cone) == 2)).scalars().one()
        row = connection.execute(
            select(Yarn.count.label("members"), Yarn.tie).where(Yarn.id == joined)).one()
        shares = {link.thing: round(100 * link.share) for link in
                  links(thread(connection, [joined]), joined, "cone")}
    assert row.members == 1
    assert " and " in row.tie
    assert shares == {first: 62, second: 38}


def test_companions_share_a_bath_and_sisters_a_day_and_their_fills(demo_book: Book) -> None:
    found = demo_book.ask(relatives, id_of(demo_book, "2614K14"))
    assert found.companions == ("26·14·H7W",)
    assert (found.sisters, found.fills_not_known) == (("26·14·M32",), ())


def test_the_night_with_the_wrong_clock_has_its_code_and_its_place(demo_book: Book) -> None:
    with demo_book.reading() as connection:
        pending = connection.execute(select(DyeLot.id).where(DyeLot.code.is_(None))).all()
    assert pending == []


def test_pots_are_full_this_morning_and_none_holds_two_baths(demo_book: Book) -> None:
    full = demo_book.ask(pots_now)
    pots = [one.pot for one in full if one.pot]
    assert pots
    assert len(pots) == len(set(pots))
