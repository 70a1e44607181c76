"""The composition as a market's label states it: allowed names, the greatest first, all of it."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal

from app.calculations.fibre_names import OTHER, Written, fibre_written
from app.calculations.fibre_text import read_composition
from app.calculations.label_phrases import figures, phrase
from app.calculations.markets import Market, Said
from app.problems import BadInput

MOST_OF_ONE_OTHER, MOST_OTHER = Decimal(5), Decimal(15)  # Reg. (EU) 1007/2011 Art. 9(2)
LEAST_VIRGIN = Decimal(25)  # Reg. (EU) 1007/2011 Art. 8(2)


@dataclass(frozen=True, slots=True)
class Share:
    """One fibre of a yarn as it was written, and its percent of the mass."""

    written: Written
    percent: Decimal

    @property
    def key(self) -> str:
        """The fibre's own name in the tables; `other fibres`; else the words as they stand."""
        if self.written.other:
            return OTHER
        return self.written.fibre.key if self.written.fibre else self.written.words


@dataclass(frozen=True, slots=True)
class Composition:
    """The line of a label, what stands against it, and what has to be looked at."""

    line: str
    shares: tuple[Share, ...]
    refusals: tuple[Said, ...] = ()
    warnings: tuple[Said, ...] = ()


def composition_for(text: str, market: Market, language: str) -> Composition:
    """The composition a base was described with, as its label states it in that market.

    A fibre below the market's least percent becomes “other fiber”, unless the law takes it for
    wool or it has a function: `4 % elastane (for stretch)`.
    """
    try:
        given = read_composition(text)
    except BadInput as why:
        return Composition(text, (), (Said(market.rule("descending"), why.what, why.next_step),))
    shares = tuple(Share(fibre_written(one.fibre), one.percent) for one in given)
    refusals = (*_no_names(shares, market, language), *_too_much_other(shares, market),
                *_virgin_blend(shares, market))
    named = [(share.percent, _name(share, market, language)) for share in shares
             if not _is_other(share, market)]
    others = [share.percent for share in shares if _is_other(share, market)]
    if others:
        one = len(others) == 1 and not any(share.written.other for share in shares)
        named.append((sum(others, Decimal(0)), _other_words(market, language, one)))
    line = ", ".join(f"{figures(percent, language)}{market.percent} {name}"
                     for percent, name in named)
    return Composition(line, shares, refusals, _conditions(shares, market))


def _is_other(share: Share, market: Market) -> bool:
    """16 CFR 303.3(a) with 15 U.S.C. 68b; where no least percent is set, every fibre is named."""
    fibre = share.written.fibre
    if share.written.other:
        return True
    return (share.percent < market.names_from and not share.written.purpose
            and not (fibre is not None and fibre.us_wool))


def _name(share: Share, market: Market, language: str) -> str:
    fibre = share.written.fibre
    if fibre is None:
        return share.written.words
    if market.in_all_languages:
        return _both(fibre.called(market, one) or fibre.key for one in market.languages)
    return fibre.called(market, language) or fibre.key


def _other_words(market: Market, language: str, one: bool) -> str:
    if market.key == "US":
        return "other fiber" if one else "other fibers"
    if market.in_all_languages:
        return "other fibre/autre fibre" if one else "other fibres/autres fibres"
    return phrase("other", language)


def _both(names: Iterable[str]) -> str:
    """In both languages; once where they are the same."""
    return "/".join(dict.fromkeys(names))


def _no_names(shares: Sequence[Share], market: Market, language: str) -> list[Said]:
    """Refused: what is no name of the market's list."""
    said = []
    for written in (share.written for share in shares if not share.written.other):
        if written.fibre is not None:
            if written.fibre.called(market, language) is None:
                said.append(Said(
                    market.rule("names"), f"“{written.words}” has no name on a label for "
                    f"{market.title}.", "Write the fibre alone; say the rest beside it."))
        elif written.wrong is not None:
            wrong = written.wrong
            said.append(Said(
                market.rule(wrong.rule), f"“{written.words}” is no fibre's name: "
                f"{wrong.because}.", f"Write {wrong.write}; the base's name may say the rest."))
        else:
            key = "abbreviations" if _is_short(written.words) else "names"
            said.append(Said(
                market.rule(key), f"“{written.words}” is on no list of fibre names here.",
                "Write the fibre in full by its plain name, like wool or polyamide."))
    return said


def _is_short(words: str) -> bool:
    return "*" in words or (len(words) <= 3 and words.isupper())


def _too_much_other(shares: Sequence[Share], market: Market) -> list[Said]:
    others = [share.percent for share in shares if share.written.other]
    if not others or market.has("other-fibres") is None or sum(others) <= MOST_OTHER:
        return []
    return [Said(market.rule("other-fibres"),
                 f"“Other fibres” may make {MOST_OTHER} % at most, not {sum(others)} %.",
                 "Name them, each with its percent.")]


def _virgin_blend(shares: Sequence[Share], market: Market) -> list[Said]:
    """Refused: virgin wool in a blend that may not say so."""
    keys = [share.key for share in shares]
    if "virgin wool" not in keys:
        return []
    percent = shares[keys.index("virgin wool")].percent
    if "recycled wool" in keys:
        return [Said(market.rule("virgin"), "Virgin wool stands beside recycled wool.",
                     "Write wool and recycled wool.")]
    if market.has("virgin-blend") and (len(shares) > 2 or percent < LEAST_VIRGIN):
        return [Said(market.rule("virgin-blend"),
                     f"“Virgin wool” stands in a blend of {len(shares)} fibres with "
                     f"{percent.normalize():f} % of it.",
                     f"It takes {LEAST_VIRGIN} % and one other fibre at most: write wool.")]
    return []


def _conditions(shares: Sequence[Share], market: Market) -> tuple[Said, ...]:
    """What somebody has to know of the yarn before the label may say it."""
    said = []
    keys = {share.key for share in shares}
    if "virgin wool" in keys:
        said.append(Said(
            market.rule("virgin"), "“Virgin wool” asks for wool that was in no product before.",
            "Print it only if the spinner says so in writing."))
        if impurities := market.has("virgin-impurities"):
            said.append(Said(impurities, "Impurities may make 0.3 % at most.",
                             "Ask the spinner for the figure."))
    if "cashmere" in keys and (gate := market.has("cashmere")):
        said.append(Said(gate, "“Cashmere” asks for fibre of 19 µm or finer, 3 % over 30 µm "
                         "and a spread of 24 % at most.", "Hold the spinner's certificate "
                         "against these figures."))
    several = [share.percent for share in shares if share.written.other]
    if several and sum(several) > MOST_OF_ONE_OTHER and (other := market.has("other-fibres")):
        said.append(Said(other, "More than 5 % of “other fibres” has to be several fibres "
                         "that cannot easily be stated.", "Name them if they are known."))
    return tuple(said)
