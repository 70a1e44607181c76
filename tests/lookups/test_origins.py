"""Where from, in the words that a person says at the counter."""

from fractions import Fraction

import pytest

from app.lookups.certainty import Link
from app.lookups.origins import certainty_words, members_of, origins
from app.lookups.things import Found, by_code
from app.work.opening_stock import OldLot, open_lot
from tests.deeds import into_load
from tests.makers import Studio


def link(**changes: object) -> Link:
    made = {"thing": 1, "word": "known", "least": 1, "most": 1, "expected": Fraction(1), "of": 1,
            "share": Fraction(1), "basis": "scanned"}
    return Link(**{**made, **changes})  # type: ignore[arg-type]


POOL = {"word": "one of a pool", "of": 12, "expected": Fraction(14, 3), "least": 3, "most": 7}


@pytest.mark.parametrize(("told", "words"), [
    (link(), "known"),
    (link(word="not known", thing=None), "not known"),
    (link(word="partly", share=Fraction(2552, 4125)), "partly: 62 % of the metres"),
    (link(**POOL), "one of a pool: 3 to 7 of 12, 4.67 expected"),
    (link(**{**POOL, "most": 3, "expected": Fraction(3)}),
     "one of a pool: 3 of 12, not known which"),
    (link(**{**POOL, "fits": False}), "one of a pool: 3 to 7 of 12: these counts do not fit"),
    (link(**{**POOL, "share": Fraction(9, 10)}),
     "one of a pool: 3 to 7 of 12, 4.67 expected, 90 % of the metres"),
])
def test_how_sure_is_said_in_words_with_the_range_first(told: Link, words: str) -> None:
    assert certainty_words(told) == words


def test_a_skein_comes_from_its_cone_lot_load_and_words(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 4)
    studio.dye(group)
    studio.do(into_load, "wash", [group])
    (skein,) = studio.tag(studio.finish(group, red=4)[0], 1)
    found = studio.book.ask(origins, {skein: 1})
    code = studio.code(1)
    assert code is not None
    assert [(one.kind, one.code, one.words, one.sure) for one in found] == [
        ("cone", "C·0001·7", "Tarnfield 4-ply", "known"),
        ("lot", f"26·15·{code[4:]}", "Sluice Keeper's Glove", "known"),
        ("load", "wash 1", "wash", "known"),
        ("version", "Tarnfield 4-ply, version 1", "100 % wool", "known")]


def test_what_is_not_known_is_said_to_be_not_known(studio: Studio) -> None:
    pile = studio.do(open_lot, OldLot("OLD-77", studio.version, 1, 4), 100_000)
    cone, lot, version = studio.book.ask(origins, {pile: 4})
    assert (cone.code, cone.words, cone.sure) == ("", "not known", "not known")
    assert (lot.code, lot.sure) == ("OLD77", "known")
    assert version.words == "100 % wool"


def test_a_pending_lot_is_said_to_have_no_code_yet(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 2)
    studio.clock.now = studio.clock.now.replace(year=2000)
    studio.dye(group)
    assert "without a code yet" in [one.code for one in studio.book.ask(origins, {group: 2})]


def test_each_kind_of_thing_stands_for_the_yarn_born_there(studio: Studio) -> None:
    cone, now = studio.cone(), studio.clock
    group = studio.wind(cone, 4, disc=studio.discs[0])
    lot = studio.dye(group)
    (pile,) = studio.finish(group, red=4)
    tags = studio.print(pile, 4)

    def of(kind: str, thing: int) -> dict[int, int]:
        return dict(studio.book.ask(members_of, Found(kind, thing, "", ""), now()))
    assert of("cone", cone) == of("lot", lot) == {group: 4}
    assert of("disc", studio.discs[0]) == of("tag", tags[0]) == {pile: 4}
    assert of("skein", group) == {group: 4}
    assert of("disc", studio.discs[1]) == of("pot", studio.pot) == {}


def test_the_lot_of_a_pot_counted_by_ties_still_names_both_cones(studio: Studio) -> None:
    pool = studio.mix(studio.wind(studio.cone(), 7, "red"), studio.wind(studio.cone(), 5, "blue"))
    lot = studio.dye(pool)
    studio.finish(pool, red=7, blue=5)
    found = studio.book.ask(by_code, studio.code(lot) or "")
    assert found is not None
    members = studio.book.ask(members_of, found, studio.clock.now)
    cones = [one for one in studio.book.ask(origins, members) if one.kind == "cone"]
    assert [(one.code, one.sure) for one in cones] == [
        ("C·0001·7", "one of a pool: 7 of 12, not known which"),
        ("C·0002·K", "one of a pool: 5 of 12, not known which")]
