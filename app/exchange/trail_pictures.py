"""The branching trail of a thing in words: on tags, in sentences, and as a picture."""

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from math import inf

from sqlalchemy import Connection

from app.calculations.codes import shown
from app.documents.trail_picture import Picture, Tag, Way, set_picture
from app.documents.yarn import Certainty
from app.exchange.tracing import KIND_WORDS, STATE_WORDS
from app.lookups.certainty import KNOWN, NOT_KNOWN, PARTLY, POOL
from app.lookups.graph import Graph, Knot, graph
from app.lookups.graph_centre import centre_of
from app.lookups.graph_names import Named
from app.lookups.graph_sure import Sure
from app.lookups.graph_web import Centre, kind_of, number_of
from app.lookups.recent import head
from app.lookups.studio import setting
from app.lookups.things import Found

CERTAINTY = {KNOWN: Certainty.KNOWN, PARTLY: Certainty.PARTLY, POOL: Certainty.POOL,
             NOT_KNOWN: Certainty.UNKNOWN}
_SIDES = (("from", "Where from"), ("here", "In the middle"), ("to", "Where to"))
_MANY = {"maker's batch": "makers' batches", "delivery": "deliveries", "bath": "baths",
         "opening stock": "opening stocks", "wound": "wound cords", "mixed on a cord":
         "mixed cords", "gathered": "gathered cords", "part of a cord": "parts of cords",
         "wash": "wash loads", "steamer": "steamer runs", "one of these": "groups of candidates"}


@dataclass(frozen=True, slots=True)
class Drawn:
    """The branching trail of a thing, ready to be drawn and read aloud."""

    graph: Graph
    picture: Picture
    title: str
    """'The trail of cone C·0114·F'."""
    together: str
    """How much there is of it now, and how sure."""
    centre: Centre
    at: datetime
    studio: str
    entry: int
    journal_head: str

    @property
    def knots(self) -> Mapping[str, Knot]:
        """The stations by their keys."""
        return {knot.key: knot for knot in self.graph.knots}


def drawn(
    connection: Connection, middle: Found | Centre, at: datetime,
    opened: frozenset[str] = frozenset(),
) -> Drawn | None:
    """The branching trail of what was found, or of a station of another; none where it has none."""
    if isinstance(middle, Centre):
        centre, title = middle, None
    else:
        centre_found = centre_of(connection, middle, at)
        if centre_found is None:
            return None
        centre, title = centre_found, title_of(middle)
    one = graph(connection, centre, title, opened)
    entry, journal_head = head(connection)
    return Drawn(one, picture(one), f"The trail of {called(one.here)}", _together(one), centre, at,
                 setting(connection, "name"), entry, journal_head)


def title_of(found: Found) -> Named:
    """What the station in the middle is called."""
    return Named(KIND_WORDS.get(found.kind, found.kind), shown(found.code), found.words, found.code)


def _together(one: Graph) -> str:
    """'14 of these 20 skeins came of it; which ones is not certain.'"""
    sure = one.together
    if not sure.of:
        return "Nothing came of it yet."
    if one.here.count == sure.of == 1:
        return ""  # it is the skein itself
    if sure.least == sure.most == sure.of:
        return "1 skein came of it." if sure.of == 1 else f"{sure.of:,} skeins came of it."
    span = str(sure.least) if sure.least == sure.most else f"{sure.least:,} to {sure.most:,}"
    return f"{span} of these {sure.of:,} skeins came of it; which ones is not certain."


def picture(graph: Graph, width: float = inf) -> Picture:
    """The trail with its words set and everything in its place, within this width if it can."""
    return set_picture(
        [_tag(knot) for knot in graph.knots],
        [Way(one.start, one.end, CERTAINTY[one.sure.word]) for one in graph.strands],
        graph.here.key, width)


def sentences(graph: Graph) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """The same content to be read: for each side its stations, and where each leads."""
    names = {knot.key: called(knot) for knot in graph.knots}
    leads: dict[str, list[str]] = defaultdict(list)
    for strand in graph.strands:
        how = "" if strand.sure.word == KNOWN else f" ({sure_words(strand.sure)})"
        leads[strand.start].append(f"{names[strand.end]}{how}")
    return tuple(
        (title, tuple(f"{spoken(knot)}{_led(leads[knot.key])}" for knot in graph.knots
                      if knot.side == side))
        for side, title in _SIDES if any(knot.side == side for knot in graph.knots))


