"""What a photograph of tags says: each code that was read, and the thing of the book behind it."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from sqlalchemy import Connection

from app.problems import BadInput
from app.scanning.how_known import BASIS_OF, Came
from app.scanning.photo_codes import Clock, Seen, Sought, codes_on
from app.scanning.photographs import open_photo
from app.scanning.resolve import Resolution, resolve

_ASK = ("Ask for a photograph of the tag laid flat, in daylight, from closer by, the square code "
        "sharp; or type what is readable of the code, with ? for what is not.")


@dataclass(frozen=True, slots=True)
class Shown:
    """One code on a photograph, what it stands for, and how a link to it is known."""

    seen: Seen
    answer: Resolution
    basis: str = BASIS_OF[Came.PHOTO]


@dataclass(frozen=True, slots=True)
class PhotoAnswer:
    """What was read of a photograph, from the top; nothing is chosen by itself."""

    shown: tuple[Shown, ...]
    sentence: str
    next_step: str = ""


def read_photo(content: bytes, clock: Clock) -> Sought:
    """The codes on a photograph in a file's bytes. Raises BadInput with what is wrong with it.

    Needs no book and runs for seconds: the caller does it off the screen's thread.
    """
    return codes_on(open_photo(content), clock)


@dataclass(frozen=True, slots=True)
class SeveralPhotos:
    """What was read of photographs that came together, and why some could not be opened."""

    sought: Sought
    count: int
    problems: tuple[BadInput, ...] = ()


def read_photos(
    contents: Sequence[bytes], clock: Clock, told: Callable[[int, int], None]
) -> SeveralPhotos:
    """Photographs one after the other; a code that is on two of them counts once.

    `told` hears how many of how many are read.
    """
    found: dict[str, Seen] = {}
    problems: list[BadInput] = []
    hurried = False
    for number, content in enumerate(contents):
        told(number, len(contents))
        try:
            sought = read_photo(content, clock)
        except BadInput as problem:
            problems.append(problem)
        else:
            hurried = hurried or sought.hurried
            for seen in sought.codes:
                found.setdefault(seen.text, seen)
    return SeveralPhotos(Sought(tuple(found.values()), hurried), len(contents), tuple(problems))


def what_it_shows(
    connection: Connection, sought: Sought, wanted: frozenset[str] = frozenset()
) -> PhotoAnswer:
    """Each code by the grammar and the book, as a scan is: what was read is never mended."""
    shown = tuple(Shown(seen, resolve(connection, seen.text, False, wanted))
                  for seen in sought.codes if seen.text.strip())
    hurried = " The time was up before every way to look was tried." if sought.hurried else ""
    if not shown:
        return PhotoAnswer((), f"No code could be read on this photograph.{hurried}", _ASK)
    return PhotoAnswer(shown, f"{_told(shown)}{hurried}", _next_step(shown))


def _told(shown: Sequence[Shown]) -> str:
    count = "1 code was" if len(shown) == 1 else f"{len(shown)} codes were"
    if len(shown) == 1:
        return f"{count} read. {shown[0].answer.sentence}"
    known = sum(one.answer.found is not None for one in shown)
    return f"{count} read, {known if known < len(shown) else 'all'} of them in this book."


def _next_step(shown: Sequence[Shown]) -> str:
    if not any(one.answer.found or one.answer.choices for one in shown):
        return shown[0].answer.next_step if len(shown) == 1 else _ASK
    return ("A photograph shows a tag, not the yarn: what is saved from it is as stated. Scan the "
            "tag itself when it comes.")
