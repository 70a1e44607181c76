"""A kept photograph is made small for the screen, upright; what cannot be opened is none."""

from io import BytesIO

import pytest
from PIL import Image

from app.scanning.shown_photos import fitted


def photo(kind: str = "JPEG", turned: int = 1) -> bytes:
    """400 by 200 dots, told to be turned as a telephone does."""
    exif = Image.Exif()
    exif[0x0112] = turned
    out = BytesIO()
    Image.new("RGB", (400, 200), "grey").save(out, kind, exif=exif)
    return out.getvalue()


def size_of(png: bytes | None) -> tuple[int, int]:
    assert png is not None
    return Image.open(BytesIO(png)).size


def test_no_side_is_longer_than_asked_and_it_stands_upright() -> None:
    assert size_of(fitted(photo(), 100)) == (100, 50)
    assert size_of(fitted(photo(turned=6), 100)) == (50, 100)
    assert size_of(fitted(photo("PNG"), 1000)) == (400, 200)


@pytest.mark.parametrize(
    "broken", [b"", b"%PDF-1.7", photo()[:300], b"\x89PNG\r\n\x1a\n" + bytes(40)])
def test_what_cannot_be_opened_is_none(broken: bytes) -> None:
    assert fitted(broken, 100) is None
