"""People: initials are theirs for ever; names are kept where they can be removed."""

import hashlib

import pytest
from sqlalchemy import select

from app.lookups.recent import entries
from app.lookups.studio import people
from app.problems import NotFound, Refused
from app.records import Personal
from app.store.deed import By, Deed
from app.work.people import enrol, personal, retire
from app.work.studio import choose
from tests.makers import Studio


def test_someone_begins_to_work_here(studio: Studio) -> None:
    assert studio.done(enrol, "LR", "Lise Rask").said == "enrolled LR"
    assert studio.book.ask(people) == ("LR", "OW")


@pytest.mark.parametrize("odd", ["", "TOOLONG", "L R", "L-R"])
def test_what_are_no_initials_is_told(studio: Studio, odd: str) -> None:
    with pytest.raises(Refused, match="are not initials: one to four letters or digits"):
        studio.do(enrol, odd)


def test_initials_of_one_who_left_are_not_given_to_another(studio: Studio) -> None:
    studio.do(enrol, "LR", "Lise Rask")
    studio.do(choose, {"name": "Quernlow Dyeyard"}, by=By("LR", "desk"))
    assert studio.done(retire, "LR").said == "LR left"
    with pytest.raises(Refused, match="LR is taken, also by one who left"):
        studio.do(enrol, "LR", "Lars Rud")
    assert "LR" in {entry.person for entry in studio.book.ask(entries)}


def test_who_left_leaves_once_and_a_stranger_not_at_all(studio: Studio) -> None:
    studio.do(enrol, "LR")
    studio.do(retire, "LR")
    with pytest.raises(Refused, match="LR left already"):
        studio.do(retire, "LR")
    with pytest.raises(NotFound, match="Nobody here signs as ZZ"):
        studio.do(retire, "ZZ")


def test_an_undone_leaving_and_an_undone_beginning(studio: Studio) -> None:
    studio.do(enrol, "DA")
    studio.do(retire, "OW")
    studio.book.undo(studio.last(), by=By("DA", "desk"))
    studio.do(enrol, "LR")
    studio.undo()
    assert studio.book.ask(people) == ("DA", "OW")
    with pytest.raises(Refused, match="LR is taken"):
        studio.do(enrol, "LR")


def test_without_a_name_nothing_personal_is_kept(studio: Studio) -> None:
    before = studio.book.ask(lambda c: c.execute(select(Personal.id)).all())
    studio.do(enrol, "DA")
    assert studio.book.ask(lambda c: c.execute(select(Personal.id)).all()) == before


def test_two_of_one_name_have_different_digests(studio: Studio) -> None:
    salted = []

    def twice(deed: Deed) -> None:
        salted.extend(personal(deed, "name", "Bo Ek", customer=one) for one in (1, 2))

    studio.do(twice)
    one, other = salted
    assert one.digest != other.digest
    assert one.digest == hashlib.sha256(f"{one.salt}Bo Ek".encode()).hexdigest()


def test_who_left_signs_nothing_any_more_also_where_they_are_signed_on_still(
    studio: Studio,
) -> None:
    studio.do(enrol, "LP", "Lin Perrow")
    lin = By("LP", "tagging")
    studio.do(enrol, "DA", by=lin)
    studio.do(retire, "LP")
    with pytest.raises(Refused, match="LP left and signs nothing any more; nothing was saved"):
        studio.do(enrol, "XX", by=lin)
    with pytest.raises(Refused, match="LP left"):
        studio.book.undo(studio.last(), by=lin)
    studio.undo()
    studio.do(enrol, "XX", by=lin)
    studio.check()
