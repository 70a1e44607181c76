"""New codes of lots and marks of tags: drawn by chance, so that they betray no count."""

from collections.abc import Collection
from datetime import date
from itertools import product
from random import Random

from app.calculations.codes import CHARACTERS, LETTERS, Code, Kind, check_character, code_of
from app.calculations.old_lot_codes import reads_as_another
from app.problems import Refused

BUSY_WEEK = 150  # lots after which the fifth character may be a digit too


def draw_lot_code(year: int, week: int, taken: Collection[str], random: Random) -> Code:
    """A lot code for a bath begun in this ISO week, drawn so that it betrays no count of lots.

    `taken` holds every lot code ever given, of this week at least, struck ones too.
    """
    if not 2000 <= year <= 2099:
        raise ValueError(f"a lot code cannot say the year {year}")
    date.fromisocalendar(year, week, 1)
    start = f"{year % 100:02}{week:02}"
    used = {code[4:6] for code in taken if code.startswith(start)}
    fifth = LETTERS if len(used) < BUSY_WEEK else CHARACTERS
    free = [pair for pair in map("".join, product(fifth, CHARACTERS)) if pair not in used]
    if not free:
        raise Refused(
            f"All {len(used)} lot codes of week {week} have been given; no code was drawn.",
            "Keep the bath without a code and ask the owner which week's code it may take.",
        )
    body = start + random.choice(free)
    return Code(Kind.LOT, body + check_character(body))


def draw_mark(lot: str, taken: Collection[str], random: Random) -> Code:
    """A mark for one more skein of the lot; `taken` holds the lot's marks, like `2615R6F-7M`.

    Of an old lot's marks none is drawn that a scanner's text could be taken for another code by.
    """
    pairs, ours = map("".join, product(CHARACTERS, CHARACTERS)), code_of(lot) is not None
    free = [text for pair in pairs
            if (text := f"{lot}-{pair}") not in taken and (ours or not reads_as_another(text))]
    if not free:
        raise Refused(
            f"All 361 marks of lot {lot} have been given; no mark was drawn.",
            "Write the lot code on these tags by hand and tell the owner.",
        )
    return Code(Kind.SKEIN, random.choice(free))
