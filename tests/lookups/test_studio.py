"""The studio's own choices and people."""

import pytest

from app.lookups.studio import DEFAULTS, everyone, name_of, people, setting, tie_colours
from app.work.people import enrol, retire
from app.work.studio import choose
from tests.makers import Studio


def test_what_was_never_chosen_is_as_the_program_has_it(studio: Studio) -> None:
    assert studio.book.ask(setting, "differ") == DEFAULTS["differ"]
    assert studio.book.ask(tie_colours)[0] == "red"


def test_the_newest_choice_counts_and_an_undone_one_does_not(studio: Studio) -> None:
    studio.do(choose, {"name": "Quernlow Dyeyard"})
    studio.do(choose, {"name": "Quernlow Dye Yard"})
    assert studio.book.ask(setting, "name") == "Quernlow Dye Yard"
    studio.undo()
    assert studio.book.ask(setting, "name") == "Quernlow Dyeyard"


def test_a_choice_that_does_not_exist_is_a_fault(studio: Studio) -> None:
    with pytest.raises(KeyError):
        studio.book.ask(setting, "colour of the door")


def test_those_who_left_do_not_sign_any_more(studio: Studio) -> None:
    studio.do(enrol, "LR", "Lise Rask")
    studio.do(enrol, "DA")
    assert studio.book.ask(people) == ("DA", "LR", "OW")
    studio.do(retire, "LR")
    assert studio.book.ask(people) == ("DA", "OW")


def test_the_name_behind_initials_is_told_if_there_is_one(studio: Studio) -> None:
    studio.do(enrol, "DA")
    assert studio.book.ask(name_of, "OW") == "Osk Wray"
    assert studio.book.ask(name_of, "DA") is None
    assert studio.book.ask(name_of, "ZZ") is None


def test_everyone_is_told_with_those_who_left_last(studio: Studio) -> None:
    studio.do(enrol, "LR", "Lise Rask")
    studio.do(enrol, "ZA")
    studio.do(retire, "LR")
    ow, za, lr = studio.book.ask(everyone)
    assert (ow.initials, ow.name, ow.left) == ("OW", "Osk Wray", None)
    assert (za.initials, za.name, za.left) == ("ZA", None, None)
    assert (lr.initials, lr.name) == ("LR", "Lise Rask")
    assert lr.left is not None
