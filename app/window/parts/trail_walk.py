"""Walking through the picture of a trail by the arrow keys: along the yarn, or down a column."""

from collections.abc import Iterable

from app.documents.trail_picture import Picture, SetTag


def yarn_step(picture: Picture, at: SetTag, way: int) -> SetTag | None:
    """The nearest station that the yarn leads to (1) or comes from (-1); none at its end."""
    ends = {(one.way.start, one.way.end)[::way] for one in picture.ways}
    near = {end for start, end in ends if start == at.tag.key}
    return _nearest((one for one in picture.tags if one.tag.key in near), at)


def column_step(picture: Picture, at: SetTag, way: int) -> SetTag | None:
    """The next station below (1) or above (-1) in the same column; none at its end."""
    return _nearest((one for one in picture.tags
                     if one.x == at.x and (_middle(one) - _middle(at)) * way > 0), at)


def _nearest(tags: Iterable[SetTag], at: SetTag) -> SetTag | None:
    return min(tags, key=lambda one: abs(_middle(one) - _middle(at)), default=None)


def _middle(one: SetTag) -> float:
    return one.y + one.height / 2
