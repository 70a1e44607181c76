"""The words that are understood."""

import pytest

from app.commands.words import parser

WORDS = ("find", "trace", "verify", "tags", "take-in", "orders", "shades", "customer-data", "demo")


def test_no_word_means_the_window() -> None:
    options = parser().parse_args([])
    assert options.run is None
    assert not options.json


@pytest.mark.parametrize("words", [
    ["find", "x"], ["trace", "x", "--out", "a.pdf"], ["verify"], ["demo"],
    ["tags", "x", "--out", "a.pdf", "--by", "LP", "--count", "3", "--first-cell", "9"],
    ["take-in", "a.csv", "--by", "AD", "--column", "gross=A=B", "--say", "batch="],
    ["orders", "a.csv", "--by", "OM", "--column", "count=Balls", "--look"],
    ["shades", "a.txt", "--by", "OW", "--say", "lamp=D65"], ["customer-data", "ada", "a.json"],
])
def test_every_word_has_something_that_does_it(words: list[str]) -> None:
    assert callable(parser().parse_args(words).run)


def test_the_book_may_be_said_before_or_after_the_word() -> None:
    for words in (["--book", "a.book", "verify"], ["verify", "--book", "a.book"]):
        assert str(parser().parse_args(words).book) == "a.book"


def test_what_stands_after_the_first_equals_sign_is_taken_whole() -> None:
    options = parser().parse_args(["take-in", "f", "--by", "AD", "--say", "note=a=b",
                                   "--column", " gross = Weight A "])
    assert options.say == [("note", "a=b")]
    assert options.column == [("gross", "Weight A")]


@pytest.mark.parametrize("words", [
    ["frob"], ["find"], ["tags", "x"], ["tags", "x", "--out", "a.pdf"], ["take-in", "f"],
    ["orders", "f"], ["find", "x", "--by", "OW"],
    ["tags", "x", "--out", "a", "--by", "LP", "--count", "many"],
    ["take-in", "f", "--by", "AD", "--say", "tare"], ["demo", "--json"],
])
def test_wrong_words_end_with_two_and_one_sentence(
    words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as ended:
        parser().parse_args(words)
    assert ended.value.code == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert len(err.splitlines()) == 1
    assert "--help” shows the words" in err


@pytest.mark.parametrize("word", [None, *WORDS])
def test_help_says_how_each_word_ends(word: str | None, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        parser().parse_args([word, "--help"] if word else ["--help"])
    assert ended.value.code == 0
    out = capsys.readouterr().out
    for line in ("0  done", "1  refused, or not found", "2  wrong words", "3  the book cannot be"):
        assert line in out
    assert word or all(name in out for name in WORDS)
