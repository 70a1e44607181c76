"""Stops of a trail, made by hand."""

from dataclasses import dataclass

from app.window.look.yarn import Certainty


@dataclass(frozen=True, slots=True)
class Station:
    """One stop; all is known of it where nothing else is said."""

    kind: str
    code: str
    count: str = ""
    certainty: str = Certainty.KNOWN
    note: str = ""
    held: str = ""
    here: bool = False
    link: str = ""
