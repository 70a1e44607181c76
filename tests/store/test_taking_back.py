"""Undo: struck and put back, never removed; refused where something stands on it."""

import json
from collections.abc import Callable
from typing import Any

import pytest
from sqlalchemy import select

from app.calculations.codes import Kind
from app.problems import NotFound, Refused
from app.records import DeedRow, DyeLot, Plate, PlateStay, Yarn
from app.store.book import Done
from app.work.bundling import make_plates, take_off, tie_on
from app.work.dyeing import name_lot
from app.work.finishing import finish
from app.work.holding import clear, hold, lift_hold
from app.work.mixing import lose, mix, recognise, split
from app.work.tagging import apply_tag, reprint, spoil_tags
from tests.deeds import customer, erase
from tests.makers import Clock, Studio


def row(studio: Studio, kind: Any, number: int) -> Any:
    return studio.book.ask(lambda c: c.execute(select(kind).where(kind.id == number)).one())


def refused(studio: Studio, seq: int) -> str:
    with pytest.raises(Refused) as raised:
        studio.undo(seq)
    return raised.value.what


def test_what_a_deed_added_is_struck_and_stays_readable(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 3)
    wound = studio.last()
    studio.undo()
    assert row(studio, Yarn, group).struck == studio.last() == wound + 1
    assert row(studio, Yarn, group).count == 3
    assert studio.present() == {}
    studio.check()


def test_what_a_deed_changed_is_put_back(studio: Studio) -> None:
    group, disc = studio.wind(studio.cone(), 3), studio.discs[0]
    studio.do(tie_on, disc, [group])
    studio.do(take_off, disc)
    studio.undo()
    stay = studio.book.ask(lambda c: c.execute(select(PlateStay)).one())
    assert (stay.until, stay.ended_by, stay.struck) == (None, None, None)
    studio.check()


def test_the_entry_that_takes_back_names_the_one_it_takes_back(studio: Studio) -> None:
    studio.wind(studio.cone(), 3)
    studio.book.undo(studio.last(), by=studio.by, reason="wrong cone")
    entry = studio.book.ask(
        lambda c: c.execute(select(DeedRow).order_by(DeedRow.seq.desc()).limit(1)).one()
    )
    body = json.loads(entry.body)
    assert entry.undoes == entry.seq - 1
    assert (body["said"], body["reason"]) == (
        "took back: wound 3 skeins of C·0001·7, red ties",
        "wrong cone",
    )


def test_a_deed_is_taken_back_once(studio: Studio) -> None:
    studio.wind(studio.cone(), 3)
    wound = studio.last()
    studio.undo()
    assert refused(studio, wound) == "This was taken back before."


def test_taking_back_is_not_taken_back(studio: Studio) -> None:
    studio.wind(studio.cone(), 3)
    studio.undo()
    assert refused(studio, studio.last()) == "This was taken back before."


def test_an_entry_that_is_not_there_cannot_be_taken_back(studio: Studio) -> None:
    with pytest.raises(NotFound, match="no entry 999"):
        studio.undo(999)


def test_a_code_of_an_undone_bath_is_never_given_again(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 3)
    burnt = studio.code(studio.dye(group))
    studio.undo()
    codes = {studio.code(studio.dye(studio.wind(studio.cone(), 1))) for _ in range(25)}
    assert burnt not in codes
    kept = studio.book.ask(lambda c: c.execute(select(DyeLot.code)).scalars().all())
    assert burnt in kept


def test_the_numbers_of_an_undone_delivery_are_burnt_too(studio: Studio) -> None:
    studio.cones(2)
    studio.undo()
    group = studio.wind(studio.cone(), 1)
    assert group
    entry = studio.book.ask(
        lambda c: c.execute(select(DeedRow.body).order_by(DeedRow.seq.desc()).limit(1)).scalar()
    )
    assert "C·0003" in json.loads(entry)["said"]


def piled(studio: Studio, count: int = 4) -> tuple[int, int]:
    group = studio.wind(studio.cone(), count)
    studio.dye(group)
    return group, studio.finish(group, red=count)[0]


def pool_of_two(studio: Studio) -> tuple[int, int, int]:
    a, b = studio.wind(studio.cone(), 3), studio.wind(studio.cone(), 2)
    return a, b, studio.mix(a, b)


Step = Callable[[Studio], Done[Any]]

UNDONE: dict[str, Step] = {
    "a winding on a disc": lambda s: s.done(lambda deed: tie_on(deed, s.discs[0], [s.wound])),
    "a mixing": lambda s: s.done(mix, [s.wound, s.other]),
    "a split": lambda s: s.done(split, s.wound, [1, 2]),
    "a loss": lambda s: s.done(lose, s.wound, 1),
    "a count": lambda s: s.done(finish, [s.wound], {"red": 3}),
    "a short count": lambda s: s.done(finish, [s.wound], {"red": 2}),
    "a count with one too many": lambda s: s.done(finish, [s.wound], {"red": 4}),
    "a hold": lambda s: s.done(hold, "cone", 1, "oil"),
}


class Ready(Studio):
    """Two groups, 3 of one cone and 2 of another, and a third on a disc."""

    def __init__(self, book: Any) -> None:
        super().__init__(book)
        self.wound, self.other = self.wind(self.cone(), 3), self.wind(self.cone(), 2)
        self.wind(self.cone(), 2, disc=self.discs[1])


