"""The door: a cone's number is its own for ever, and it weighs something."""

from typing import Any

from app.records import Cone, Delivery, Fill, FillPart, Jar, Reading, Supplier, SupplierLot
from tests.makers import Studio
from tests.records.forbidden import (
    allows_after_undo,
    forbids,
    forbids_twice,
)


def cone(**changes: Any) -> Cone:
    return Cone(**{"code": "C0114F", "delivery": 1, "supplier_lot": 1, "base_version": 1,
                   "gross_mg": 2, "tare_mg": 1, **changes})


def test_two_cones_never_share_a_number_and_a_taken_back_one_is_free(studio: Studio) -> None:
    studio.cone()
    forbids_twice(studio, cone)
    studio.undo()
    assert studio.cone()


def test_a_cone_weighs_more_than_its_centre(studio: Studio) -> None:
    studio.cone()
    forbids(studio, "weighs_something", cone(gross_mg=1))
    forbids(studio, "weighs_something", cone(tare_mg=-1))


def test_a_delivery_is_one_or_the_opening_stock(studio: Studio) -> None:
    forbids(studio, "ck_delivery_kind", Delivery(
        supplier=None, kind="gift", note_no="", arrived=studio.clock.now))


def test_suppliers_lots_and_jars_have_their_names_alone(studio: Studio) -> None:
    studio.cone()
    allows_after_undo(studio, lambda: Supplier(name="Dye works"))
    forbids_twice(studio, lambda: Supplier(name="Aske works"))
    forbids_twice(studio, lambda: SupplierLot(supplier=1, said="p"))
    forbids_twice(studio, lambda: Jar(code="J001H", dye="B1"))


def test_a_fill_holds_something_of_one_source_each(studio: Studio) -> None:
    studio.cone()
    studio.do(lambda deed: deed.add(Jar(code="J001H", dye="B1")))
    fill = Fill(jar=1, number=1, mg=10, strength_permille=None)
    forbids(studio, "holds_something", Fill(jar=1, number=1, mg=0, strength_permille=None))
    forbids(studio, "one_source", fill, FillPart(fill=1, mg=5))
    fill = Fill(jar=1, number=1, mg=10, strength_permille=None)
    forbids(studio, "one_source", fill, FillPart(fill=1, supplier_lot=1, from_fill=1, mg=5))
    fill = Fill(jar=1, number=1, mg=10, strength_permille=None)
    forbids(studio, "adds_something", fill, FillPart(fill=1, supplier_lot=1, mg=0))


def test_a_reading_is_of_one_thing_and_of_a_known_kind(studio: Studio) -> None:
    one = studio.cone()
    forbids(studio, "of_one_thing", Reading(cone=None, yarn=None, kind="wrap mg", value=1))
    forbids(studio, "ck_reading_kind", Reading(cone=one, yarn=None, kind="mood", value=1))
