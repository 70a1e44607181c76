"""New tags in place of lost ones."""

import json
from random import Random

import pytest
from sqlalchemy import select

from app.documents.proof import read_back
from app.documents.stocks import stock
from app.exchange.tag_printing import OnStock, PrintOrder, print_for_pile
from app.exchange.tag_reprinting import print_in_place
from app.lookups.printed import TIED_ON, VOID, sheets_used, tags_of
from app.lookups.tagging import pile_facts
from app.problems import NotFound, Refused
from app.records import Tag
from app.store.deed import By
from app.work.holding import hold
from app.work.studio import choose
from app.work.tagging import apply_tag

LP = By("LP", "tagging")
SMALL = OnStock("small-63x38", 12)


@pytest.fixture
def tagged(studio):
    """Three skeins of one pile that wear their tags: studio, cone, pile, skeins."""
    studio.do(choose, {"name": "Quernlow Dyeyard", "address": "Staithe Row 3, Quernlow"})
    cone = studio.cone()
    group = studio.wind(cone, 3)
    studio.dye(group)
    (pile,) = studio.finish(group, red=3)
    printed = print_for_pile(studio.book, LP, PrintOrder(pile, 3, OnStock("small-63x38")),
                             Random(3))
    return studio, cone, pile, [studio.do(apply_tag, tag) for tag in printed.tags]


def test_the_old_tag_is_void_and_names_the_new_one(tagged):
    studio, _, pile, skeins = tagged
    printed = print_in_place(studio.book, LP, skeins[:1], SMALL, Random(4))
    old, *_, new = studio.book.ask(tags_of, pile)
    assert (old.state, old.successor, new.state, new.skein) == (
        VOID, new.mark, TIED_ON, skeins[0])
    assert (new.place, printed.left_on_last) == (12, 9)
    assert studio.book.ask(pile_facts, pile).void == 1


def test_several_at_once_stand_on_one_sheet_with_the_words_they_had(tagged):
    studio, _, pile, skeins = tagged
    printed = print_in_place(studio.book, LP, skeins, SMALL, Random(4))
    (page,) = read_back(printed.pdf, stock("small-63x38").dpi)
    tags = studio.book.ask(tags_of, pile)
    assert sorted(code.code for code in page) == sorted(tag.mark for tag in tags[3:])
    words = studio.book.ask(lambda c: list(c.execute(select(Tag.words)).scalars()))
    assert len({json.loads(one)["lot"] for one in words}) == 1
    assert printed.said == "printed 3 tags in place of others"
    assert studio.book.ask(sheets_used)["small-63x38"] == set(range(1, 15))


def test_a_skein_without_a_tag_gets_none_in_its_place(tagged):
    studio, _, pile, _ = tagged
    with pytest.raises(NotFound, match="No tag hangs on this skein; nothing was printed"):
        print_in_place(studio.book, LP, [pile], SMALL, Random(4))


def test_under_a_hold_nothing_is_printed_anew(tagged):
    studio, cone, pile, skeins = tagged
    studio.do(hold, "cone", cone, "oil stain")
    with pytest.raises(Refused, match="HOLD"):
        print_in_place(studio.book, LP, skeins[:1], SMALL, Random(4))
    assert studio.book.ask(pile_facts, pile).printed == 3