def answers(studio: Studio) -> Any:
    rows = studio.book.ask(
        lambda c: c.execute(select(Yarn.id).where(Yarn.struck.is_(None))).scalars().all()
    )
    return studio.present(), {r: studio.origins(r) for r in rows}


@pytest.mark.parametrize("what", UNDONE)
def test_an_undone_deed_leaves_all_answers_as_before(book: Any, what: str) -> None:
    studio = Ready(book)
    before = answers(studio)
    done = UNDONE[what](studio)
    assert answers(studio) != before or "hold" in what or "disc" in what
    studio.undo(done.seq)
    assert answers(studio) == before
    studio.check()
    assert UNDONE[what](studio).seq == done.seq + 2


def test_a_winding_that_went_into_a_bath_stays(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 3)
    wound = studio.last()
    studio.dye(group)
    assert refused(studio, wound) == (
        "It cannot be taken back: something was done with this yarn since."
    )


def test_it_can_be_taken_back_once_what_stood_on_it_was_taken_back(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 3)
    wound = studio.last()
    studio.dye(group)
    studio.undo()
    studio.undo(wound)
    assert studio.present() == {}
    studio.check()


def test_a_mixing_that_was_split_since_stays(studio: Studio) -> None:
    *_, pool = pool_of_two(studio)
    mixed = studio.last()
    studio.split(pool, 2, 3)
    assert "this yarn" in refused(studio, mixed)


def test_a_hold_with_a_clearing_stays_and_a_lifting_is_put_back(studio: Studio) -> None:
    group, cone = studio.wind(studio.cone(), 3), 1
    placed = studio.done(hold, "cone", cone, "oil under the lamp")
    studio.do(clear, placed.answer, group, "lamp: clean")
    assert "since" in refused(studio, placed.seq)
    lifted = studio.done(lift_hold, placed.answer, "washed out")
    studio.undo(lifted.seq)
    with pytest.raises(Refused, match="Hold 1 was lifted already"):
        [studio.do(lift_hold, placed.answer, "again") for _ in range(2)]


def test_a_disc_that_was_used_again_does_not_go_back_to_its_old_cord(studio: Studio) -> None:
    a, b, disc = studio.wind(studio.cone(), 2), studio.wind(studio.cone(), 2), studio.discs[0]
    studio.do(tie_on, disc, [a])
    off = studio.done(take_off, disc)
    studio.do(tie_on, disc, [b])
    studio.do(take_off, disc)
    assert "since" in refused(studio, off.seq)
    studio.check()


def test_a_tag_tied_on_before_the_pile_was_used_up_waits_for_the_later_ones(
    studio: Studio,
) -> None:
    _, pile = piled(studio, 3)
    done = [studio.done(apply_tag, tag) for tag in studio.print(pile, 3)]
    assert "since" in refused(studio, done[0].seq)
    studio.undo(done[2].seq)
    studio.undo(done[0].seq)
    assert {key[0]: amount.count for key, amount in studio.present().items()} == {
        "table": 1,
        "piled": 2,
    }
    studio.check()


def test_a_bath_whose_tags_are_printed_stays(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 3)
    studio.dye(group)
    bath = studio.last()
    (pile,) = studio.finish(group, red=3)
    studio.print(pile, 3)
    assert "since" in refused(studio, bath)


def test_a_code_once_given_is_not_taken_from_its_lot(studio: Studio) -> None:
    sure = studio.clock.now
    studio.clock.now = Clock().now.replace(year=2000)
    lot = studio.dye(studio.wind(1, 2)) if studio.cones(1) else 0
    studio.clock.now = sure
    studio.do(name_lot, lot, studio.random)
    assert refused(studio, studio.last()) == (
        "A code that was given stays given; nothing was saved."
    )
    assert studio.code(lot)


def test_a_spoiled_tag_and_a_reprint_are_put_back(studio: Studio) -> None:
    _, pile = piled(studio)
    tags = studio.print(pile, 4)
    studio.do(spoil_tags, tags[:1], "jammed")
    studio.undo()
    skein = studio.do(apply_tag, tags[0])
    code = studio.code(1)
    new = studio.done(reprint, skein, f"{code}-ZZ", "{}", ("swing tag", 1))
    studio.undo(new.seq)
    studio.do(reprint, skein, f"{code}-ZY", "{}", ("swing tag", 1))
    with pytest.raises(Refused, match="done already"):
        studio.do(reprint, skein, f"{code}-ZZ", "{}", ("swing tag", 1))
    studio.check()


def test_a_recognition_is_taken_back_with_all_it_told(studio: Studio) -> None:
    a, _, pool = pool_of_two(studio)
    one, rest = studio.split(pool, 1, 4)
    before = studio.origins(one), studio.origins(rest)
    studio.do(recognise, one, pool, a)
    assert (studio.origins(one), studio.origins(rest)) != before
    studio.undo()
    assert (studio.origins(one), studio.origins(rest)) == before


def test_what_was_erased_on_request_is_never_brought_back(studio: Studio) -> None:
    who = studio.do(customer, "Ada Nygård")
    erased = studio.done(erase, who)
    assert refused(studio, erased.seq) == (
        "What was removed on request cannot be brought back; nothing was saved."
    )


def test_undone_plates_can_be_made_again_with_their_numbers(studio: Studio) -> None:
    made = studio.done(make_plates, Kind.SHELF, [3])
    studio.undo(made.seq)
    again = studio.do(make_plates, Kind.SHELF, [3])
    assert row(studio, Plate, again[0]).code == row(studio, Plate, made.answer[0]).code
