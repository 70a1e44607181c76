"""How a found thing is named in a sentence."""

from app.calculations.codes import shown
from app.lookups.things import Found
from app.problems import NotFound

_SHORT = 40
_A = {
    "lot": "a dye lot", "skein": "a tagged skein", "tag": "a printed tag that hangs on no skein",
    "action": "an action plate", "sheet": "a weigh-out sheet", "vessel": "a tub or machine",
    "board": "a tray board",
}


def a_kind(kind: str) -> str:
    """'a dye lot', 'a cone': a kind of thing with its article."""
    return _A.get(kind, f"a {kind}")


def that_is(thing: Found) -> str:
    """'C·0114·F is a cone: Tarnfield 4-ply.'"""
    words = f": {thing.words}" if thing.words else ""
    return f"{thing.shown} is {a_kind(thing.kind)}{words}."


def no_such_plate(code: str, kind: str) -> NotFound:
    """A code with everything right on a disc or plate that was never made in this book."""
    return NotFound(f"{shown(code)} is no {kind} in the book.",
                    f"Make its plate at the Desk, or scan another {kind}.")


def kinds_wanted(wanted: frozenset[str]) -> str:
    """What this bench asks for, in words."""
    return f"Wanted here: {' or '.join(a_kind(kind) for kind in sorted(wanted))}."


def void_words(tag: Found) -> str:
    """A void tag says so, and names the one that took its place or what its skein became."""
    after = f": {shown(tag.successor)} took its place" if tag.successor else ""
    went = f": its skein {tag.became}" if tag.became else ""
    return f"{tag.shown} is void{after or went}."


def quoted(text: str) -> str:
    """What was typed, cut where it would be longer than a sentence bears."""
    return f"“{text}”" if len(text) <= _SHORT else f"“{text[:_SHORT]}…”"
