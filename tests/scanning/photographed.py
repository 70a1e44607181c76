"""Photographs made for tests: printed tags laid on yarn, and what spoils a picture."""

from collections.abc import Callable
from functools import cache
from io import BytesIO

import cv2
import numpy as np
from numpy.typing import NDArray
from PIL import Image

from app.documents.proof import true_size_picture
from app.documents.stocks import stock
from app.documents.tags import tag_sheets
from tests.documents.samples import LOT, tags

Picture = NDArray[np.uint8]

DOTS_PER_MM = 10
STOCK = "swing-85x55"
MARKS = tuple(tag.code.text for tag in tags(10))


@cache
def tag_pictures() -> tuple[Picture, ...]:
    """Ten printed tags of one lot, cut out of their sheet."""
    sheet = true_size_picture(tag_sheets(tags(10), stock(STOCK)).pdf, 1, DOTS_PER_MM * 25.4)
    page = np.asarray(sheet)
    cells = (stock(STOCK).cell(n) for n in range(1, 11))
    return tuple(np.ascontiguousarray(page[
        round(box.top * DOTS_PER_MM) + 3:round(box.bottom * DOTS_PER_MM) - 3,
        round(box.left * DOTS_PER_MM) + 3:round(box.right * DOTS_PER_MM) - 3]) for box in cells)


@cache
def yarn(width: int, height: int) -> Picture:
    """Strands of teal yarn side by side, plied and fuzzy."""
    chance = np.random.default_rng(5)
    y, x = np.mgrid[0:height, 0:width].astype(np.float32)
    strand = np.sin((x + 0.35 * y + 9 * np.sin(y / 61)) / 7)
    ply = np.sin((x - 0.8 * y) / 3.1)
    light = 0.55 + 0.25 * strand + 0.08 * ply + chance.normal(0, 0.06, (height, width))
    colour = np.stack([27 + 60 * light, 133 * light + 20, 110 * light + 15], axis=-1)
    return np.clip(colour, 0, 255).astype(np.uint8)


