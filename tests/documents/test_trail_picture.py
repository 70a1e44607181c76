"""The picture of a trail: words in their tags, tags in their places, yarn between them."""

from itertools import combinations

from app.documents.trail_picture import (
    MARGIN,
    STROKES,
    Picture,
    Tag,
    Way,
    curve,
    flattened,
    outline,
    plate,
    set_picture,
)
from app.documents.typesetting import MM, Type, width_mm
from app.documents.yarn import Certainty

LONG = "Warm Stones Under the Old Ferry Landing at Quernlow"
TAGS = (
    Tag("cone", "cone", "C·0114·F", ("6 skeins",), code=True, held="here"),
    Tag("here", "dye lot", "26·14·Y51", (LONG, "12 skeins"), code=True, here=True, held="below"),
    Tag("fold", "", "412 skeins on a shelf", ("3 places",), many=True),
    Tag("lost", "lost", "1 skein", ("one of a pool:|0 to 1 of 1",)),
)
WAYS = (Way("cone", "here", Certainty.POOL), Way("here", "fold", Certainty.KNOWN),
        Way("here", "lost", Certainty.PARTLY), Way("cone", "lost", Certainty.UNKNOWN))


def sample() -> Picture:
    return set_picture(TAGS, WAYS, "here")


def test_all_words_stand_inside_their_tags() -> None:
    for one in sample().tags:
        for line in one.lines:
            half = width_mm(line.words, Type(line.size, line.face)) * MM / 2
            assert one.x <= line.x - half
            assert line.x + half <= one.x + one.width
            assert one.y < line.y - line.size * 0.6
            assert line.y < one.y + one.height
    said = {one.tag.key: " ".join(line.words for line in one.lines) for one in sample().tags}
    assert LONG in said["here"]


def test_no_tag_or_hold_plate_lies_on_another_tag() -> None:
    for one, other in combinations(sample().tags, 2):
        assert (one.x + one.width < other.x or other.x + other.width < one.x
                or one.y + one.height < plate(other)[1] or other.y + other.height < plate(one)[1])


def test_what_is_folded_hangs_below_what_stands_singly() -> None:
    singles = [Tag(f"s{n}", "skein", f"H{n}") for n in range(3)]
    fold = Tag("fold", "more", "9 skeins", many=True)
    found = set_picture([fold, *singles, Tag("here", "pile", "3 Apr", here=True)],
                        [Way("here", one.key, Certainty.KNOWN) for one in (fold, *singles)], "here")
    assert max(found.tags, key=lambda one: one.y).tag.key == "fold"


def test_each_certainty_is_drawn_in_its_own_way() -> None:
    assert len({(stroke.dash, stroke.opened) for stroke in STROKES.values()}) == 4


def test_yarn_leaves_and_arrives_level_and_ends_at_the_tags() -> None:
    for way in sample().ways:
        pieces = curve(way.points)
        _, second, end = pieces[-1]
        assert pieces[0][0][1] == way.points[0][1]
        assert second[1] == end[1] == way.points[-1][1]
        line = flattened(way.points)
        assert line[0] == way.points[0]
        assert abs(line[-1][0] - way.points[-1][0]) < 1e-6
        assert all(x >= MARGIN for x, _ in line)


def test_a_tag_has_its_two_upper_corners_clipped() -> None:
    one = sample().tags[0]
    assert len(outline(one, 10)) == 6
    assert outline(one, 10, 4)[0] == (one.x + 14, one.y + 4)
