"""What may be chosen of a layout, and the sizes under which nothing is set."""

import pytest

from app.documents.tag_choices import PLAIN, Choices
from app.problems import Refused
from tests.documents.samples import tag_words


@pytest.mark.parametrize(("chosen", "why", "least"), [
    ({"module_mm": 0.49}, "modules of 0.49 mm", "0.5 mm"),
    ({"lot_mm": 3.9}, "a lot 3.9 mm high", "4 mm"),
])
def test_a_size_under_the_least_is_refused_with_the_least(
    chosen: dict[str, float], why: str, least: str
) -> None:
    with pytest.raises(Refused, match=why) as refused:
        Choices(**chosen)
    assert least in refused.value.next_step


def test_text_may_be_smaller_as_long_as_its_smallest_words_have_six_points() -> None:
    assert Choices(text=0.86).points(7) == 6.02
    with pytest.raises(Refused, match="in 5.95 pt") as refused:
        Choices(text=0.85).points(7)
    assert "86 % or more" in refused.value.next_step


def test_what_is_left_out_is_gone_but_not_what_the_law_asks_for() -> None:
    words = tag_words(ounces_by_law=True, origin_by_law=False)
    said = Choices(leaves_out=("care", "ounces", "origin")).wanted(words)
    assert (said.care, said.origin, said.ounces) == ("", "", words.ounces)
    assert PLAIN.wanted(words) == words


@pytest.mark.parametrize("field", ["studio", "address", "fibre", "net", "lot"])
def test_what_every_tag_must_say_cannot_be_left_out(field: str) -> None:
    with pytest.raises(ValueError, match="always on a tag"):
        Choices(leaves_out=(field,))