def spoken(knot: Knot) -> str:
    """One station in a sentence: 'Pile 3 Apr: 6 skeins, one of a pool: 0 to 6 of 6. Below a HOLD'.
    """
    said = [note.replace("|", " ") for note in _notes(knot)]
    if knot.sure.word == KNOWN and knot.side != "here" and not sure_words(knot.sure):
        said.append("known")
    hold = {"here": " HOLD was put on it.", "below": " It is below a HOLD."}.get(
        knot.held.where, "")
    if part := _held_part(knot):
        hold = f" {part} are on HOLD."
    name = called(knot) if knot.folded or kind_of(knot.key) == "left" else (
        _by_name(knot))
    return f"{name[:1].upper()}{name[1:]}: {', '.join(said)}.{hold}" if said else f"{name}.{hold}"


def called(knot: Knot) -> str:
    """'cone C·0114·F', '8 skeins on a shelf'."""
    if knot.folded:
        return _folded(knot)
    if knot.key.startswith("left:"):
        what = f"skein {knot.named.name}" if knot.named.name else _skeins(knot)
        return f"{what}, {_what(knot)}"
    words = _by_name(knot)
    if kind_of(knot.key) == "load":
        return f"{words} (load {number_of(knot.key)})"
    return f"{words} of {_skeins(knot)}" if _what(knot) == "pile" else words


def _by_name(knot: Knot) -> str:
    """'wash load rinsing basin'; 'soak tub' where the name of the place says the step already."""
    what, name = _what(knot), knot.named.name
    return name if name.startswith(f"{what} ") else f"{what} {name}".strip()


def sure_words(sure: Sure) -> str:
    """How sure, where it is not wholly known: 'one of a pool: 6 to 7 of 12'."""
    span = str(sure.least) if sure.least == sure.most else f"{sure.least} to {sure.most}"
    of = f"{span} of {sure.of}"
    share = "" if sure.share == 1 else f"{round(sure.share * 100)} % of the metres"
    if sure.word == NOT_KNOWN:
        return "not known" if sure.least == sure.of else f"not known: {of}"
    if sure.word == POOL and sure.of == 1:
        return f"one of a pool: {round(sure.expected * 100)} in 100"
    if sure.word == POOL:
        return f"one of a pool: {of}" + (f", {share}" if share else "")
    if sure.word == PARTLY:
        return f"partly: {share}" + ("" if sure.least == sure.of else f", {of}")
    return "" if sure.least == sure.of else f"known: {of}"


def _tag(knot: Knot) -> Tag:
    name = knot.named.name or (_skeins(knot) if kind_of(knot.key) == "left" else "")
    if knot.folded:
        what, name = ("more" if knot.folded < knot.of else ""), _folded(knot)
    else:
        what = _what(knot) if name else ""
    return Tag(knot.key, what, name or _what(knot), _notes(knot),
               "·" in name, knot.side == "here", knot.held.where, bool(knot.folded))


def _notes(knot: Knot) -> tuple[str, ...]:
    """What stands below the name: a word more, how many, how sure."""
    skeins = _skeins(knot) if knot.count and not _is_leaf(knot) else ""
    places, what = knot.spread
    spread = f"{places} {what}{'' if places == 1 else 's'}" if places else ""
    sure = "" if knot.side == "here" else sure_words(knot.sure).replace(": ", ":|", 1)
    part = _held_part(knot)
    return tuple(filter(None, (knot.named.note, skeins, spread, sure, part and f"HOLD: {part}")))


def _held_part(knot: Knot) -> str:
    """'5 of 7' where a hold reaches some of them and not all."""
    held = knot.held
    some = 0 < held.reached < knot.count
    return f"{held.reached:,} of {knot.count:,}" if some else ""


def _is_leaf(knot: Knot) -> bool:
    """It is the skeins themselves, so that their count is its name."""
    return knot.key.startswith(("left:", "fold:left/")) and (
        bool(knot.folded) or knot.count == 1 or not knot.named.name)


def _what(knot: Knot) -> str:
    return STATE_WORDS.get(knot.named.kind, knot.named.kind)


def _folded(knot: Knot) -> str:
    what = _what(knot)
    if knot.key.startswith("fold:left/"):
        return f"{_skeins(knot)} {what}"
    many = what.replace("pile of", "piles of") if what.startswith("pile of") else f"{what}s"
    return f"{knot.folded:,} {_MANY.get(what, many)}"


def _skeins(knot: Knot) -> str:
    return f"{knot.count:,} {knot.put_up}{'' if knot.count == 1 else 's'}"


def _led(ends: list[str]) -> str:
    return f" Leads to {_listed(ends)}." if ends else ""


def _listed(words: list[str]) -> str:
    return " and ".join(filter(None, (", ".join(words[:-1]), words[-1])))


def sentence_lines(graph: Graph) -> Iterator[str]:
    """All sentences, one a line, under their titles."""
    for title, said in sentences(graph):
        yield title
        yield from said