def photo(*seen: int, width: int = 1200, height: int = 900, share: float = 0.55,
          tilt: float = 0.0, turn: float = 8.0) -> Picture:
    """Tags lying on yarn. `share` of the width that each tag takes; `tilt` away from the camera,
    as a share of its far edge that is lost; `turn` in degrees."""
    scene = yarn(width, height).copy()
    columns = 1 if len(seen) == 1 else 2
    rows = -(-len(seen) // columns)
    for place, number in enumerate(seen or (0,)):
        row, column = divmod(place, columns)
        middle = ((column + 0.5) * width / columns, (row + 0.5) * height / rows)
        _lay(scene, tag_pictures()[number], middle, share * width, tilt, turn)
    return scene


def _lay(scene: Picture, tag: Picture, middle: tuple[float, float], wide: float, tilt: float,
         turn: float) -> None:
    height, width = tag.shape[:2]
    scale, (cx, cy) = wide / width, middle
    half_w, half_h, lost = wide / 2, height * scale / 2 * (1 - tilt / 2), tilt * wide / 2
    flat = np.array([[-half_w + lost, -half_h], [half_w - lost, -half_h], [half_w, half_h],
                     [-half_w, half_h]])
    a = np.deg2rad(turn)
    turned = flat @ np.array([[np.cos(a), np.sin(a)], [-np.sin(a), np.cos(a)]]) + (cx, cy)
    corners = np.array([[0, 0], [width, 0], [width, height], [0, height]])
    onto = cv2.getPerspectiveTransform(corners.astype(np.float32), turned.astype(np.float32))
    size = scene.shape[1], scene.shape[0]
    laid = cv2.warpPerspective(tag, onto, size, flags=cv2.INTER_AREA)
    where = cv2.warpPerspective(np.full(tag.shape[:2], 255, np.uint8), onto, size)
    shadow = cv2.GaussianBlur(where, (0, 0), 9)[..., None] / 255 * 0.35
    scene[:] = (scene * (1 - shadow)).astype(np.uint8)
    scene[where > 127] = laid[where > 127]


def as_file(picture: Picture, kind: str = "JPEG", **more: object) -> bytes:
    """The picture as bytes of a file."""
    out = BytesIO()
    Image.fromarray(picture).save(out, kind, **({"quality": 85} if kind == "JPEG" else {}) | more)
    return out.getvalue()


def blurred(picture: Picture, dots: float) -> Picture:
    """Out of focus."""
    return cv2.GaussianBlur(picture, (0, 0), dots)


def shaken(picture: Picture, dots: int) -> Picture:
    """The hand moved."""
    line = np.zeros((dots, dots), np.float32)
    cv2.line(line, (0, dots - 1), (dots - 1, dots // 3), 1.0)
    return cv2.filter2D(picture, -1, line / line.sum())


def noisy(picture: Picture, sigma: float) -> Picture:
    """Taken in the dark."""
    chance = np.random.default_rng(3)
    return np.clip(picture + chance.normal(0, sigma, picture.shape), 0, 255).astype(np.uint8)


def dim(picture: Picture, light: float) -> Picture:
    """Little light, more of it from one side."""
    across = np.linspace(1.0, 0.35, picture.shape[1])[None, :, None]
    return np.clip(picture * light * across, 0, 255).astype(np.uint8)


def glaring(picture: Picture, strong: float) -> Picture:
    """A lamp mirrored over a corner of the code."""
    height, width = picture.shape[:2]
    y, x = np.mgrid[0:height, 0:width]
    lamp = np.exp(-(((x - width * 0.66) / 60) ** 2 + ((y - height * 0.62) / 60) ** 2))
    return np.clip(picture + strong * lamp[..., None], 0, 255).astype(np.uint8)


def crumpled(picture: Picture, deep: float) -> Picture:
    """The tag was folded and bent: waves of so many dots."""
    height, width = picture.shape[:2]
    y, x = np.mgrid[0:height, 0:width].astype(np.float32)
    return cv2.remap(picture, x + deep * np.sin(y / 71) + deep / 2 * np.sin((x + y) / 113),
                     y + deep * np.sin(x / 83 + 1), cv2.INTER_LINEAR)


def under_thread(picture: Picture, dots: int) -> Picture:
    """A thread of so many dots lies over the code."""
    scene = picture.copy()
    height, width = picture.shape[:2]
    cv2.line(scene, (int(width * 0.675), int(height * 0.45)),
             (int(width * 0.72), int(height * 0.8)), (40, 40, 40), dots)
    return scene


def weak(picture: Picture) -> Picture:
    """Sent on many times: small and pressed together."""
    small = cv2.resize(picture, None, fx=0.55, fy=0.55, interpolation=cv2.INTER_AREA)
    _, data = cv2.imencode(".jpg", small, [cv2.IMWRITE_JPEG_QUALITY, 22])
    return cv2.imdecode(data, cv2.IMREAD_COLOR)


DISTURBANCES: dict[str, Callable[[int], Picture]] = {
    "flat, in daylight": lambda n: photo(n, turn=11.0 * n),
    "tilted by a quarter": lambda n: photo(n, tilt=0.25, turn=5.0 * n),
    "tilted by a half": lambda n: photo(n, tilt=0.5, turn=5.0 * n),
    "small in the picture": lambda n: photo(n, share=0.28 + 0.01 * n, turn=15.0 * n),
    "very small in the picture": lambda n: photo(n, share=0.19 + 0.005 * n, turn=15.0 * n),
    "a little out of focus": lambda n: blurred(photo(n), 1.0 + 0.1 * n),
    "out of focus": lambda n: blurred(photo(n), 1.8 + 0.15 * n),
    "far out of focus": lambda n: blurred(photo(n), 3 + 0.3 * n),
    "shaken": lambda n: shaken(photo(n), 4 + n),
    "noisy": lambda n: noisy(photo(n), 20 + 4 * n),
    "very noisy": lambda n: noisy(photo(n), 60 + 6 * n),
    "dim": lambda n: noisy(dim(photo(n), 0.45 - 0.03 * n), 4),
    "a lamp mirrored in it": lambda n: glaring(photo(n), 60 + 25 * n),
    "crumpled": lambda n: crumpled(photo(n), 3 + n),
    "crumpled hard": lambda n: crumpled(photo(n), 12 + n),
    "thread over the code": lambda n: under_thread(photo(n), 2 + n),
    "sent on many times": lambda n: weak(photo(n)),
}
"""What spoils a photograph, each worse with its number from 0 to 9."""

assert all(mark.startswith(LOT) for mark in MARKS)
