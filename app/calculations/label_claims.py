"""Claims that a tag makes beside its composition, held against what the yarn is made of."""

import re
from collections.abc import Iterator, Mapping, Sequence
from functools import cache

from app.calculations.fibre_names import Fibre, fibres, not_names
from app.calculations.label_composition import LEAST_VIRGIN, Share
from app.calculations.label_phrases import names_the_states, says_machine_wash
from app.calculations.markets import Market, Said

_PURE = r"100\s*%|pure|purely|all|only|nothing but|reine?[rsn]?|pura?|puro|zuiver|zuivere"
_LONG_ENOUGH = 6  # letters of a name that a slight respelling is looked for
_SOUNDS_LIKE = {"sylk": "silk", "silque": "silk", "wul": "wool", "wulle": "wool",
                "lynen": "linen", "kashmeer": "cashmere", "cashmira": "cashmere"}
_OWN_PERCENT = ("camel", "alpaca", "llama", "vicuna", "cashmere", "mohair")


def refused_claims(
    said: Mapping[str, str], shares: Sequence[Share], market: Market
) -> Iterator[Said]:
    """What the words, {where they stand: words}, claim and the composition does not bear."""
    for place, words in said.items():
        if len(shares) > 1 and (claim := _pure().search(words)):
            yield Said(market.rule("pure"), f"{place} says “{claim[0]}” of a blend.",
                       "Only yarn of one fibre may say so: write the name without it.")
        if (claim := _virgin().search(words)) and not _may_say_virgin(shares, market):
            yield Said(market.has("virgin-blend") or market.rule("virgin"),
                       f"{place} says “{claim[0]}” of a blend that may not.",
                       "Write wool in its place.")
    keys = {share.key for share in shares}
    if special := market.has("specialty"):
        for fibre, word in _implied(said.get("The base", ""), keys):
            if fibre.key in _OWN_PERCENT:
                yield Said(special, f"The base is named after {fibre.key} (“{word}”), and its "
                           f"composition states no percent of {fibre.key}.",
                           f"State the percent of {fibre.key}, or name the base otherwise.")


def doubtful_claims(
    said: Mapping[str, str], shares: Sequence[Share], market: Market, bled: str = ""
) -> Iterator[Said]:
    """What the words claim under a condition that somebody has to look at.

    `bled` says how the lot's water looked, like 'bleeds strongly'; nothing if it was clear.
    """
    keys = {share.key for share in shares}
    if rule := market.has("implied"):
        for place, words in said.items():
            for fibre, word in _implied(words, keys):
                yield Said(rule, f"{place} says “{word}”, and there is no {fibre.key} in it.",
                           "Name it otherwise if a buyer may take the word for the fibre.")
    for place, words in said.items():
        if (claim := _virgin().search(words)) and "virgin wool" not in keys:
            yield Said(market.rule("virgin"), f"{place} says “{claim[0]}”: that asks for wool "
                       "that was in no product before.",
                       "Print it only if the spinner says so in writing.")
    yield from _of_care_and_origin(said, market, bled)


def _of_care_and_origin(said: Mapping[str, str], market: Market, bled: str) -> Iterator[Said]:
    care, origin = said.get("The care", ""), said.get("The origin", "")
    if bled and says_machine_wash(care):
        yield Said(market.rule("bleeding"), f"The care says machine wash, and this lot {bled}.",
                   "Wash a swatch of it as the tag says, or print hand wash.")
    if names_the_states(origin) and "imported" not in origin.casefold() and (
            rule := market.has("origin")):
        yield Said(rule, "The origin says made in the United States.",
                   "If the yarn was spun abroad, say “of imported yarn”.")
    elif "made in" in origin.casefold():
        yield Said(market.rule("made-in"), "The origin says “made in”, and dyeing alone may not "
                   "make it so.", "Say spun in … and dyed by hand in …, or look into the law.")


def _may_say_virgin(shares: Sequence[Share], market: Market) -> bool:
    """One fibre, or where a market says so 25 % of it with one other fibre at most."""
    wool = sum(share.percent for share in shares if share.key in ("wool", "virgin wool"))
    if any(share.key == "recycled wool" for share in shares) or not wool:
        return False
    return market.has("virgin-blend") is None or (len(shares) <= 2 and wool >= LEAST_VIRGIN)


def _implied(words: str, keys: set[str]) -> Iterator[tuple[Fibre, str]]:
    """Fibres that a word names, sounds like or slightly respells, and that are not there."""
    for word in re.findall(r"[^\W\d_]+", words):
        fibre = _meant(word.casefold())
        if fibre is not None and not _is_there(fibre, keys):
            yield fibre, word


def _is_there(fibre: Fibre, keys: set[str]) -> bool:
    return fibre.key in keys or (fibre.key == "wool" and bool(
        keys & {"virgin wool", "recycled wool"}))


@cache
def _meant(word: str) -> Fibre | None:
    word = _SOUNDS_LIKE.get(word, word)
    names = _english()
    if word in names:
        return names[word]
    return next((fibre for name, fibre in names.items()
                 if len(name) >= _LONG_ENOUGH and len(name) == len(word)
                 and sum(a != b for a, b in zip(name, word, strict=True)) == 1), None)


@cache
def _english() -> Mapping[str, Fibre]:
    """{one English word: the fibre it means}, breeds and grades among them."""
    own = {word: fibre for fibre in fibres() for word in (fibre.key, *fibre.also)}
    lent = {one.word: own[one.write] for one in not_names()
            if one.write in own and one.rule == "names"}
    return {word: fibre for word, fibre in {**lent, **own}.items() if " " not in word}


@cache
def _pure() -> re.Pattern[str]:
    names = sorted({word for fibre in fibres() for word in fibre.spellings}
                   | {one.word for one in not_names() if len(one.word) > 3}, key=len, reverse=True)
    listed = "|".join(map(re.escape, names))
    return re.compile(rf"\b(?:{_PURE})[\s-]+(?:{listed})\b", re.IGNORECASE)


@cache
def _virgin() -> re.Pattern[str]:
    virgin = next(fibre for fibre in fibres() if fibre.key == "virgin wool")
    names = "|".join(map(re.escape, (*virgin.spellings, "virgin merino", "new merino")))
    return re.compile(rf"\b(?:{names})\b", re.IGNORECASE)
