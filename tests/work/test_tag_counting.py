"""Tags in hand are counted at the end of the day."""

import pytest
from sqlalchemy import select

from app.problems import Refused
from app.records import TagsInHand
from app.work.tag_counting import count_in_hand
from app.work.tagging import apply_tag
from tests.makers import Studio


def printed(studio: Studio, count: int) -> tuple[int, list[int]]:
    group = studio.wind(studio.cone(), count)
    lot, (pile,) = studio.dye(group), studio.finish(group, red=count)
    return lot, studio.print(pile, count)


def kept(studio: Studio) -> list[tuple[int, str]]:
    rows = studio.book.ask(lambda c: c.execute(select(TagsInHand.count, TagsInHand.why)).all())
    return [tuple(row) for row in rows]


def test_a_count_that_fits_needs_no_reason(studio: Studio) -> None:
    lot, tags = printed(studio, 3)
    studio.do(apply_tag, tags[0])
    done = studio.done(count_in_hand, lot, 2)
    assert done.said.startswith("counted 2 tags of ")
    assert done.said.endswith(" in hand")
    assert (kept(studio), done.findings) == ([(2, "")], ())
    studio.check()


def test_a_difference_needs_its_reason(studio: Studio) -> None:
    lot, _ = printed(studio, 3)
    with pytest.raises(Refused, match=r"3 tags of .* should be in hand, 2 counted: why\?"):
        studio.do(count_in_hand, lot, 2, " ")
    assert kept(studio) == []
    done = studio.done(count_in_hand, lot, 2, " one fell behind the table ")
    assert done.said.endswith("in hand, 3 by the book: one fell behind the table")
    assert kept(studio) == [(2, "one fell behind the table")]


def test_more_than_the_book_has_is_kept_and_marked(studio: Studio) -> None:
    lot, _ = printed(studio, 1)
    done = studio.done(count_in_hand, lot, 2, "one came off")
    assert "look whether void ones are among them" in done.findings[0]


def test_what_cannot_be_a_count_is_refused(studio: Studio) -> None:
    lot, _ = printed(studio, 1)
    with pytest.raises(Refused, match="Less than no tag"):
        studio.do(count_in_hand, lot, -1, "?")
    bare = studio.dye(studio.wind(studio.cone(), 2))
    with pytest.raises(Refused, match="was ever printed"):
        studio.do(count_in_hand, bare, 0)
    assert kept(studio) == []


def test_a_count_is_taken_back_like_any_deed(studio: Studio) -> None:
    lot, _ = printed(studio, 1)
    studio.do(count_in_hand, lot, 1)
    studio.undo()
    rows = studio.book.ask(lambda c: c.execute(select(TagsInHand.struck)).all())
    assert rows[0][0] is not None
