"""The picture of a trail as SVG: well formed, with the same words at the same places."""

from xml.etree import ElementTree

from app.documents.trail_picture import Tag, set_picture
from app.exchange.trail_svg import picture_svg
from tests.documents.test_trail_picture import sample

SVG = "{http://www.w3.org/2000/svg}"


def test_every_line_of_words_stands_where_the_layout_put_it() -> None:
    picture = sample()
    root = ElementTree.fromstring(picture_svg(picture, "The trail", "Cone C·0114·F: 6 skeins."))
    words = {(one.text, one.get("x"), one.get("y")) for one in root.iter(f"{SVG}text")}
    for tag in picture.tags:
        for line in tag.lines:
            assert (line.words, f"{line.x:.1f}".removesuffix(".0"),
                    f"{line.y:.1f}".removesuffix(".0")) in words
    assert [one.text for one in root.iter(f"{SVG}desc")] == ["Cone C·0114·F: 6 skeins."]


def test_certainty_is_told_by_the_line_and_hold_is_the_only_red() -> None:
    said = picture_svg(sample(), "t", "d").decode()
    assert said.count("stroke-dasharray") == 2  # one of a pool, not known
    root = ElementTree.fromstring(said)
    inks = {one.get(name) for one in root.iter() for name in ("fill", "stroke")}
    for ink in inks - {None, "none", "#B3001B"}:
        assert ink is not None
        assert ink[1:3] == ink[3:5] == ink[5:7]


def test_words_are_never_markup() -> None:
    picture = set_picture([Tag("here", "dye lot", '<b>&"Tea" ]]>', here=True)], [], "here")
    root = ElementTree.fromstring(picture_svg(picture, "a < b", "& c"))
    assert '<b>&"Tea" ]]>' in "".join(one.text or "" for one in root.iter(f"{SVG}text"))
