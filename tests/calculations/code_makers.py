"""Ways to make codes for tests: any code of any kind, and the lots of one week."""

from itertools import product

from hypothesis import strategies as st

from app.calculations.codes import (
    CHARACTERS,
    LETTER_OF_KIND,
    Code,
    Kind,
    check_character,
    numbered,
)


def lot(body: str) -> Code:
    """The lot with these six characters."""
    return Code(Kind.LOT, body + check_character(body))


def lots_of_week(start: str) -> list[Code]:
    """All 361 lots of a week given as `2619`, those with a digit for the fifth too."""
    return [lot(f"{start}{fifth}{sixth}") for fifth, sixth in product(CHARACTERS, CHARACTERS)]


_pairs = st.text(CHARACTERS, min_size=2, max_size=2)
lot_codes = st.builds(
    lambda year, week, pair: lot(f"{year:02}{week:02}{pair}"),
    st.integers(0, 99),
    st.integers(1, 52),
    _pairs,
)
skein_codes = st.builds(
    lambda code, pair: Code(Kind.SKEIN, f"{code.text}-{pair}"), lot_codes, _pairs
)
numbered_codes = st.builds(
    numbered, st.sampled_from(sorted(LETTER_OF_KIND)), st.integers(0, 999_999)
)
all_codes = st.one_of(lot_codes, skein_codes, numbered_codes)
