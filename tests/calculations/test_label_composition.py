"""The composition of a label: all fibres, the greatest first, whatever the market and language."""

from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from app.calculations.fibre_names import fibres
from app.calculations.label_composition import composition_for
from app.calculations.markets import MARKETS, market

PLACES = [(key, language) for key in MARKETS for language in market(key).languages]
NAMED = sorted(fibre.key for fibre in fibres()
               if fibre.key not in ("virgin wool", "recycled wool"))


@st.composite
def compositions(draw: st.DrawFn) -> dict[str, int]:
    """Up to five fibres whose percents make 100."""
    names = draw(st.lists(st.sampled_from(NAMED), min_size=1, max_size=5, unique=True))
    cuts = sorted(draw(st.lists(st.integers(1, 99), min_size=len(names) - 1,
                                max_size=len(names) - 1, unique=True)))
    return dict(zip(names, [b - a for a, b in zip([0, *cuts], [*cuts, 100], strict=True)],
                    strict=True))


@given(compositions(), st.sampled_from(PLACES))
def test_every_percent_is_told_once_and_in_order(
    made_of: dict[str, int], place: tuple[str, str]
) -> None:
    there = market(place[0])
    text = ", ".join(f"{percent} % {name}" for name, percent in made_of.items())
    found = composition_for(text, there, place[1])
    assert found.refusals == ()
    percents = [Decimal(part.split(there.percent)[0].replace(",", "."))
                for part in found.line.split(", ")]
    assert sum(percents) == 100
    named = percents[:-1] if "other" in found.line else percents
    assert named == sorted(named, reverse=True)


@given(compositions())
def test_in_the_states_no_small_fibre_is_named_but_wool(made_of: dict[str, int]) -> None:
    text = ", ".join(f"{percent} % {name}" for name, percent in made_of.items())
    found = composition_for(text, market("US"), "en")
    wool = {fibre.key for fibre in fibres() if fibre.us_wool}
    small = {name for name, percent in made_of.items() if percent < 5 and name not in wool}
    assert ("other fiber" in found.line) == bool(small)
    assert ("other fibers" in found.line) == (len(small) > 1)


def test_a_half_percent_is_written_as_the_language_does() -> None:
    assert [composition_for("97.5 % wool, 2.5 % silk", market("EU"), language).line
            for language in ("en", "de", "fr")] == [
        "97.5 % wool, 2.5 % silk", "97,5 % Wolle, 2,5 % Seide", "97,5 % laine, 2,5 % soie"]


def test_words_that_cannot_be_read_stand_and_are_refused() -> None:
    found = composition_for("wool, mostly", market("EU"), "de")
    assert (found.line, found.shares) == ("wool, mostly", ())
    assert [said.rule.key for said in found.refusals] == ["descending"]
    assert "Write each fibre with its percent" in found.refusals[0].next_step


def test_every_fibre_that_has_no_name_is_told() -> None:
    found = composition_for("60 % merino, 40 % dragon", market("US"), "en")
    assert len(found.refusals) == 2
    assert "60% merino" in found.line
