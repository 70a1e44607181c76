import pytest

from app.window.look.palette import DAY, EVENING, HOLD_RED, contrast, ink_on

GREYS = ("surround", "paper", "in_hand", "foot", "ink", "second_ink", "surround_ink", "edge",
         "line", "head", "head_ink", "head_second_ink", "mount", "on_hold")  # fmt: skip
READ_ON = (
    ("ink", ("surround", "paper", "in_hand", "foot")),
    ("second_ink", ("paper", "in_hand", "foot")),
    ("surround_ink", ("surround",)),
    ("head_ink", ("head",)),
    ("head_second_ink", ("head",)),
    ("on_hold", ("hold",)),
    ("in_hand", ("ink",)),
    ("hold_below", ("in_hand",)),
)


@pytest.mark.parametrize("palette", [DAY, EVENING], ids=["day", "evening"])
def test_only_hold_has_a_colour(palette):
    for name in GREYS:
        colour = getattr(palette, name)
        assert colour[1:3] == colour[3:5] == colour[5:7], name
    assert palette.hold == HOLD_RED == "#B3001B"


@pytest.mark.parametrize("palette", [DAY, EVENING], ids=["day", "evening"])
def test_every_ink_is_read_on_its_grounds(palette):
    for ink, grounds in READ_ON:
        for ground in grounds:
            ratio = contrast(getattr(palette, ink), getattr(palette, ground))
            assert ratio >= 4.5, (ink, ground, ratio)


@pytest.mark.parametrize("palette", [DAY, EVENING], ids=["day", "evening"])
def test_edges_of_fields_and_keys_are_seen(palette):
    for ground in ("paper", "in_hand", "foot"):
        assert contrast(palette.edge, getattr(palette, ground)) >= 3


def test_contrast_agrees_with_the_known_extremes():
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21)  # WCAG 2.2, contrast ratio
    assert contrast("#777777", "#FFFFFF") == pytest.approx(4.48, abs=0.01)
    assert contrast("#123456", "#123456") == 1


@pytest.mark.parametrize("colour", ["#C2272D", "#E8B500", "#1B856E", "#313B5E", "#808080"])
def test_a_word_on_any_tie_colour_is_read(colour):
    assert contrast(ink_on(colour), colour) >= 4
