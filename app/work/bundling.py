"""Bundles: a disc means what it held at the moment the deed happened."""

from collections.abc import Sequence

from sqlalchemy import select

from app.calculations.codes import Kind, numbered
from app.lookups.discs import bundle_on, yarn_on_bundle, yarn_on_disc
from app.problems import NotFound, Refused
from app.records import Bundle, OnBundle, Plate, PlateStay
from app.store.deed import Deed


def make_plates(deed: Deed, kind: Kind, numbers: Sequence[int], words: str = "") -> list[int]:
    """Discs and plates of one kind, ready to be cut; refused where a number is taken."""
    codes = [numbered(kind, number).text for number in numbers]
    taken = deed.all(select(Plate.code).where(Plate.code.in_(codes), Plate.struck.is_(None)))
    if taken:
        numbers_taken = ", ".join(code[1:-1] for (code,) in taken)
        raise Refused(f"There is a {kind.value} {numbers_taken} already; nothing was saved.",
                      "Choose other numbers.")
    plates = deed.add_all([Plate(code=code, kind=kind.value, words=words) for code in codes])
    deed.say(f"made {len(codes)} {kind.value} plate{'' if len(codes) == 1 else 's'}")
    return plates


def tie_on(deed: Deed, disc: int, groups: Sequence[int]) -> int:
    """Skeins on a cord with this disc; refused while the disc hangs on a live bundle."""
    if bundle_on(deed.connection, disc, deed.happened) is not None:
        deed.refuse(f"Disc {number_of(deed, disc)} hangs on a live bundle; nothing was saved.",
                    "Take it off there first, or take another disc.")
    bundle = deed.add(Bundle())
    deed.begin(PlateStay(plate=disc, bundle=bundle))
    _string(deed, bundle, groups)
    deed.say(f"tied disc {number_of(deed, disc)} on")
    return bundle


def add_to_cord(deed: Deed, disc: int, groups: Sequence[int]) -> int:
    """More skeins on the cord that this disc hangs on already."""
    bundle = bundle_on(deed.connection, disc, deed.happened)
    if bundle is None:
        return tie_on(deed, disc, groups)
    _string(deed, bundle, groups)
    deed.say(f"tied more on disc {number_of(deed, disc)}")
    return bundle


def _string(deed: Deed, bundle: int, groups: Sequence[int]) -> None:
    """Onto this cord, and off the one they were on."""
    for group in groups:
        before = deed.value(select(OnBundle.bundle).where(
            OnBundle.yarn == group, OnBundle.until.is_(None), OnBundle.struck.is_(None)))
        deed.begin(OnBundle(yarn=group, bundle=bundle))
        if before is not None:
            free_empty_disc(deed, before)


def take_off(deed: Deed, disc: int) -> None:
    """The disc comes off its cord; the yarn goes on without it."""
    bundle = bundle_on(deed.connection, disc, deed.happened)
    if bundle is None:
        raise Refused(f"Disc {number_of(deed, disc)} hangs on nothing; nothing was saved.",
                      "Scan the disc that is on the yarn.")
    deed.end(PlateStay, disc)
    for yarn in yarn_on_bundle(deed.connection, bundle, deed.happened):
        deed.end(OnBundle, yarn)
    deed.say(f"took disc {number_of(deed, disc)} off")


def free_empty_disc(deed: Deed, bundle: int) -> None:
    """Nothing is left on the cord: its disc may be used again."""
    if not yarn_on_bundle(deed.connection, bundle, deed.happened):
        discs = select(PlateStay.plate).where(
            PlateStay.bundle == bundle, PlateStay.until.is_(None), PlateStay.struck.is_(None))
        for (disc,) in deed.all(discs):
            deed.end(PlateStay, disc)


def yarn_on(deed: Deed, disc: int) -> list[int]:
    """The rows on this disc when the deed happened; raises NotFound where there were none."""
    rows = yarn_on_disc(deed.connection, disc, deed.happened)
    if not rows:
        raise NotFound(f"Disc {number_of(deed, disc)} hangs on nothing; nothing was saved.",
                       "Tie it on at winding, or scan the disc that is on the yarn.")
    return rows


def number_of(deed: Deed, plate: int) -> str:
    """The number cut into a disc or plate."""
    code: str | None = deed.value(select(Plate.code).where(Plate.id == plate))
    if code is None:
        raise NotFound("This plate is not in the book.", "Make it first.")
    return code[1:-1]
