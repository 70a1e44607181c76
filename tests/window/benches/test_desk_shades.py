"""The pictures of a colourway's shades, opened from a lot or a skein at the desk."""

from itertools import chain

import pytest

from app.calculations.codes import Kind, numbered, shown
from app.lookups.things import of_lot
from tests.calculations.shades import TEAL
from tests.lookups.cards import dyed, read_lot
from tests.window.benches.at_work import plate
from tests.window.benches.desk_hands import open_desk


@pytest.fixture
def desk(qtbot, settings, studio):
    """Eight teal lots, the first of them on tags."""
    first, _ = studio.tagged(studio.cone(), 1)
    studio.lots = [first, *(dyed(studio, 1) for _ in range(7))]
    for lot, name in zip(studio.lots, TEAL, strict=True):
        read_lot(studio, lot, TEAL[name].lab)
    yield from open_desk(qtbot, settings, studio)


def test_eight_teal_lots_are_shown_as_four_groups(desk):
    desk.scan(desk.studio.code(desk.studio.lots[3]))
    desk.press("S", "M")
    page = desk.bench.shades.page
    assert page.isVisible()
    assert "8 lots in 4 groups of which every two are within 1.0" in page.said.text()
    codes = dict(zip("PQRSTUVW", map(shown, map(desk.studio.code, desk.studio.lots)), strict=True))
    said = page.groups.text().splitlines()
    assert [sorted(name for name, code in codes.items() if code in line) for line in said] == [
        ["P", "Q", "U"], ["R", "S"], ["T", "V"]]
    assert len(set(chain(*(group.lots for group in page.shades.groups)))) == 8
    desk.scan(plate(6))
    assert page.pair_words.text().startswith(f"{codes['S']} and {codes['U']}: ")
    desk.press("O")
    assert desk.name.code.accessibleName() == codes["U"]


def test_a_skein_opens_the_shades_of_its_lot_and_a_cone_has_none(desk):
    tag = desk.studio.book.ask(of_lot, desk.studio.lots[0])[0]
    desk.scan(tag.code)
    desk.press("S")
    assert desk.bench.shades.page.shades.lot == desk.studio.lots[0]
    desk.press("F8")
    assert desk.hand.page.isVisible()
    desk.scan(numbered(Kind.CONE, 1).text)
    assert not desk.name.shades_key.isVisible()
