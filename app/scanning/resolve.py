"""From what was scanned or typed to a thing of the book; nothing is ever chosen by itself."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, select

from app.calculations.codes import (
    KIND_OF_LETTER,
    LOT_LENGTH,
    SKEIN_LENGTH,
    Code,
    Kind,
    bare_characters,
    code_of,
    is_shop_bar_code,
    is_web_address,
    numbered,
    places,
    read,
)
from app.calculations.moments import moment_words
from app.calculations.spoken_codes import written_down
from app.calculations.typed_codes import UNREADABLE, fits, near, readings
from app.lookups.things import Found, by_beginning, by_codes, by_name, of_lot
from app.lookups.weighings import weigh_out
from app.problems import BadInput
from app.records import PlateStay
from app.scanning.printed_head import printed_head
from app.scanning.saying import a_kind, kinds_wanted, quoted, that_is, void_words

LEAST_TYPED = 2
MOST_LISTED = 20
_LONGEST = 200
_AT_ONCE = 500  # codes that one question takes
_NUMBER = re.compile(r"([A-Z]?)0*(\d{1,6})")


@dataclass(frozen=True, slots=True)
class Resolution:
    """What a text stands for: one thing, or things of which a person chooses, and why."""

    found: Found | None = None
    choices: tuple[Found, ...] = ()
    sentence: str = ""
    next_step: str = ""


def resolve(
    connection: Connection, text: str, typed: bool, wanted: frozenset[str] = frozenset()
) -> Resolution:
    """The thing a text stands for; a scan is taken as it is, what was typed is forgiven.

    `wanted` names the kinds that make sense at this bench; anything else is told, not taken.
    """
    words = written_down(_printable(text)) if typed else _printable(text)
    if not words:
        return Resolution(sentence="Nothing was read.", next_step="Scan or type it once more.")
    head = printed_head(connection, words)
    if head is not None:
        return Resolution(sentence=head[0], next_step=head[1])
    answer = _exactly(connection, words, typed)
    if answer is None:
        answer = _forgiving(connection, words) if typed else _why_not(words)
    return _of_kind(answer, wanted)


def resolve_many(
    connection: Connection, texts: Sequence[str], wanted: frozenset[str] = frozenset()
) -> tuple[Resolution, ...]:
    """Each of a pasted list with its own sentence; what stands in it twice counts once."""
    answers: list[Resolution] = []
    first: dict[str, int] = {}
    for place, text in enumerate(texts, 1):
        answer = resolve(connection, text, True, wanted)
        if answer.found is not None:
            before = first.setdefault(answer.found.code, place)
            if before != place:
                answer = Resolution(sentence=f"{answer.found.shown} stands in this list already, "
                                             f"at place {before}: it counts once.")
        answers.append(answer)
    return tuple(answers)


def _exactly(connection: Connection, text: str, typed: bool) -> Resolution | None:
    """The thing with this very code; an old lot's code stands in the book as it stood on it."""
    bare = bare_characters(text)
    code = code_of(bare)
    spellings = [text.upper(), bare, *([code.text] if code else [])]
    if typed:
        spellings.append(f"{bare[:-2]}-{bare[-2:]}")
    things = _existing(connection, spellings)
    if things and not typed:
        things = (min(things, key=lambda thing: spellings.index(thing.code)),)
    if len(things) > 1:
        return _several(things, f"{quoted(text)} may be one of {len(things)} things.")
    if things:
        return _found(connection, things[0], typed)
    return _not_in_book(connection, code) if code else None


def _forgiving(connection: Connection, text: str) -> Resolution:
    """Typed, read from a photo or heard: every existing reading is an offer."""
    if UNREADABLE in text:
        return _pattern(connection, text)
    codes = readings(text)
    things = _existing(connection, map(str, codes))
    if len(things) == 1:
        return _found(connection, things[0], typed=True)
    if things:
        return _several(things, f"{quoted(text)} may be one of {len(things)} codes.")
    listed = _listed(connection, text)
    if listed:
        more = " The first are shown." if len(listed) >= MOST_LISTED else ""
        return _several(listed, f"{_count(listed)} in the book for {quoted(text)}.{more}")
    if codes:
        return _not_in_book(connection, codes[0])
    slips = _one_slip_away(connection, text)
    if slips:
        return _several(slips, _why_not(text).sentence)
    return _nothing(text)


