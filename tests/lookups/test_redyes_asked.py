"""What is to be dyed for somebody stands there until such a lot was dyed."""

from app.lookups.redyes_asked import redyes_asked
from app.work.offering import OfferIn, offered
from tests.lookups.shop import GLOVE, shelved
from tests.makers import Studio


def test_a_redye_that_was_taken_waits_until_its_colourway_is_dyed_again(studio: Studio) -> None:
    ((lot, _), (other, _)) = shelved(studio, 2, 2)
    assert studio.book.ask(redyes_asked) == ()
    for way, answer, place in (("redye", "thinks it over", None), ("redye", "taken", None),
                               ("all new", "taken", other), ("all new", "taken", None)):
        studio.do(offered, OfferIn(lot, 3, way, answer, place))
    code = studio.code(lot)
    found = studio.book.ask(redyes_asked)
    assert [(one.colourway, one.lot, one.wanted, one.way) for one in found] == [
        (GLOVE, code, 3, "redye"), (GLOVE, code, 3, "all new")]
    assert found[0].words.startswith("3 to match 26·")
    assert found[1].words.startswith("3 anew, for 26·")
    studio.dye(studio.wind(studio.cone(), 2))
    assert studio.book.ask(redyes_asked) == ()
