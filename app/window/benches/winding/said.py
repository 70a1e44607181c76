"""What is typed instead of scanned: numbers of cones and discs; and the plates of this bench."""

import re

from app.calculations.codes import Code, Kind, numbered

_NAMED = re.compile(r"(cone|disc|c|d)[\s·-]*0*(\d{1,6})", re.IGNORECASE)


def code_said(words: str) -> Code | None:
    """`C114` or `cone 114` is that cone, `D31` or `disc 31` that disc; else nothing is meant."""
    found = _NAMED.fullmatch(words.strip())
    if found is None:
        return None
    kind = Kind.CONE if found[1][0] in "cC" else Kind.DISC
    return numbered(kind, int(found[2]))