def _found(connection: Connection, thing: Found, typed: bool) -> Resolution:
    if thing.void:
        return Resolution(thing, sentence=void_words(thing), next_step="Throw this tag away.")
    if thing.kind == Kind.DISC:
        return Resolution(thing, sentence=_disc_words(connection, thing))
    neighbours = _neighbours(connection, thing.code) if typed else ()
    if neighbours:
        return Resolution(thing, neighbours, f"{that_is(thing)} A mark has no check of its own.",
                          "Compare with its neighbours in the list before you go on.")
    return Resolution(thing, sentence=that_is(thing))


def _not_in_book(connection: Connection, code: Code) -> Resolution:
    """A code with everything right that stands for nothing here."""
    if code.kind is Kind.SKEIN and code.lot:
        choices = (*_existing(connection, [code.lot]), *_neighbours(connection, code.text))
        if choices:
            return Resolution(
                choices=choices, next_step=_CHOOSE,
                sentence=f"Lot {code.grouped[:-3]} has no tag {code.mark}: it was never printed.")
    out = weigh_out(connection, code.number or 0) if code.kind is Kind.SHEET else None
    if out is not None:
        return Resolution(sentence=f"{code.grouped} is the sheet of weigh-out {out.id}.",
                          next_step="Scan it at Weighing to take that up again.")
    return Resolution(
        sentence=f"{code.grouped} is the code of {a_kind(code.kind)} that is not in this book.",
        next_step="Read it once more, or look whether it belongs to another book.")


def _pattern(connection: Connection, text: str) -> Resolution:
    """Every code of the book that fits what could be read."""
    try:
        codes = [code.text for code in fits(text)]
    except BadInput as why:
        return Resolution(sentence=why.what, next_step=why.next_step)
    things = (*_existing(connection, codes), *_old_that_fit(connection, text))
    if not things:
        return Resolution(sentence=f"No code in the book fits {quoted(text)}.",
                          next_step="Ask for a flat photo, or search by colourway or base.")
    return _several(things, f"{_count(things)} in the book for {quoted(text)}.")


def _old_that_fit(connection: Connection, text: str) -> tuple[Found, ...]:
    """Codes from before the book have no check: they are compared as they stand."""
    bare = bare_characters(text)
    start = bare.partition(UNREADABLE)[0]
    if len(start) < LEAST_TYPED:
        return ()
    pattern = re.compile(re.escape(bare).replace(re.escape(UNREADABLE), "."))
    return tuple(thing for thing in by_beginning(connection, start, _AT_ONCE)
                 if code_of(bare_characters(thing.code)) is None
                 and pattern.fullmatch(bare_characters(thing.code)))


def _listed(connection: Connection, text: str) -> tuple[Found, ...]:
    """What begins so, has this number, or is named so."""
    bare = bare_characters(text)
    if len(bare) < LEAST_TYPED:
        return ()
    number = _NUMBER.fullmatch(bare)
    things = (
        *(_with_number(connection, number[1], int(number[2])) if number else ()),
        *by_beginning(connection, bare, MOST_LISTED),
        *by_name(connection, " ".join(text.split()), MOST_LISTED),
    )
    return tuple(dict.fromkeys(things))[:MOST_LISTED]


def _with_number(connection: Connection, letter: str, number: int) -> tuple[Found, ...]:
    """Things numbered so: of the letter's kind, or of any where the letter is no kind's."""
    kinds = [KIND_OF_LETTER[letter]] if letter in KIND_OF_LETTER else KIND_OF_LETTER.values()
    return _existing(connection, (numbered(kind, number).text for kind in kinds))


