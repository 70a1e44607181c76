"""A line from several lots: how far these are apart, and whether it was settled."""

from app.calculations.codes import shown
from app.lookups.two_lots import several_words, unsettled
from app.work.offering import agree_line
from app.work.selling import send, take_for
from tests.lookups.cards import read_lot
from tests.lookups.shop import ordered, shelved
from tests.makers import Studio


def test_a_line_from_two_lots_is_asked_about_until_it_was_agreed(studio: Studio) -> None:
    (_, skeins), (_, others) = shelved(studio, 3, 2)
    (line,) = ordered(studio, "1042", 5)
    studio.do(take_for, line, skeins[:2])
    assert studio.book.ask(unsettled, [line]) == {}
    studio.do(take_for, line, others[:1])
    assert studio.book.ask(unsettled, [line])[line].startswith("One line from 2 lots: ")
    studio.do(agree_line, line, "customer agreed")
    studio.do(take_for, line, skeins[2:])
    assert studio.book.ask(unsettled, [line]) == {}
    studio.undo(studio.last() - 1)  # what was agreed is taken back
    assert set(studio.book.ask(unsettled, [line])) == {line}


def test_what_was_sent_of_one_lot_and_is_taken_of_another_is_asked_about_too(
    studio: Studio,
) -> None:
    (_, skeins), (_, others) = shelved(studio, 2, 2)
    (line,) = ordered(studio, "1042", 4)
    studio.do(take_for, line, skeins)
    studio.do(send, "1042")
    assert studio.book.ask(unsettled, [line]) == {}
    studio.do(take_for, line, others)
    assert set(studio.book.ask(unsettled, [line])) == {line}


def test_the_words_name_the_lots_and_the_least_alike(studio: Studio) -> None:
    (one, _), (other, _) = shelved(studio, 1, 1)
    codes = " and ".join(sorted(shown(studio.code(lot)) for lot in (one, other)))
    assert studio.book.ask(several_words, [one, other]) == (
        f"One line from 2 lots: {codes}; how far apart they are was not measured. Ask the "
        "customer, or put a card about alternating rows in.")
    read_lot(studio, one, (48.3, -36.6, 3.3))
    read_lot(studio, other, (48.3, -36.6, 5.3))
    assert "; the least alike are 1.2 ± 0.5 apart, " in (
        studio.book.ask(several_words, [one, other]))
