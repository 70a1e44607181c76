"""A ranking of suspects in sentences: first the word, then the reasons as counts, then numbers."""

from collections.abc import Iterable, Sequence

from app.calculations.evidence import NONE, Seen, Suspect, Tally, tally
from app.calculations.next_looks import Look, Outcome
from app.calculations.suspects import Ranked, Ranking, Word

WENT_THROUGH = {
    "cone": "wound from {}",
    "lot": "of {}",
    "bath": "dyed in {}",
    "wash load": "that went through {}",
    "jar fill": "dyed from {}",
    "rail": "that hung on {}",
    "winder-day": "wound on {}",
}


def headline(ranking: Ranking) -> str:
    """What may be said of the cause at all, never a bare number."""
    first = ranking.ranked[0]
    if ranking.decided:
        return f"Likely {first.suspect}."
    if ranking.only_the_things_can_tell:
        either = _listed(map(str, (first.suspect, *first.alike)), "or")
        return f"Likely {either}: they touched the same skeins, so look at the things themselves."
    if first.suspect == NONE and first.word is Word.LIKELY:
        return "Likely none of these: something else spoiled them, or each its own thing."
    possible = [str(one.suspect) for one in ranking.ranked[:3] if one.word is not Word.HARDLY]
    if not possible:
        return "Not decided: no suspect stands out."
    return f"Not decided: possible {_is_or_are(possible)} {_listed(possible, 'and')}."


def assumed(ranking: Ranking) -> str:
    """The assumption that every ranking stands on, and what speaks against it."""
    said = "This takes it that one thing spoiled them; tell two kinds of fault as two."
    if count := ranking.unexplained:
        went = "faulty skein" if count == 1 else "faulty skeins"
        said += f" {count} {went} never went through {ranking.ranked[0].suspect}."
    return said


def reasons(ranked: Ranked) -> tuple[str, ...]:
    """The counts that speak for and against a suspect, a sentence for each side."""
    if ranked.exposure is None:
        return ("Every skein would be faulty by chance or by a cause that is not listed.",)
    exposure, suspect = ranked.exposure, ranked.suspect
    said = []
    if exposure.sure.total:
        said.append(f"{_who_share(exposure.sure.total)} {suspect}: {counts(exposure.sure)}.")
    said += [
        f"Of a pool of {pool.seen.total}, {pool.given} of {suspect}, not known which: "
        f"{counts(pool.seen)}."
        for pool in exposure.pools
    ]
    if exposure.shared:
        apart = sum((tally([seen]) for seen, _ in exposure.shared), Tally())
        said.append(f"{_skeins(apart.total)} of {suspect} in part: {counts(apart)}.")
    said.append(f"{_skeins(exposure.others.total)} without it: {counts(exposure.others)}.")
    return tuple(said)


def counts(seen: Tally) -> str:
    """'3 faulty, 1 good, 4 silent', and how many nobody has looked at where there are some."""
    said = f"{seen.faulty} faulty, {seen.good} good, {seen.silent} silent"
    return f"{said}, {seen.unseen} not seen" if seen.unseen else said


def look_at(look: Look) -> str:
    """Which skeins to look at next, said as the group they are."""
    which = " ".join(_went_through(one, first=not n) for n, one in enumerate(look.shared))
    whole = len(look.skeins)
    of_how_many = f"{look.count} of the {whole} skeins" if look.count < whole else _skeins(whole)
    sold = "sold, nobody said anything" if look.seen is Seen.SILENT else "not sold"
    named = "" if look.only else f": {', '.join(look.skeins)}"
    return f"Look at {of_how_many} {which}".rstrip() + f" ({sold}){named}."


def if_so(outcome: Outcome, look: Look) -> str:
    """What one outcome of a look would make of the ranking."""
    word = f"likely {outcome.likely}" if outcome.likely else "not decided"
    numbers = ", ".join(f"{suspect} {percent(chance)}" for suspect, chance in outcome.first())
    return f"{outcome.faulty} of {look.count} faulty: {word} ({numbers})."


def percent(chance: float) -> str:
    """A chance in whole per cents; never 0 or 100, since nothing here is certain."""
    whole = round(100 * chance)
    return "under 1 %" if whole < 1 else "over 99 %" if whole > 99 else f"{whole} %"


def _went_through(suspect: Suspect, first: bool) -> str:
    words = WENT_THROUGH.get(suspect.kind, "of {}").format(suspect)
    return words if first or words.startswith("that ") else f"and {words}"


def _who_share(count: int) -> str:
    return f"{_skeins(count)} surely {'shares' if count == 1 else 'share'}"


def _skeins(count: int) -> str:
    return f"{count} skein" if count == 1 else f"{count} skeins"


def _is_or_are(what: Sequence[str]) -> str:
    return "is" if len(what) == 1 else "are"


def _listed(what: Iterable[str], last: str) -> str:
    *most, end = what
    return f"{', '.join(most)} {last} {end}" if most else end