def _one_slip_away(connection: Connection, text: str) -> tuple[Found, ...]:
    bare = bare_characters(text)
    found = _existing(connection, map(str, near(text)))
    if not found and len(bare) == SKEIN_LENGTH:
        found = _existing(connection, map(str, near(bare[:LOT_LENGTH])))
    return found


def _neighbours(connection: Connection, mark: str) -> tuple[Found, ...]:
    """Tags of the same lot whose marks one slip would turn into this one."""
    code = code_of(bare_characters(mark))
    if code is None or code.mark is None:
        return ()
    return tuple(
        tag for lot in _existing(connection, [code.text[:LOT_LENGTH]])
        for tag in of_lot(connection, lot.id)
        if tag.code != mark and _one_slip(tag.code[-2:], code.mark)
    )


def _one_slip(mark: str, other: str) -> bool:
    return mark == other[::-1] or (mark[0] == other[0]) != (mark[1] == other[1])


def _existing(connection: Connection, codes: Iterable[str]) -> tuple[Found, ...]:
    wanted = list(dict.fromkeys(codes))
    return tuple(
        thing for at in range(0, len(wanted), _AT_ONCE)
        for thing in by_codes(connection, wanted[at : at + _AT_ONCE])
    )


def _disc_words(connection: Connection, disc: Found) -> str:
    """What a disc hangs on now, and since when that is another cord than before."""
    stays = connection.execute(
        select(PlateStay.since, PlateStay.until)
        .where(PlateStay.plate == disc.id, PlateStay.struck.is_(None))
        .order_by(PlateStay.since.desc()).limit(2)
    ).all()
    name = f"Disc {disc.code[1:-1]}"
    if not stays:
        return f"{name} was never tied on."
    if stays[0].until is not None:
        return f"{name} hangs on nothing since {moment_words(stays[0].until)}."
    since = f"since {moment_words(stays[0].since)}"
    return (f"{name} is tied on {since}." if len(stays) == 1
            else f"{name} hangs on another bundle than before, {since}.")


def _why_not(text: str) -> Resolution:
    """Why this is no code of the studio's."""
    try:
        return Resolution(sentence=f"{read(text).grouped} is not in this book.")
    except BadInput as why:
        return Resolution(sentence=why.what, next_step=why.next_step)


def _nothing(text: str) -> Resolution:
    """For what was meant as a code, what is wrong with it; for words, that nothing is called so."""
    bare = bare_characters(text)
    like_a_code = places(len(bare)) and any(c.isdigit() for c in bare)
    if like_a_code or is_shop_bar_code(bare) or is_web_address(text):
        return _why_not(text)
    return Resolution(
        sentence=f"Nothing in the book is called {quoted(text)}, and no code begins so.",
        next_step="Type a code or a part of one, a colourway or a base.")


def _of_kind(answer: Resolution, wanted: frozenset[str]) -> Resolution:
    if not wanted:
        return answer
    if answer.found is not None and answer.found.kind not in wanted:
        return Resolution(sentence=that_is(answer.found), next_step=kinds_wanted(wanted))
    choices = tuple(thing for thing in answer.choices if thing.kind in wanted)
    next_step = answer.next_step if len(choices) == len(answer.choices) else kinds_wanted(wanted)
    return Resolution(answer.found, choices, answer.sentence, next_step)


_CHOOSE = "Choose the one that is meant; nothing was chosen for you."


def _several(things: Sequence[Found], sentence: str) -> Resolution:
    return Resolution(choices=tuple(things), sentence=sentence, next_step=_CHOOSE)


def _count(things: Sequence[Found]) -> str:
    return "1 thing" if len(things) == 1 else f"{len(things)} things"


def _printable(text: str) -> str:
    """Without what no keyboard types; so long that no code or name is cut."""
    return "".join(c for c in text if c.isprintable() or c.isspace()).strip()[:_LONGEST]
