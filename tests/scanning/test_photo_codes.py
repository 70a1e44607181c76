"""Codes on photographs: how much a picture may be spoiled, several tags at once, and the time."""

from collections.abc import Callable, Iterator
from itertools import count

import cv2
import numpy as np
import pytest
from PIL import Image

from app.scanning.photo_codes import Sought, codes_on
from app.scanning.photographs import open_photo
from tests.scanning.photographed import DISTURBANCES, MARKS, as_file, blurred, photo, yarn

LEAST_READ = {
    **dict.fromkeys(DISTURBANCES, 3), "a lamp mirrored in it": 2, "out of focus": 2, "shaken": 1,
    "thread over the code": 1, "far out of focus": 0,
}
"""Of three photographs of growing harm, how many are read at least; none is read wrongly."""
HARM = (0, 5, 9)


def ticking(seconds: float) -> Callable[[], float]:
    """A clock that goes on by so much at every look."""
    ticks: Iterator[float] = (n * seconds for n in count())
    return lambda: next(ticks)


def sought(content: bytes, seconds: float = 0.0) -> Sought:
    return codes_on(open_photo(content), ticking(seconds))


def texts(found: Sought) -> list[str]:
    return [seen.text for seen in found.codes]


@pytest.mark.parametrize("harm", sorted(DISTURBANCES))
def test_a_spoiled_photograph_is_read_or_not_and_never_wrongly(harm: str) -> None:
    read = 0
    for number in HARM:
        found = texts(sought(as_file(DISTURBANCES[harm](number))))
        assert found in ([], [MARKS[number]])
        read += len(found)
    print(f"{harm}: {read} of {len(HARM)} read")  # noqa: T201 - the rate is what is asked for
    assert read >= LEAST_READ[harm]


def test_a_photograph_that_no_eye_could_read_gives_no_code() -> None:
    assert texts(sought(as_file(blurred(photo(0), 9)))) == []


def test_several_tags_in_one_picture_are_all_found_from_the_top() -> None:
    found = sought(as_file(photo(0, 1, 2, 3, 4, 5, share=0.28, turn=3.0)))
    assert texts(found) == list(MARKS[:6])
    assert [seen.x < 0.5 for seen in found.codes] == [True, False] * 3


def test_the_same_tag_twice_in_a_picture_counts_once() -> None:
    assert texts(sought(as_file(photo(2, 2, share=0.4)))) == [MARKS[2]]


@pytest.mark.parametrize("turn", [0.0, 90.0, 180.0, 203.0, 270.0])
def test_a_tag_lies_any_way_round(turn: float) -> None:
    assert texts(sought(as_file(photo(1, turn=turn), "PNG"))) == [MARKS[1]]


def test_a_turned_camera_is_turned_back() -> None:
    notes = Image.Exif()
    notes[0x0112] = 6
    upright = sought(as_file(photo(1))).codes[0]
    turned = sought(as_file(np.rot90(photo(1)), exif=notes)).codes[0]
    assert turned.text == upright.text
    assert (turned.x, turned.y) == pytest.approx((upright.x, upright.y), abs=0.02)


def test_a_photograph_of_48_million_dots_is_read_with_all_its_tags() -> None:
    small = photo(0, 1, 2, 3, share=0.3, width=1600, height=1200)
    large = cv2.resize(small, (8000, 6000), interpolation=cv2.INTER_LINEAR)
    assert texts(sought(as_file(large))) == list(MARKS[:4])


def test_when_the_time_is_up_what_was_found_is_kept() -> None:
    nothing = as_file(yarn(600, 400))
    assert sought(nothing, 0.1) == Sought((), hurried=False)
    assert sought(nothing, 4.1) == Sought((), hurried=True)
    large = as_file(cv2.resize(photo(0), (3200, 2400)))
    assert sought(large, 7.9).codes == sought(large).codes != ()


@pytest.mark.parametrize("size", [(1, 1), (1, 4000), (4000, 1), (7, 3)])
def test_a_picture_of_any_shape_is_looked_at(size: tuple[int, int]) -> None:
    assert texts(sought(as_file(np.full((size[1], size[0], 3), 120, np.uint8), "PNG"))) == []
