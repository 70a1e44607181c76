"""Words that nobody should type into a tag: as typed, given up in words, or refused; never a
broken sheet."""

from dataclasses import fields

import pytest

from app.documents.stocks import Stock, stock, stocks
from app.documents.tag_words import TagWords
from app.documents.tags import tag_sheets
from app.problems import Problem
from tests.documents.samples import tag_words, tags, text_of

HOSTILE = {
    "markup": "<b>Plum</b> &amp; <br/>",
    "template": "{0} %s \\n $x (Tj) ET",
    "control": "Plum\x00\x07\x1b[31m",
    "line ends": "Plum\r\nStone\u2028",
    "three hundred letters": "Plumstone" * 34,
    "emoji": "Plum 🧶",
    "mixed directions": "Plum שלום \u202eenotS",
    "turned": "\u202ePlum Stone\u202c",
    "unseen": "Pl\u200bum\u00adStone\ufeff",
    "piled marks": "P\u0301\u0302\u0303lum",
    "half a sign": "Plum \ud800",
    "a break": "Plum | Stone",
}
SETTABLE = {"Greek": "Κόκκινο νήμα", "Cyrillic": "Сливовая нить", "accents": "Żółć Ångström Čáp"}
FIELDS = [one.name for one in fields(TagWords) if one.type is str or one.type == "str"]


@pytest.mark.parametrize("field", FIELDS)
@pytest.mark.parametrize("text", HOSTILE.values(), ids=HOSTILE)
def test_a_hostile_word_is_set_as_typed_or_refused_in_a_sentence(text: str, field: str) -> None:
    refused = None
    try:
        sheets = tag_sheets(tags(1, tag_words(**{field: text})), stock("swing-85x55"))
    except Problem as problem:
        refused = problem
    if refused is not None:
        assert refused.what.endswith(".")
        assert refused.next_step.endswith(".")
        assert all(letter.isprintable() for letter in refused.what)
        return
    said = "".join(text_of(sheets.pdf)[0].split()).upper()
    typed = "".join(text.replace("|", "").split()).upper()
    assert typed in said or sheets.left_out


@pytest.mark.parametrize("one", stocks(), ids=lambda one: one.name)
@pytest.mark.parametrize("name", SETTABLE.values(), ids=SETTABLE)
def test_names_in_other_letters_are_set_in_the_bundled_faces(name: str, one: object) -> None:
    assert name in text_of(tag_sheets(tags(1, tag_words(name)), one).pdf)[0]


def test_what_nobody_sees_is_shown_by_its_number() -> None:
    with pytest.raises(Problem, match=r"“\[202E\]Plum” has signs .*: \[202E\]"):
        tag_sheets(tags(1, tag_words("\u202ePlum")), stock("swing-85x55"))


def test_a_sign_that_no_type_has_is_never_left_out_for_want_of_room() -> None:
    with pytest.raises(Problem, match="🧶"):
        tag_sheets(tags(1, tag_words(knit="🧶")), stock("small-63x38"))


@pytest.mark.parametrize("one", stocks(), ids=lambda one: one.name)
@pytest.mark.parametrize(("name", "first"), [("סגול כהה", "ס"), ("أزرق", "أ"), ("Plum סגול", "ס")])
def test_a_name_that_runs_from_right_to_left_is_refused_whole_and_never_cut(
    name: str, first: str, one: Stock
) -> None:
    """No bundled face has Hebrew or Arabic letters; the refusal names each that is lacking."""
    with pytest.raises(Problem, match="signs that no bundled type has") as refused:
        tag_sheets(tags(1, tag_words(name)), one)
    assert name in refused.value.what
    assert first in refused.value.what.rpartition(": ")[2]
    assert "without them" in refused.value.next_step
