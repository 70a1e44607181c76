"""The limits of the words about two shades are the studio's; greys are held tighter."""

import pytest

from app.calculations.shade_words import USUAL, Bands
from app.lookups.nearest_lots import nearest_lots
from app.lookups.shade_bands import kept_bands, shade_bands
from app.lookups.shade_map import shade_map
from app.work.studio import choose
from tests.calculations.shades import TEAL
from tests.lookups.cards import read_lot
from tests.lookups.shop import shelved
from tests.makers import Studio

GREY, BESIDE_GREY = (50.0, 1.0, 2.0), (50.7, 1.0, 2.0)


@pytest.fixture
def lots(studio: Studio) -> list[int]:
    """Two teal lots that lie on a shelf are 0.6 apart."""
    made = [lot for lot, _ in shelved(studio, 1, 1)]
    for lot, name in zip(made, "QR", strict=True):
        read_lot(studio, lot, TEAL[name].lab)
    return made


def test_what_was_not_chosen_is_as_usual(studio: Studio) -> None:
    assert studio.book.ask(shade_bands) == USUAL
    studio.do(choose, kept_bands(Bands(same=0.4)))
    assert studio.book.ask(shade_bands) == Bands(same=0.4)


def test_a_tighter_limit_parts_what_went_together(studio: Studio, lots: list[int]) -> None:
    assert [len(one.lots) for one in studio.book.ask(shade_map, lots[0]).groups] == [2]
    studio.do(choose, kept_bands(Bands(same=0.4)))
    shades = studio.book.ask(shade_map, lots[0])
    assert shades.limits == (0.4, 1.0, 1.5)
    assert (shades.limit, [len(one.lots) for one in shades.groups]) == (0.4, [1, 1])


def test_greys_are_grouped_within_the_limit_of_greys(studio: Studio) -> None:
    made = [studio.tagged(studio.cone(), 1)[0] for _ in range(2)]
    for lot, lab in zip(made, (GREY, BESIDE_GREY), strict=True):
        read_lot(studio, lot, lab)
    shades = studio.book.ask(shade_map, made[0])
    assert shades.limits[0] == shades.limit == USUAL.same_in_greys
    assert len(shades.groups) == 2  # 0.7 apart: together in a strong colour, not in a grey
    assert len(studio.book.ask(shade_map, made[0], 1.0).groups) == 1


def test_the_words_of_a_near_lot_are_by_the_studio_s_limits(
    studio: Studio, lots: list[int]
) -> None:
    def word() -> str:
        (near,) = studio.book.ask(nearest_lots, TEAL["Q"], 1, but=(lots[0],))
        return str(near.judged.shown)

    assert word() == "looks the same"
    studio.do(choose, kept_bands(Bands(same=0.4)))
    assert word() == "alternate two rows for 6–8 cm"
