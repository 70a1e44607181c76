"""The square codes on a photograph: looked for in several ways, within a time."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Literal

import zxingcpp
from PIL import Image, ImageFilter

from app.scanning.photographs import Photo

LONGEST_LOOK = 8.0  # seconds; the look that has begun is ended
_FORMATS = zxingcpp.barcode_formats_from_str("QRCode,DataMatrix")
_MOST_AT_ONCE = 50_000_000  # dots of one look; larger pictures are made smaller first
_SMALLER, _SMALL = 2000, 1600  # dots of the long side

Clock = Callable[[], float]
"""Seconds that only go forward, like time.monotonic."""


@dataclass(frozen=True, slots=True)
class Seen:
    """A code's text, and its middle in shares of the picture's width and height."""

    text: str
    x: float
    y: float


@dataclass(frozen=True, slots=True)
class Sought:
    """The codes that were found, from the top, and whether the time was up before every look."""

    codes: tuple[Seen, ...]
    hurried: bool = False


def codes_on(photo: Photo, clock: Clock, seconds: float = LONGEST_LOOK) -> Sought:
    """Every code that can be read; what stands twice counts once.

    The picture is looked at as it is and smaller, so that all of several tags are found; sharpened,
    larger and smoothed only where that found none. Runs for seconds: never on the screen's thread.
    """
    began, found = clock(), dict[str, Seen]()
    for kind, look in _looks(photo.grey):
        if kind == "mended" and found:
            break
        if clock() - began > seconds:
            return Sought(_from_the_top(found), hurried=True)
        for seen in _read(look()):
            found.setdefault(seen.text, seen)
    return Sought(_from_the_top(found))


def _looks(grey: Image.Image) -> Iterator[tuple[Literal["plain", "mended"],
                                                Callable[[], Image.Image]]]:
    yield "plain", lambda: _at_most(grey, dots=_MOST_AT_ONCE)
    if max(grey.size) > 1.5 * _SMALLER:
        yield "plain", lambda: _long_side(grey, _SMALLER)
    yield "mended", lambda: _sharper(_long_side(grey, _SMALLER), 4)
    yield "mended", lambda: _sharper(_doubled(_long_side(grey, _SMALL)), 6)
    yield "mended", lambda: _long_side(grey, _SMALL).filter(ImageFilter.GaussianBlur(1.5))


def _read(look: Image.Image) -> Iterator[Seen]:
    for code in zxingcpp.read_barcodes(look, formats=_FORMATS):
        at = code.position
        corners = (at.top_left, at.top_right, at.bottom_left, at.bottom_right)
        yield Seen(code.text, sum(corner.x for corner in corners) / 4 / look.width,
                   sum(corner.y for corner in corners) / 4 / look.height)


def _at_most(grey: Image.Image, dots: int) -> Image.Image:
    share = (dots / (grey.width * grey.height)) ** 0.5
    return grey if share >= 1 else _long_side(grey, int(max(grey.size) * share))


def _long_side(grey: Image.Image, dots: int) -> Image.Image:
    share = dots / max(grey.size)
    if share >= 1:
        return grey
    width, height = (max(1, round(side * share)) for side in grey.size)
    return grey.resize((width, height), Image.Resampling.BOX)


def _doubled(grey: Image.Image) -> Image.Image:
    return grey.resize((grey.width * 2, grey.height * 2), Image.Resampling.BICUBIC)


def _sharper(grey: Image.Image, dots: int) -> Image.Image:
    return grey.filter(ImageFilter.UnsharpMask(dots, 300, 0))


def _from_the_top(found: dict[str, Seen]) -> tuple[Seen, ...]:
    return tuple(sorted(found.values(), key=lambda seen: (round(seen.y * 8), seen.x)))
