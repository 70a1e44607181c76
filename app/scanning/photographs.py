"""A photograph as it came from a telephone: opened with care, upright, and grey."""

import struct
import zlib
from dataclasses import dataclass
from io import BytesIO

from PIL import Image, ImageOps

from app.problems import BadInput

MOST_BYTES = 60_000_000
MOST_DOTS = 120_000_000  # more than any telephone takes; decoded it is as many bytes
_KINDS = ("JPEG", "PNG", "WEBP")
_HEIC = ("HEIF",)
BROKEN = (OSError, ValueError, SyntaxError, EOFError, TypeError, KeyError, IndexError,
          OverflowError, MemoryError, RuntimeError, struct.error, zlib.error)
"""What decoders raise on files that were cut, damaged or made to harm."""
_SEND = "Send the photograph as a JPEG or PNG file, or type what is readable of the code."


@dataclass(frozen=True, slots=True)
class Photo:
    """A still photograph in grey, turned as it was taken."""

    grey: Image.Image

    @property
    def size(self) -> tuple[int, int]:
        """Width and height in dots."""
        return self.grey.size


def open_photo(content: bytes) -> Photo:
    """The photograph in a file's bytes. Raises BadInput with what is wrong with the file."""
    if not content:
        raise BadInput("The file is empty: there is no picture in it.", _SEND)
    if len(content) > MOST_BYTES:
        raise BadInput(f"The file is larger than {MOST_BYTES // 1_000_000} MB and was not opened.",
                       "Make the picture smaller and try again.")
    try:
        with Image.open(BytesIO(content), formats=_readable()) as picture:
            return _photo(picture)
    except (Image.DecompressionBombError, Image.DecompressionBombWarning):
        raise _too_many_dots() from None
    except BROKEN:
        raise _unreadable(content) from None


def _photo(picture: Image.Image) -> Photo:
    """Looks at what the head of the file says before anything of it is decoded."""
    if picture.width * picture.height > MOST_DOTS:
        raise _too_many_dots()
    if picture.format != "MPO" and getattr(picture, "n_frames", 1) > 1:
        raise BadInput("This is a moving picture, not a photograph.",
                       "Send one still photograph of the tag.")
    picture.draft("L", picture.size)
    if "transparency" in picture.info or picture.mode in ("RGBA", "LA", "PA"):
        clear = picture.convert("RGBA")
        picture = Image.alpha_composite(Image.new("RGBA", clear.size, "white"), clear)
    return Photo(_upright(picture).convert("L"))


def _upright(picture: Image.Image) -> Image.Image:
    """Turned as the camera says; a camera's note that cannot be read turns nothing."""
    picture.load()
    try:
        return ImageOps.exif_transpose(picture)
    except BROKEN:
        return picture


def _too_many_dots() -> BadInput:
    return BadInput(f"The picture has more than {MOST_DOTS // 1_000_000} million dots and was not "
                    "opened.", "Make it smaller, or cut out the tag, and try again.")


def _unreadable(content: bytes) -> BadInput:
    if content.startswith(b"%PDF"):
        return BadInput("This file is a PDF, whatever its name says, and no photograph.", _SEND)
    if content[4:8] == b"ftyp" and not _reads_heic():
        return BadInput("This computer cannot open HEIC photographs.",
                        "Send it as a JPEG file, or type what is readable of the code.")
    if content.startswith((b"\xff\xd8\xff", b"\x89PNG", b"RIFF")) or content[4:8] == b"ftyp":
        return BadInput("The picture is damaged or was cut off on its way; it cannot be opened.",
                        "Ask for it once more, or type what is readable of the code.")
    return BadInput("This file is no photograph that can be opened here.", _SEND)


def _readable() -> tuple[str, ...]:
    Image.init()
    return _KINDS + (_HEIC if _reads_heic() else ())


def _reads_heic() -> bool:
    """Whether the reader of HEIC is installed: not every computer has one."""
    try:
        from pillow_heif import register_heif_opener
    except ImportError:
        return False
    register_heif_opener()
    return True
