"""Codes as they are said on the telephone, written down: `two six, one nine, K four four`."""

import re

from app.calculations.codes import places
from app.calculations.typed_codes import UNREADABLE

_SAID = {
    "zero": "0", "oh": "0", "nought": "0", "one": "1", "two": "2", "three": "3", "four": "4",
    "five": "5", "six": "6", "seven": "7", "eight": "8", "nine": "9",
    "eff": "F", "ef": "F", "aitch": "H", "kay": "K", "em": "M", "ar": "R", "tee": "T", "ex": "X",
    "why": "Y",
    "something": UNREADABLE, "unreadable": UNREADABLE,
}
_BETWEEN = ("dot", "point", "dash", "and", "space")
_TIMES = {"double": 2, "triple": 3}


def written_down(text: str) -> str:
    """The characters of a code that was spelled in words; any other text as it stands.

    Taken for a code only where every word is a character's name and a code may be so long:
    a colourway called “Seven” stays a colourway.
    """
    words = re.findall(r"[^\s,;]+", text.casefold().replace("double you", "w").replace(
        "double u", "w").replace("double-u", "w"))
    characters, times, spelled = "", 1, False
    for word in words:
        if word in _TIMES:
            times = _TIMES[word]
        elif word not in _BETWEEN:
            one = _SAID.get(word, word.upper() if len(word) == 1 else "")
            if not one:
                return text
            spelled = spelled or word in _SAID
            characters, times = characters + one * times, 1
    return characters if spelled and places(len(characters)) else text
