"""Forgiving entry of codes that people type, read from a photo or hear on the telephone.

Only for typing: what a scanner sends is taken as it is. Each answer has the right check and is an
offer; whoever asks keeps the codes that exist, and a person chooses.
"""

from collections.abc import Iterator, Sequence
from itertools import combinations, product

from app.calculations.codes import (
    DIGITS,
    Code,
    bare_characters,
    check_character,
    check_place,
    code_of,
    places,
)
from app.problems import BadInput

UNREADABLE = "?"
MOST_UNREADABLE = 4

_LOOKS_OR_SOUNDS_LIKE = {
    **dict.fromkeys("OQ", "0"),
    "D": "0T",
    **dict.fromkeys("IL", "1"),
    "Z": "2",
    "S": "5F",
    "G": "6",
    "B": "8",
    **dict.fromkeys("AJ", "K"),
    "N": "M",
    **dict.fromkeys("UV", "WY"),
    **dict.fromkeys("CEP", "T"),
}


def readings(typed: str) -> tuple[Code, ...]:
    """Every code the typed characters may stand for, by look or by sound."""
    bare = bare_characters(typed)
    return _codes_among(
        [_may_stand_for(c, allowed) for c, allowed in _placed(bare)],
    )


def fits(pattern: str) -> tuple[Code, ...]:
    """Every code that fits what could be read, with `?` for each character that could not.

    Raises BadInput when so much is unreadable that the answer would help nobody.
    """
    bare = bare_characters(pattern)
    if bare.count(UNREADABLE) > MOST_UNREADABLE:
        raise BadInput(
            f"Too much of {pattern.strip()} is unreadable: with {bare.count(UNREADABLE)} characters"
            " missing, too many codes fit.",
            "Search by colourway, base or customer instead.",
        )
    return _codes_among(
        [
            allowed if c == UNREADABLE else _may_stand_for(c, allowed)
            for c, allowed in _placed(bare)
        ],
    )


def near(typed: str) -> tuple[Code, ...]:
    """Every code that one wrong character or one swap of two would turn into what was typed."""
    bare = bare_characters(typed)
    choices = [_may_stand_for(c, allowed) or c for c, allowed in _placed(bare)]
    spellings = {bare, *map("".join, product(*choices))}
    slips = {slip for spelling in spellings for slip in _one_slip_from(spelling)}
    found = {code for slip in slips if (code := code_of(slip))}
    return tuple(sorted(found - set(readings(typed)), key=str))


def _placed(bare: str) -> Iterator[tuple[str, str]]:
    """Each typed character with what a code may have at its place; none if no code is so long."""
    return zip(bare, places(len(bare)), strict=False)


def _may_stand_for(typed: str, allowed: str) -> str:
    if typed in DIGITS:
        return typed if typed in allowed else ""
    alike = set(_LOOKS_OR_SOUNDS_LIKE.get(typed, typed))
    return "".join(c for c in allowed if alike & set(_LOOKS_OR_SOUNDS_LIKE.get(c, c)))


def _codes_among(choices: Sequence[str]) -> tuple[Code, ...]:
    if not choices:
        return ()
    at = check_place(len(choices))
    found = set()
    for body in map("".join, product(*choices[:at])):
        check = check_character(body)
        if check in choices[at]:
            ends = map("".join, product(*choices[at + 1 :]))
            found |= {code_of(body + check + end) for end in ends}
    return tuple(sorted(filter(None, found), key=str))


def _one_slip_from(text: str) -> Iterator[str]:
    for place, allowed in enumerate(places(len(text))):
        for character in allowed:
            yield text[:place] + character + text[place + 1 :]
    for a, b in combinations(range(len(text)), 2):
        yield text[:a] + text[b] + text[a + 1 : b] + text[a] + text[b + 1 :]
