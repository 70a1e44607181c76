"""Tags: a mark burnt for ever, one tag a skein, one skein a tag."""

import pytest

from app.problems import Refused
from app.records import PrintSheet, Tag, TagOn
from app.store.deed import Deed
from tests.makers import Studio
from tests.records.forbidden import burnt_for_ever, forbids


def test_a_mark_is_burnt_for_ever(studio: Studio) -> None:
    studio.tagged(studio.cone(), 1)
    burnt_for_ever(studio, lambda: Tag(mark="2615R6F-7M", lot=1, pile=None, base_version=None,
                                       words="{}", sheet=1))


def test_a_sheet_begins_at_a_cell(studio: Studio) -> None:
    forbids(studio, "begins_at_a_cell", PrintSheet(stock="swing tag", first_cell=0))


@pytest.mark.parametrize(("tag", "skein"), [(0, 1), (1, 0)])
def test_one_tag_hangs_on_one_skein(studio: Studio, tag: int, skein: int) -> None:
    _, skeins = studio.tagged(studio.cone(), 2)

    def hang(deed: Deed) -> None:
        stay = TagOn(tag=tag + 1, yarn=skeins[skein])
        stay.since = deed.happened
        deed.add(stay)
    with pytest.raises(Refused, match="done already"):
        studio.do(hang)
