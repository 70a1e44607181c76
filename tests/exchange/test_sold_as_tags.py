"""The tag of a light skein says what it is sold as, and the old one is void."""

import json
from random import Random

import pytest

from app.documents.proof import read_back
from app.documents.stocks import stock
from app.exchange.sold_as_tags import print_sold_as
from app.exchange.tag_printing import OnStock, PrintOrder, print_for_pile
from app.lookups.printed import TIED_ON, VOID, tags_of, worn_by
from app.problems import NotFound, Refused
from app.store.deed import By
from app.work.put_up_weights import read_humidity, weigh_put_up
from app.work.studio import choose
from app.work.tagging import apply_tag
from tests.makers import Studio

LP, SMALL = By("LP", "tagging"), OnStock("small-63x38")


@pytest.fixture
def weighed(studio: Studio) -> tuple[Studio, int, int, int]:
    """A skein that weighs 97.2 g on a damp day: studio, pile, skein, the row of its weight."""
    studio.do(choose, {"name": "Quernlow Dyeyard", "address": "Staithe Row 3, Quernlow"})
    group = studio.wind(studio.cone(), 2)
    studio.dye(group)
    (pile,) = studio.finish(group, red=2)
    printed = print_for_pile(studio.book, LP, PrintOrder(pile, 1, SMALL), Random(3))
    skein = studio.do(apply_tag, printed.tags[0])
    studio.do(read_humidity, 700)
    return studio, pile, skein, studio.do(weigh_put_up, skein, 97_200)


def test_the_new_tag_says_its_grams_and_fewer_metres(
    weighed: tuple[Studio, int, int, int]
) -> None:
    studio, pile, skein, weight = weighed
    before = studio.book.ask(worn_by, skein)
    printed = print_sold_as(studio.book, LP, (weight, skein, 96), SMALL, Random(4))
    old, new = studio.book.ask(tags_of, pile)
    assert (old.state, old.successor, new.state, new.skein) == (VOID, new.mark, TIED_ON, skein)
    after = studio.book.ask(worn_by, skein)
    assert before is not None
    assert after is not None
    was, now = json.loads(before.words), json.loads(after.words)
    assert (was["net"], now["net"]) == ("100 g   388 m", "96 g   372 m")
    assert now["ounces"].startswith("3.39 oz")
    assert was | {"net": "", "ounces": ""} == now | {"net": "", "ounces": ""}
    (page,) = read_back(printed.pdf, stock("small-63x38").dpi)
    assert [code.code for code in page] == [new.mark]
    assert printed.said.startswith("sold as 96 g: ")
    studio.undo()
    assert studio.book.ask(worn_by, skein) == before
    studio.check()


def test_what_is_refused_prints_nothing(weighed: tuple[Studio, int, int, int]) -> None:
    studio, pile, skein, weight = weighed
    with pytest.raises(Refused, match="It holds 96"):
        print_sold_as(studio.book, LP, (weight, skein, 98), SMALL, Random(4))
    with pytest.raises(NotFound):
        print_sold_as(studio.book, LP, (weight, pile, 96), SMALL, Random(4))
    assert len(studio.book.ask(tags_of, pile)) == 1


def test_a_language_with_a_comma_has_it_here_too(weighed: tuple[Studio, int, int, int]) -> None:
    studio, _, skein, weight = weighed
    studio.do(choose, {"market": "EU", "language": "de"})
    print_sold_as(studio.book, LP, (weight, skein, 96), SMALL, Random(4))
    worn = studio.book.ask(worn_by, skein)
    assert worn is not None
    assert json.loads(worn.words)["ounces"].startswith("3,39 oz")
