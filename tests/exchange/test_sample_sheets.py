"""A whole sheet of samples, before anything is printed for a skein."""

from app.documents.proof import read_back
from app.documents.stocks import stock
from app.exchange.sample_sheets import sample_sheet, sample_words
from app.lookups.sample_tags import Samples, sample_tags
from app.work.studio import choose
from tests.documents.samples import text_of
from tests.makers import Studio


def test_a_sheet_is_full_of_samples_that_say_they_are_none(studio: Studio) -> None:
    words = sample_words(studio.book.ask(sample_tags), 0)
    small = stock("small-63x38")
    pdf = sample_sheet(words, small)
    assert len(set(read_back(pdf, small.dpi)[0])) == 21
    assert "Sample: not printed for any skein" in text_of(pdf)[0]


def test_samples_speak_as_the_chosen_market_does(studio: Studio) -> None:
    studio.do(choose, {"market": "EU", "language": "de"})
    assert sample_words(studio.book.ask(sample_tags), 0).fibre == "100 % Wolle"


def test_a_studio_without_bases_or_name_still_sees_a_sheet() -> None:
    words = sample_words(Samples((), "", ""), 3)
    assert len(read_back(sample_sheet(words, stock("roll-62x40")), 203)[0]) == 1
