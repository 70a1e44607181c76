"""What a skein became whose tag came off."""

from app.calculations.codes import shown
from app.lookups.became import became
from app.lookups.things import of_lot
from app.work.remaking import cut, gather
from app.work.tagging import reprint, spoil_tags


def said(studio, lot=1):
    """What is said of every tag of a lot that came off, by the order of the tags."""
    return [tag.became for tag in studio.book.ask(of_lot, lot) if tag.void]


def test_minis_are_counted_and_named(studio):
    _, skeins = studio.tagged(studio.cone(), 3)
    studio.do(cut, skeins[0], 5, "mini", 600)
    studio.do(cut, skeins[1], 1, "ball", 0)
    assert sorted(said(studio)) == ["became 1 ball", "became 5 minis"]


def test_what_is_on_a_cord_says_its_disc_until_it_is_dyed_and_then_its_lot(studio):
    _, skeins = studio.tagged(studio.cone(), 3)
    group = studio.do(gather, skeins[:2], studio.discs[4])
    assert said(studio) == ["went back on a cord, disc 035"] * 2
    studio.dye(group)
    words = f"went back on a cord and was dyed again: {shown(studio.code(2))}"
    assert said(studio) == [words] * 2
    studio.split(group, 1, 1)
    assert said(studio) == [words] * 2
    alone = studio.do(gather, skeins[2:])
    assert alone
    assert said(studio).count("went back on a cord") == 1


def test_a_spoiled_tag_and_one_that_was_replaced_have_become_nothing(studio):
    group = studio.wind(studio.cone(), 3)
    studio.dye(group)
    (pile,) = studio.finish(group, red=3)
    (skein,) = studio.tag(pile, 1)
    (spare,) = studio.print(pile, 1)
    studio.do(spoil_tags, [spare], "torn")
    studio.do(reprint, skein, f"{studio.code(1)}-XX", "{}", ("swing tag", 1))
    assert said(studio) == ["", ""]
    assert studio.book.ask(became, []) == {}


def test_what_was_taken_back_has_become_nothing(studio):
    _, skeins = studio.tagged(studio.cone(), 3)
    studio.do(cut, skeins[0], 5, "mini", 600)
    studio.undo()
    assert said(studio) == []
