"""Plates and bundles: a code once, and a disc on one cord at a time."""

import pytest

from app.problems import Refused
from app.records import OnBundle, Plate, PlateStay
from app.store.deed import Deed
from app.work.bundling import tie_on
from tests.makers import Studio
from tests.records.forbidden import allows_after_undo, forbids_twice


def test_a_plate_has_its_code_alone(studio: Studio) -> None:
    forbids_twice(studio, lambda: Plate(code="S0036", kind="shelf"))
    allows_after_undo(studio, lambda: Plate(code="S0036", kind="shelf"))


def test_a_disc_hangs_on_one_cord_and_yarn_on_one(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 2)
    bundle = studio.do(tie_on, studio.discs[0], [group])

    def once_more(deed: Deed, stay: PlateStay | OnBundle) -> None:
        stay.since = deed.happened
        deed.add(stay)
    for stay in (PlateStay(plate=studio.discs[0], bundle=bundle),
                 OnBundle(yarn=group, bundle=bundle)):
        with pytest.raises(Refused, match="done already"):
            studio.do(once_more, stay)


def test_stays_know_whose_they_are() -> None:
    assert (PlateStay.stay_of, OnBundle.stay_of) == ("plate", "yarn")
