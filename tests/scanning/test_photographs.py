"""Files that should be photographs: what they are is said, and none brings the program down."""

import struct
import zlib
from io import BytesIO

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from app.problems import BadInput
from app.scanning.photographs import open_photo


def a_file(kind: str, size: tuple[int, int] = (90, 60), mode: str = "RGB", **more: object) -> bytes:
    out = BytesIO()
    Image.linear_gradient("L").resize(size).convert(mode).save(out, kind, **more)
    return out.getvalue()


def moving(kind: str) -> bytes:
    first, *others = (Image.new("RGB", (20, 20), (n, n, n)) for n in (10, 90, 200))
    out = BytesIO()
    first.save(out, kind, save_all=True, append_images=others)
    return out.getvalue()


def png_that_claims(width: int, height: int) -> bytes:
    """A few bytes whose head says that the picture is huge."""
    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(
            ">I", zlib.crc32(kind + data))
    head = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    return (b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head)
            + chunk(b"IDAT", zlib.compress(bytes(10_000))) + chunk(b"IEND", b""))


JPEG, PNG = a_file("JPEG"), a_file("PNG")


@pytest.mark.parametrize("content", [
    JPEG, PNG, a_file("WEBP"), a_file("PNG", mode="RGBA"), a_file("PNG", mode="P"),
    a_file("PNG", mode="1"), a_file("PNG", mode="I;16"), a_file("JPEG", mode="CMYK"),
    a_file("JPEG", progressive=True), a_file("JPEG", mode="L")])
def test_every_usual_kind_of_picture_opens_in_grey(content: bytes) -> None:
    photo = open_photo(content)
    assert (photo.size, photo.grey.mode) == ((90, 60), "L")


def test_what_is_clear_in_a_picture_is_paper() -> None:
    out = BytesIO()
    Image.new("RGBA", (4, 4), (0, 0, 0, 0)).save(out, "PNG")
    assert open_photo(out.getvalue()).grey.getpixel((1, 1)) == 255


def test_a_heic_photograph_opens_where_its_reader_is_there() -> None:
    heif = pytest.importorskip("pillow_heif", reason="no reader of HEIC for this Python")
    heif.register_heif_opener()
    assert open_photo(a_file("HEIF", (96, 64))).size == (96, 64)
    with pytest.raises(BadInput, match="damaged or was cut off"):
        open_photo(a_file("HEIF", (96, 64))[:300])


@pytest.mark.parametrize(("turned", "size"), [(1, (90, 60)), (3, (90, 60)), (6, (60, 90)),
                                              (8, (60, 90)), (77, (90, 60))])
def test_a_photograph_is_turned_as_the_camera_says(turned: int, size: tuple[int, int]) -> None:
    notes = Image.Exif()
    notes[0x0112] = turned
    assert open_photo(a_file("JPEG", exif=notes)).size == size


@pytest.mark.filterwarnings("ignore:Corrupt EXIF data")
def test_a_cameras_note_that_is_nonsense_turns_nothing() -> None:
    assert open_photo(a_file("JPEG", exif=b"Exif\x00\x00MM\x00*nonsense")).size == (90, 60)


@pytest.mark.parametrize(("content", "said"), [
    (b"", "The file is empty"),
    (b"%PDF-1.7 and more", "This file is a PDF"),
    (b"GIF89a", "no photograph that can be opened"),
    (moving("GIF"), "no photograph that can be opened"),
    (moving("PNG"), "a moving picture"),
    (moving("WEBP"), "a moving picture"),
    (b"\x00" * 500, "no photograph that can be opened"),
    (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "no photograph that can be opened"),
    (JPEG[:len(JPEG) // 2], "damaged or was cut off"),
    (JPEG[:3], "damaged or was cut off"),
    (PNG[:60], "damaged or was cut off"),
    (png_that_claims(60_000, 60_000), "more than 120 million dots"),
    (png_that_claims(11_000, 11_000), "more than 120 million dots"),
    (png_that_claims(100_000, 1), "damaged or was cut off"),
    (png_that_claims(0, 5), "damaged or was cut off"),
    (bytes(60_000_001), "larger than 60 MB"),
])
def test_what_is_wrong_with_a_file_is_said_with_what_to_do(content: bytes, said: str) -> None:
    with pytest.raises(BadInput, match=said) as told:
        open_photo(content)
    assert told.value.next_step.endswith(".")


@pytest.mark.filterwarnings("ignore::UserWarning:PIL")
@settings(max_examples=150, deadline=None)
@given(st.sampled_from([JPEG, PNG, a_file("WEBP")]), st.data())
def test_no_damage_to_a_file_is_more_than_a_sentence(whole: bytes, data: st.DataObject) -> None:
    broken = bytearray(whole[:data.draw(st.integers(0, len(whole)))])
    for _ in range(data.draw(st.integers(0, 8))):
        if broken:
            broken[data.draw(st.integers(0, len(broken) - 1))] = data.draw(st.integers(0, 255))
    assert outcome(bytes(broken)) in ("L", "a sentence")


def outcome(content: bytes) -> str:
    """How the picture came out, or that it was told in a sentence with what to do."""
    try:
        return open_photo(content).grey.mode
    except BadInput as said:
        return "a sentence" if said.what and said.next_step else "no words"
