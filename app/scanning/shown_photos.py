"""A kept photograph made small enough for a screen, upright; the book keeps it as it came."""

from io import BytesIO

from PIL import Image, ImageOps

from app.scanning.photographs import BROKEN, MOST_DOTS

_BROKEN = (*BROKEN, Image.DecompressionBombError, Image.DecompressionBombWarning)


def fitted(content: bytes, most: int) -> bytes | None:
    """The picture as PNG, no side longer than `most` dots; none where it cannot be opened."""
    try:
        with Image.open(BytesIO(content), formats=("JPEG", "PNG")) as picture:
            if picture.width * picture.height > MOST_DOTS:
                return None
            picture.draft("RGB", (most, most))
            upright = ImageOps.exif_transpose(picture).convert("RGB")
            upright.thumbnail((most, most))
            out = BytesIO()
            upright.save(out, "PNG")
            return out.getvalue()
    except _BROKEN:
        return None
