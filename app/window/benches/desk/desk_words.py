"""Counts, weights, certainty and moments as they are read at the desk."""

from collections.abc import Iterable
from datetime import datetime
from decimal import Decimal

from app.calculations.codes import Kind
from app.calculations.moments import clock_words, day_words
from app.lookups.batches import Batch
from app.lookups.certainty import KNOWN, NOT_KNOWN, POOL, Link
from app.lookups.ecru import Ecru
from app.lookups.origins import Origin, certainty_words
from app.lookups.pools import Apart, Pool
from app.window.look.icons import Icon

BY = {
    "scanned": "scanned",
    "counted": "counted",
    "recognised": "recognised by who looked",
    "matched": "matched by what was found",
    "stated": "as somebody said, not seen",
}
ICONS = {
    "cone": Icon.CONE, "disc": Icon.DISC, "jar": Icon.JAR, "pot": Icon.POT, "rail": Icon.RAIL,
    "tag": Icon.TAG, "skein": Icon.SKEIN, "lot": Icon.SKEIN, "reel": Icon.REEL,
    "kit": Icon.KIT, "vessel": Icon.POT, "steamer": Icon.POT, "shelf": Icon.COUNTER,
}
KIND_WORDS = {
    "lot": "dye lot", "skein": "tagged skein", "tag": "printed tag that hangs on no skein",
    "vessel": "tub or machine", "board": "tray board", "action": "action plate",
}


def kind_words(kind: str) -> str:
    """'dye lot', 'cone': a kind of thing as people call it."""
    return KIND_WORDS.get(kind, kind)


def plates_words(kind: Kind) -> str:
    """'discs', 'shelves': many of a kind of plate."""
    many = {Kind.SHELF: "shelves", Kind.VESSEL: "tubs and machines", Kind.BOARD: "tray boards"}
    return many.get(kind, f"{kind.value}s")


def how_many(count: int, what: str = "skein") -> str:
    """'1 skein', '12 skeins'."""
    return f"{count:,} {what}" if count == 1 else f"{count:,} {what}s"


def came_of(batch: Batch) -> str:
    """'24 cones', '2 jar fillings': what ever came of a maker's batch."""
    said = [how_many(count, what) for count, what in
            ((batch.cones, "cone"), (batch.fills, "jar filling")) if count]
    return " and ".join(said) or "nothing"


def ecru_words(ecru: Ecru) -> str:
    """'2.3 ± 0.5 from another cone of its base; as reckoned it shows as 0.2 in Ferry Ledger, …'.

    What shows through a dye is an estimate from both readings, never measured.
    """
    apart = (f"{ecru.undyed.ciede2000:.1f} ± {ecru.undyed.uncertainty:.1f} from "
             f"{_other_cones(ecru.cones)}")
    shows = ", ".join(f"{one.expected:.1f} in {one.name}" for one in ecru.seen_in[:5])
    return f"{apart}; as reckoned it shows as {shows}" if shows else apart


def _other_cones(cones: int) -> str:
    return "another cone of its base" if cones == 1 else f"{cones} other cones of its base"


def grams_alike(weights_mg: Iterable[int]) -> list[str]:
    """Weights in grams, all with the decimals that the finest of them needs: so they add up."""
    exact = [Decimal(mg) / 1000 for mg in weights_mg]
    finest = max((-int(weight.normalize().as_tuple().exponent) for weight in exact), default=0)
    return [f"{weight:,.{max(0, finest)}f} g" for weight in exact]


def origin_words(origin: Origin, pool: Pool | None, singly: Apart | None) -> str:
    """How sure an origin is.

    Of one skein out of a pool: how many of the pool come from there. Of several that are each
    known: how many do.
    """
    link = origin.link
    if link.word == POOL and link.of == 1 and pool is not None and pool.count > 1:
        return f"one of a pool: {pool.counted(origin.kind, origin.id)}"
    if link.word == POOL and singly is not None:
        partly = f", {singly.partly} of them partly" if singly.partly else ""
        return f"known: {singly.count} of {link.of}{partly}"
    return certainty_words(link)


def skein_words(link: Link) -> str:
    """How surely one row of the list comes from the thing in hand."""
    if link.word == POOL and link.of == 1:
        return f"one of a pool, {round(link.expected * 100)} in 100"
    return link.word if link.word in (KNOWN, NOT_KNOWN) else certainty_words(link)


def long_moment(moment: datetime) -> str:
    """'6 Apr 2026, 08:12'."""
    return f"{day_words(moment)}, {clock_words(moment)}"
