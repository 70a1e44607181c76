"""What lies on the tag table."""

from app.lookups.tag_table import on_table, piles_to_tag
from app.work.bases import describe_base
from app.work.holding import hold
from tests.makers import tarnfield


def test_the_oldest_pile_comes_first_with_its_ties(studio):
    cone = studio.cone()
    red, yellow = studio.wind(cone, 3, "red"), studio.wind(cone, 2, "yellow")
    studio.dye(red, yellow)
    studio.finish(red, red=3)
    studio.finish(yellow, yellow=2)
    assert [(pile.facts.counted, pile.ties) for pile in studio.book.ask(piles_to_tag)] == [
        (3, "red"), (2, "yellow")]


def test_a_pile_in_hand_brings_its_tags_its_hold_and_its_trail(studio):
    cone = studio.cone()
    group = studio.wind(cone, 3)
    studio.dye(group)
    (pile,) = studio.finish(group, red=3)
    studio.print(pile, 2, cells=(5, 7))
    studio.do(hold, "cone", cone, "oil stain")
    table = studio.book.ask(on_table, pile)
    assert [tag.place for tag in table.tags] == [5, 7]
    assert table.used == {"swing tag": {1, 2, 3, 4, 5, 6}}
    assert [one.why for one in table.holds] == ["oil stain"]
    assert list(table.texts.values()) == ["100 % wool"]
    assert "dye lot" in [stop.kind for stop in table.stops]


def test_two_compositions_in_one_pile_are_both_told(studio):
    one = studio.cone()
    studio.do(describe_base, tarnfield(fibre="90 % wool, 10 % polyamide"))
    pool = studio.mix(studio.wind(one, 3), studio.wind(studio.cone(), 2))
    studio.dye(pool)
    (pile,) = studio.finish(pool, red=5)
    assert sorted(studio.book.ask(on_table, pile).texts.values()) == [
        "100 % wool", "90 % wool, 10 % polyamide"]


def test_a_pile_whose_lot_is_not_known_has_no_trail(studio):
    group = studio.wind(studio.cone(), 3)
    (pile,) = studio.finish(group, red=3)
    assert studio.book.ask(on_table, pile).stops == ()
