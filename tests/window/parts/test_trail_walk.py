"""Walking by the arrow keys: along the yarn to the nearest, or up and down a column."""

from app.documents.trail_picture import Picture, SetTag, Tag, Way, set_picture
from app.documents.yarn import Certainty
from app.window.parts.trail_walk import column_step, yarn_step

NAMES = ("cone", "here", "wash", "rail", "table", "shelf")
LINKS = (("cone", "here"), ("here", "wash"), ("here", "rail"), ("wash", "table"),
         ("rail", "shelf"))


def sample() -> Picture:
    return set_picture([Tag(name, name, name, here=name == "here") for name in NAMES],
                       [Way(*link, Certainty.KNOWN) for link in LINKS], "here")


def at(picture: Picture, key: str) -> SetTag:
    return next(one for one in picture.tags if one.tag.key == key)


def key(tag: SetTag | None) -> str | None:
    return None if tag is None else tag.tag.key


def test_right_and_left_go_along_the_yarn_and_end_at_its_ends() -> None:
    picture = sample()
    assert key(yarn_step(picture, at(picture, "cone"), 1)) == "here"
    assert key(yarn_step(picture, at(picture, "wash"), 1)) == "table"
    assert key(yarn_step(picture, at(picture, "shelf"), -1)) == "rail"
    assert yarn_step(picture, at(picture, "shelf"), 1) is None
    assert yarn_step(picture, at(picture, "cone"), -1) is None


def test_up_and_down_go_to_the_next_of_the_column() -> None:
    picture = sample()
    upper, lower = sorted((at(picture, "wash"), at(picture, "rail")), key=lambda one: one.y)
    assert column_step(picture, upper, 1) == lower
    assert column_step(picture, lower, -1) == upper
    assert column_step(picture, lower, 1) is None
