"""The studio's own stocks as they are written into its settings, and read again."""

import json
from dataclasses import replace

import pytest

from app.documents.own_stocks import (
    LAYOUT_NAMES,
    Layout,
    check_title,
    next_name,
    studio_stocks,
    told_layouts,
    told_stocks,
    written_layouts,
    written_stocks,
)
from app.documents.stocks import LayoutName, stock, stocks
from app.documents.tag_choices import Choices
from app.documents.tags import Tag, try_on
from app.problems import NotFound, Refused
from tests.documents.samples import tag_words

OWN = replace(stock("tag-70x50"), name="own-1", title="Kraft card", long_edge_first=True)
CHOSEN = Layout("small", Choices(text=1.1, lot_mm=4.5, leaves_out=("knit", "care")))


def test_a_stock_and_a_layout_are_read_as_they_were_written() -> None:
    assert told_stocks(written_stocks([OWN])) == (OWN,)
    assert told_layouts(written_layouts({"own-1": CHOSEN})) == {"own-1": CHOSEN}
    assert told_stocks("[]") == ()


def test_a_layout_holds_for_ours_and_for_own_stocks_and_the_rest_stay() -> None:
    layouts = written_layouts({"own-1": CHOSEN, "roll-62x40": CHOSEN})
    known = studio_stocks(written_stocks([OWN]), layouts, json.dumps(["band-210x50"]))
    for name in ("own-1", "roll-62x40"):
        assert (known.named(name).layout, known.named(name).choices) == ("small", CHOSEN.choices)
    assert known.named("swing-85x55") == stock("swing-85x55")
    assert [one.name for one in known.away] == ["band-210x50"]
    assert len(known.in_use) == len(stocks())
    with pytest.raises(NotFound, match="own-2"):
        known.named("own-2")


def test_names_are_never_used_twice_and_titles_are_told_apart() -> None:
    assert next_name([OWN]) == "own-2"
    with pytest.raises(Refused, match="called kraft card already"):
        check_title("kraft card", [OWN])
    with pytest.raises(Refused, match="no name"):
        check_title("  ", [OWN])


@pytest.mark.parametrize("layout", LAYOUT_NAMES)
def test_every_layout_that_can_be_chosen_can_be_drawn(layout: LayoutName) -> None:
    large = replace(stock("band-210x50"), edge=1.5, tag=(210, 70), down=3, step=(210, 70),
                    layout=layout)
    assert try_on(Tag(tag_words(), "7M"), large).words.lot == "2615R6F"
