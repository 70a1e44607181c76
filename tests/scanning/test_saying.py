"""Things named in sentences."""

from app.lookups.things import Found
from app.scanning.saying import a_kind, kinds_wanted, no_such_plate, quoted, that_is, void_words


def test_a_thing_is_named_with_its_kind_and_words() -> None:
    assert that_is(Found("cone", 1, "C0114F", "Tarnfield 4-ply")) == (
        "C·0114·F is a cone: Tarnfield 4-ply."
    )
    assert that_is(Found("pot", 1, "P0024", "")).endswith(" is a pot.")


def test_every_kind_has_its_article() -> None:
    assert a_kind("action") == "an action plate"
    assert a_kind("disc") == "a disc"
    assert kinds_wanted(frozenset({"pot", "disc"})) == "Wanted here: a disc or a pot."


def test_a_void_tag_without_successor_is_only_void() -> None:
    assert void_words(Found("tag", 1, "2619K44-7M", "", void=True)) == "26·19·K44 7M is void."
    replaced = Found("tag", 1, "2619K44-7M", "", void=True, successor="2619K44-KK")
    assert void_words(replaced) == "26·19·K44 7M is void: 26·19·K44 KK took its place."
    cut = Found("tag", 1, "2619K44-7M", "", void=True, became="became 5 minis")
    assert void_words(cut) == "26·19·K44 7M is void: its skein became 5 minis."


def test_what_is_too_long_for_a_sentence_is_cut() -> None:
    assert quoted("x" * 41) == "“" + "x" * 40 + "…”"
    assert quoted("x" * 40) == "“" + "x" * 40 + "”"


def test_a_plate_that_was_never_made_is_told_in_one_wording() -> None:
    told = no_such_plate("S0036", "shelf")
    assert told.what == "S·003·6 is no shelf in the book."
    assert told.next_step == "Make its plate at the Desk, or scan another shelf."
