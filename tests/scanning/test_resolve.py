"""From a text to a thing: scans as they are, typing forgiven, nothing chosen by itself."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from app.calculations.codes import Kind
from app.scanning.resolve import Resolution, resolve, resolve_many
from app.work.bundling import make_plates, take_off, tie_on
from app.work.dyeing import name_colourway
from app.work.opening_stock import OldLot, open_lot
from app.work.tagging import Printing, apply_tag, print_tags, reprint
from tests.makers import EACH_MG, Studio

SHOP_CODE = "4006381333931"  # thirteen digits, the last a right check


def old_lot(studio: Studio, code: str, colourway: int = 1) -> int:
    """A lot from before the book, with the code given; its pile."""
    old = OldLot(code, studio.version, colourway, 4)
    return int(studio.do(open_lot, old, EACH_MG))


def typed(studio: Studio, text: str, *wanted: str) -> Resolution:
    return studio.book.ask(resolve, text, True, frozenset(wanted))


def scanned(studio: Studio, text: str, *wanted: str) -> Resolution:
    return studio.book.ask(resolve, text, False, frozenset(wanted))


def printed(studio: Studio, pile: int, *marks: str) -> list[int]:
    return list(
        studio.do(print_tags, Printing(pile, marks, "{}", "swing-85x55", version=studio.version))
    )


@pytest.fixture
def two_lots(studio: Studio) -> Studio:
    """Lots 2619K44 and 2617M9K, of two colourways."""
    studio.do(name_colourway, "Paper Ticket", "#E79B9B")
    old_lot(studio, "2619K44")
    old_lot(studio, "2617M9K", colourway=2)
    return studio


@pytest.mark.parametrize("wrong", ["2619H44", "2691K44", "2615K44", "26·19·H44", "2619h44"])
def test_a_typed_slip_is_not_accepted_and_the_lot_one_slip_away_is_listed(
    two_lots: Studio, wrong: str
) -> None:
    answer = typed(two_lots, wrong)
    assert answer.found is None
    assert [(thing.code, thing.words, thing.swatch) for thing in answer.choices] == [
        ("2619K44", "Sluice Keeper's Glove, Tarnfield 4-ply", "#1B856E")
    ]
    assert "check character" in answer.sentence
    assert "does not fit" in answer.sentence
    assert "nothing was chosen" in answer.next_step


def test_the_other_lot_is_listed_when_the_slip_is_its_own(two_lots: Studio) -> None:
    (choice,) = typed(two_lots, "2617M9F").choices
    assert (choice.code, choice.swatch) == ("2617M9K", "#E79B9B")


@pytest.mark.parametrize("text", ["2619K44", "26·19·K44", " 26-19-k44 ", "26 19 K44"])
def test_a_right_code_is_found_whatever_stands_between(two_lots: Studio, text: str) -> None:
    for answer in (typed(two_lots, text), scanned(two_lots, text)):
        assert answer.found is not None
        assert answer.found.code == "2619K44"
        assert answer.sentence == (
            "26·19·K44 is a dye lot: Sluice Keeper's Glove, Tarnfield 4-ply."
        )


@pytest.mark.parametrize("wrong", ["2619H44", "2691K44", "26I9K44", "26?9K44", "sluice", ""])
def test_a_scan_is_taken_as_it_is_and_never_mended(two_lots: Studio, wrong: str) -> None:
    answer = scanned(two_lots, wrong)
    assert answer.found is None
    assert answer.choices == ()
    assert answer.sentence


def test_letters_that_look_or_sound_alike_are_forgiven_when_typed(two_lots: Studio) -> None:
    answer = typed(two_lots, "26I9J44")
    assert answer.found is not None
    assert answer.found.code == "2619K44"


def test_several_existing_readings_are_offered_and_none_is_chosen(studio: Studio) -> None:
    for code in ("261690F", "26169T5"):  # D is read as 0 or T, S as F or 5
        old_lot(studio, code)
    answer = typed(studio, "26169DS")
    assert answer.found is None
    assert [thing.code for thing in answer.choices] == ["261690F", "26169T5"]
    assert answer.sentence == "“26169DS” may be one of 2 codes."


def test_the_one_reading_that_exists_is_found(studio: Studio) -> None:
    old_lot(studio, "26169T5")
    answer = typed(studio, "26169DS")
    assert answer.found is not None
    assert answer.found.code == "26169T5"


def test_unreadable_characters_list_every_lot_that_fits(two_lots: Studio) -> None:
    answer = typed(two_lots, "26?9K4?")
    assert [thing.code for thing in answer.choices] == ["2619K44"]
    assert answer.found is None
    assert typed(two_lots, "26?????").sentence.startswith("Too much of 26????? is unreadable")
    assert typed(two_lots, "25?9K4?").sentence.startswith("No code in the book fits")


def test_unreadable_characters_of_an_old_code_list_it_too(studio: Studio) -> None:
    old_lot(studio, "OLD77")
    old_lot(studio, "OLD88")
    assert [t.code for t in typed(studio, "OLD?7").choices] == ["OLD77"]
    assert {t.code for t in typed(studio, "OLD??").choices} == {"OLD77", "OLD88"}


def test_two_characters_list_what_begins_so_and_one_does_not(two_lots: Studio) -> None:
    assert {t.code for t in typed(two_lots, "26").choices} == {"2619K44", "2617M9K"}
    assert [t.code for t in typed(two_lots, "2617").choices] == ["2617M9K"]
    assert typed(two_lots, "2").choices == ()


def test_names_list_lots_by_colourway_and_by_base(two_lots: Studio) -> None:
    assert [t.code for t in typed(two_lots, "paper tick").choices] == ["2617M9K"]
    assert {t.code for t in typed(two_lots, "TARNFIELD").choices} == {"2619K44", "2617M9K"}
    nothing = typed(two_lots, "gloves of silk")
    assert (nothing.found, nothing.choices) == (None, ())
    assert "Nothing in the book is called “gloves of silk”" in nothing.sentence


def test_the_number_on_the_studios_card_lists_the_cone(studio: Studio) -> None:
    studio.cones(2)
    for text in ("C0002", "c 2", "T-0002"):
        answer = typed(studio, text)
        assert answer.found is None
        assert "cone" in {thing.kind for thing in answer.choices}
    assert {t.kind for t in typed(studio, "31").choices} == {"disc"}


def test_an_old_lots_code_and_its_tags_are_found_as_they_are_written(studio: Studio) -> None:
    pile = old_lot(studio, "OLD77")
    tag, spare = printed(studio, pile, "OLD77-7M", "OLD77-KK")
    skein = studio.do(apply_tag, tag)
    for text in ("OLD77", "old 77"):
        for answer in (scanned(studio, text), typed(studio, text)):
            assert answer.found is not None
            assert (answer.found.kind, answer.found.code) == ("lot", "OLD77")
    for text in ("OLD77-7M", "old77-7m"):
        answer = scanned(studio, text)
        assert answer.found is not None
        assert (answer.found.kind, answer.found.id) == ("skein", skein)
    assert typed(studio, "old77 kk").found == scanned(studio, "OLD77-KK").found
    assert typed(studio, "OLD77-KK").found is not None
    assert spare


def test_where_a_typed_text_is_two_old_codes_both_are_offered(studio: Studio) -> None:
    pile = old_lot(studio, "OLD77")
    old_lot(studio, "OLD777M")
    printed(studio, pile, "OLD77-7M")
    answer = typed(studio, "OLD777M")
    assert answer.found is None
    assert {thing.code for thing in answer.choices} == {"OLD777M", "OLD77-7M"}
    exact = scanned(studio, "OLD77-7M").found
    assert exact is not None
    assert exact.code == "OLD77-7M"


def test_a_right_code_that_is_nobodys_says_what_it_would_be(studio: Studio) -> None:
    for answer in (typed(studio, "2619K44"), scanned(studio, "2619K44")):
        assert answer.found is None
        assert answer.sentence == "26·19·K44 is the code of a dye lot that is not in this book."
    assert "a cone that is not" in scanned(studio, "C0114F").sentence


def test_a_mark_that_was_never_printed_shows_its_lot_and_its_neighbours(studio: Studio) -> None:
    pile = old_lot(studio, "2619K44")
    printed(studio, pile, "2619K44-7M", "2619K44-KK")
    answer = typed(studio, "2619K44-7K")
    assert answer.found is None
    assert [thing.code for thing in answer.choices] == ["2619K44", "2619K44-7M", "2619K44-KK"]
    assert answer.sentence == "Lot 26·19·K44 has no tag 7K: it was never printed."


def test_a_typed_mark_is_found_and_lists_its_neighbours(studio: Studio) -> None:
    pile = old_lot(studio, "2619K44")
    printed(studio, pile, "2619K44-7M", "2619K44-M7", "2619K44-7K", "2619K44-00")
    answer = typed(studio, "2619K44 7M")
    assert answer.found is not None
    assert answer.found.code == "2619K44-7M"
    assert {thing.code for thing in answer.choices} == {"2619K44-M7", "2619K44-7K"}
    assert scanned(studio, "2619K44-7M").choices == ()


def test_a_slip_in_the_lot_of_a_mark_leads_to_the_mark_or_to_the_lot(studio: Studio) -> None:
    pile = old_lot(studio, "2619K44")
    printed(studio, pile, "2619K44-7M")
    assert [t.code for t in typed(studio, "2619H44-7M").choices] == ["2619K44-7M"]
    assert [t.code for t in typed(studio, "2619H44-XX").choices] == ["2619K44"]


def test_a_code_of_another_kind_says_what_it_is_and_what_is_wanted(studio: Studio) -> None:
    cone = studio.cone()
    assert cone
    for answer in (scanned(studio, "C00017", "disc"), typed(studio, "C00017", "disc")):
        assert answer.found is None
        assert answer.sentence == "C·0001·7 is a cone: Tarnfield 4-ply."
        assert answer.next_step == "Wanted here: a disc."
    assert scanned(studio, "C00017", "disc", "cone").found is not None


def test_choices_of_another_kind_than_wanted_are_left_out(studio: Studio) -> None:
    studio.do(make_plates, Kind.POT, [31])
    answer = typed(studio, "31", "pot")
    assert [thing.kind for thing in answer.choices] == ["pot"]
    assert answer.next_step == "Wanted here: a pot."


def test_a_shops_bar_code_is_named_as_such(studio: Studio) -> None:
    for answer in (scanned(studio, SHOP_CODE), typed(studio, SHOP_CODE)):
        assert "a shop's bar code" in answer.sentence
        assert answer.found is None


def test_a_void_tag_says_so_and_names_its_successor(studio: Studio) -> None:
    pile = old_lot(studio, "2619K44")
    tag, other = printed(studio, pile, "2619K44-7M", "2619K44-00")
    skein = studio.do(apply_tag, tag)
    studio.do(reprint, skein, "2619K44-KK", "{}", ("swing-85x55", 1))
    answer = scanned(studio, "2619K44-7M")
    assert answer.sentence == "26·19·K44 7M is void: 26·19·K44 KK took its place."
    assert answer.found is not None
    assert answer.found.void
    assert answer.next_step == "Throw this tag away."
    assert other


def test_a_disc_says_since_when_it_hangs_on_another_bundle(studio: Studio) -> None:
    disc = studio.discs[0]
    code = studio.book.ask(resolve, "31", True, frozenset({"disc"})).choices[0].code
    assert scanned(studio, code).sentence == "Disc 031 was never tied on."
    studio.wind(studio.cone(), 6, disc=disc)
    assert scanned(studio, code).sentence.startswith("Disc 031 is tied on since 6 Apr ")
    studio.do(take_off, disc)
    assert scanned(studio, code).sentence.startswith("Disc 031 hangs on nothing since 6 Apr")
    studio.do(tie_on, disc, [studio.wind(studio.cone(), 4, "yellow")])
    answer = scanned(studio, code)
    assert answer.sentence.startswith("Disc 031 hangs on another bundle than before, since 6 Apr")
    assert answer.found is not None
    assert answer.found.id == disc


def test_forty_pasted_codes_each_get_their_own_sentence(studio: Studio) -> None:
    pile = old_lot(studio, "2619K44")
    studio.cones(30)
    marks = ["2619K44-7M", "2619K44-KK", "2619K44-00", "2619K44-X4"]
    printed(studio, pile, *marks)
    cones = [thing.code for thing in typed(studio, "C00").choices][:20]
    pasted = [
        *marks,
        *cones,
        "2619K44",
        "2619H44",
        SHOP_CODE,
        "2617M9K",
        "glove?",
        "",
        *marks,
        *cones[:6],
    ]
    answers = studio.book.ask(resolve_many, pasted)
    assert len(pasted) == len(answers) == 40
    assert all(answer.sentence for answer in answers)
    assert len({a.found.code for a in answers if a.found}) == sum(1 for a in answers if a.found)
    assert answers[30].sentence == (
        "26·19·K44 7M stands in this list already, at place 1: it counts once."
    )
    assert "does not fit" in answers[25].sentence
    assert "shop's bar code" in answers[26].sentence


def test_a_pasted_list_is_narrowed_to_what_is_wanted(studio: Studio) -> None:
    old_lot(studio, "2619K44")
    studio.cone()
    lot, cone = studio.book.ask(resolve_many, ["2619K44", "C00017"], frozenset({"lot"}))
    assert lot.found is not None
    assert cone.next_step == "Wanted here: a dye lot."


@pytest.mark.parametrize(
    "strange",
    [
        "\x00\x07",
        "%",
        "~",
        "_",
        "'; DROP TABLE cone; --",
        "2619K44" * 2000,
        "\ud800",
        "٣٤٥٦٧٨٩",
        "𝟚𝟞𝟙𝟡K44",
        "[a-z]*??",
        "\u202e44K9162",
        "?",
        "????",
        "-",
        "·",
        "Ł" * 7,
    ],
)
def test_nothing_that_can_be_typed_breaks_the_search(two_lots: Studio, strange: str) -> None:
    for answer in (typed(two_lots, strange), scanned(two_lots, strange)):
        assert answer.found is None
        assert answer.sentence


@settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(text=st.text(st.sampled_from("0123456789FHKMRTWXYSVDOI·- ?cC~%'"), max_size=12))
def test_a_scan_finds_only_what_is_exactly_there(two_lots: Studio, text: str) -> None:
    answer = scanned(two_lots, text)
    assert answer.choices == ()
    if answer.found is not None:
        bare = "".join(c for c in text.upper() if c not in "·- ")
        assert answer.found.code.replace("-", "") == bare
    assert typed(two_lots, text).sentence
