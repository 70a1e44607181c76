"""The studio's market and language, and what its tags say there."""

import pytest

from app.calculations.label_words import LabelWords
from app.lookups.market_words import for_market
from app.lookups.now import NOW
from app.lookups.tagging import tag_text
from app.problems import NotFound
from app.work.bases import describe_base
from app.work.studio import choose
from tests.lookups.waters import NAVY, PALE, lot_of, washed
from tests.makers import Studio, tarnfield


def pile_of(studio: Studio) -> int:
    yarn = studio.wind(studio.cone(), 2)
    studio.dye(yarn)
    return studio.finish(yarn, red=2)[0]


def read(studio: Studio, pile: int) -> LabelWords | None:
    text = studio.book.ask(tag_text, pile, studio.version)
    return studio.book.ask(for_market, text, NOW)


def test_without_a_market_the_words_of_the_base_stand(studio: Studio) -> None:
    assert read(studio, pile_of(studio)) is None


def test_the_words_follow_the_market_and_the_base_version_of_the_cones(studio: Studio) -> None:
    pile = pile_of(studio)
    studio.do(describe_base, tarnfield(fibre="75 % wool, 25 % polyamide"))
    studio.do(choose, {"market": "EU", "language": "de"})
    tag = read(studio, pile)
    assert tag is not None
    assert (tag.fibre, tag.care) == (
        "100 % Wolle", "Handwäsche 30 °C, liegend trocknen, nicht in den Trockner.")
    studio.do(choose, {"market": "US", "language": ""})
    tag = read(studio, pile)
    assert tag is not None
    assert (tag.fibre, tag.ounces_by_law) == ("100% wool", True)
    assert [said.rule.key for said in tag.refusals] == ["origin"]


def test_a_lot_that_bled_warns_of_its_machine_wash(studio: Studio) -> None:
    studio.do(choose, {"market": "EU"})
    version = studio.do(describe_base, tarnfield(care="Machine wash 30 °C."))
    (row, _), (other, _) = lot_of(studio, "N", NAVY), lot_of(studio, "P", PALE)
    washed(studio, row, how=2)
    said = {}
    for name, yarn in (("N", row), ("P", other)):
        (pile,) = studio.finish(yarn, red=6)
        tag = studio.book.ask(for_market, studio.book.ask(tag_text, pile, version), NOW)
        assert tag is not None
        said[name] = [one.what for one in tag.warnings]
    assert said == {"N": ["The care says machine wash, and this lot bleeds strongly."], "P": []}


def test_a_market_nobody_knows_is_refused_by_name(studio: Studio) -> None:
    studio.do(choose, {"market": "Mars"})
    pile = pile_of(studio)
    with pytest.raises(NotFound, match="“Mars”"):
        read(studio, pile)
