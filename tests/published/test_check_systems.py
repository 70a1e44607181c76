"""Our check character beside the systems of ISO/IEC 7064, which are worked here a second time.

Ours is none of them: they want the alphabet 0 to 9 or 0 to Z and one or two characters of their
own, and a lot has nineteen characters of which the check is one. So no row is a code of ours; what
the rows show is that the arithmetic here is right, and with it ours is compared for the errors
that it must give away.
"""

from collections.abc import Callable, Iterator
from random import Random
from string import ascii_uppercase, digits

import pytest

from app.calculations.codes import CHARACTERS, check_character, read
from app.problems import BadInput
from tests.published.published_values import rows_of

ROWS = rows_of("iso7064")
ALL = digits + ascii_uppercase


def pure(body: str, modulus: int, radix: int, alphabet: str) -> str:
    """A pure system with one check: the weighted sum of all, check included, is 1."""
    total = 0
    for character in body:
        total = (total + alphabet.index(character)) * radix % modulus
    return alphabet[(1 - total) % modulus]


def hybrid(body: str, modulus: int, alphabet: str) -> str:
    """A hybrid system, modulo one more than the alphabet is long and the alphabet itself."""
    held = modulus
    for character in body:
        held = (held + alphabet.index(character)) % modulus or modulus
        held = held * 2 % (modulus + 1)
    return alphabet[(1 - held) % modulus]


def in_two(body: str, modulus: int, radix: int) -> str:
    """A pure system with two checks, of which the first is worth the radix."""
    total = 0
    for character in body:
        total = (total * radix + ALL.index(character)) % modulus
    check = modulus + 1 - total * radix * radix % modulus
    return ALL[check // radix] + ALL[check % radix]


def of_digits(body: str) -> str:
    """MOD 97-10 over letters: each is written as its number first."""
    return in_two("".join(str(ALL.index(character)) for character in body), 97, 10)


SYSTEMS: dict[str, Callable[[str], str]] = {
    "MOD 11-2": lambda body: pure(body, 11, 2, digits + "X"),
    "MOD 37-2": lambda body: pure(body, 37, 2, ALL + "*"),
    "MOD 11-10": lambda body: hybrid(body, 10, digits),
    "MOD 37-36": lambda body: hybrid(body, 36, ALL),
    "MOD 97-10": of_digits,
    "MOD 1271-36": lambda body: in_two(body, 1271, 36),
}


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['system']} {row['whole']}")
def test_the_second_working_gives_the_published_check(row: dict[str, str]) -> None:
    assert SYSTEMS[row["system"]](row["body"]) == row["check"]


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["whole"])
def test_no_number_of_these_systems_is_read_as_a_code_of_ours(row: dict[str, str]) -> None:
    with pytest.raises(BadInput):
        read(row["whole"])


def like_mod_11_2(body: str) -> str:
    """The pure system with our nineteen characters: 2 runs through all residues of 19."""
    return pure(body, len(CHARACTERS), 2, CHARACTERS)


def slips(whole: str) -> Iterator[str]:
    """Every other character at every place, and every swap of two that differ."""
    for at, was in enumerate(whole):
        yield from (whole[:at] + other + whole[at + 1:] for other in CHARACTERS if other != was)
    for one in range(len(whole)):
        for two in range(one + 1, len(whole)):
            swapped = list(whole)
            swapped[one], swapped[two] = whole[two], whole[one]
            if whole[one] != whole[two]:
                yield "".join(swapped)


@pytest.mark.parametrize("check", [check_character, like_mod_11_2], ids=["ours", "ISO 7064"])
def test_ours_gives_away_every_slip_that_a_system_of_the_standard_does(
    check: Callable[[str], str],
) -> None:
    """Of a lot with its check: each wrong character, and each swap of any two."""
    random, tried = Random(7064), 0
    for _ in range(60):
        body = "".join(random.choices(CHARACTERS, k=6))
        for slip in slips(body + check(body)):
            assert check(slip[:6]) != slip[6]
            tried += 1
    assert tried > 60 * 7 * 18
