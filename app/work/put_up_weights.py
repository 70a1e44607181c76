"""The balance at the tag table: the room's moisture, what a put-up weighs, what it is sold as."""

import json

from sqlalchemy import select

from app.calculations.moisture import regain_of_reading
from app.calculations.put_up_weight import CheckedWeight, Verdict
from app.calculations.units import grams
from app.lookups.put_up_weights import REFERENCE_SKEINS, reference_skeins, to_weigh, weighed
from app.problems import Refused
from app.records import Part, PutUpWeight, RoomReading, Setting
from app.store.deed import Deed
from app.work.dividing import must_be_known

MOST_REGAIN_PERMILLE = 400
"""No fibre takes up more in a room: a digit slipped, or the skein hangs wet."""


def weigh_reference(deed: Deed, fibre: str, reading_mg: int, dry_mg: int) -> int:
    """The reference skein of a kind of fibre on the balance; its dry mass is kept. The reading."""
    if dry_mg < 1 or reading_mg < dry_mg:
        raise Refused("A skein in a room is no lighter than dry; nothing was saved.",
                      "Weigh it again, and look at its dry mass.")
    permille = round(regain_of_reading(grams(reading_mg), grams(dry_mg)) * 1000)
    if permille > MOST_REGAIN_PERMILLE:
        raise Refused(f"{permille / 10:g} % is more water than yarn takes up in a room; nothing "
                      "was saved.", "Look at the dry mass, and whether the skein is dry.")
    kept = reference_skeins(deed.connection)
    if kept.get(fibre) != dry_mg:
        deed.add(Setting(key=REFERENCE_SKEINS,
                         value=json.dumps(kept | {fibre: dry_mg}, sort_keys=True)))
    deed.say(f"the reference skein of {fibre} holds {permille / 10:g} %")
    return deed.add(RoomReading(kind="regain permille", value=permille, fibre=fibre))


def read_humidity(deed: Deed, permille: int) -> int:
    """The humidity of the room at the tag table, in per mille; the reading."""
    if not 0 <= permille <= 1000:
        raise Refused(f"{permille / 10:g} % is no humidity; nothing was saved.",
                      "Write a number from 0 to 100.")
    deed.say(f"the room at the tag table has {permille / 10:g} % humidity")
    return deed.add(RoomReading(kind="room permille", value=permille))


def weigh_put_up(deed: Deed, yarn: int, mg: int) -> int:
    """A skein, or one of a pile, on the balance, with the room's regain of that day. The weight."""
    must_be_known(deed, [yarn])
    if mg < 1:
        raise Refused("Nothing lies on the balance; nothing was saved.", "Weigh it again.")
    now = to_weigh(deed.connection, yarn, deed.happened)
    checked = now.checked(mg)
    words = ("the room's moisture not known" if checked is None
             else f"{checked.standard_g:.1f} g at {now.standard_permille / 10:g} %")
    deed.say(f"weighed {grams(mg):f} g: {words}")
    if checked is not None and checked.verdict in (Verdict.TOO_LIGHT, Verdict.FAR_TOO_LIGHT):
        deed.note(_too_light(checked, now.nominal_mg or 0))
    known = now.room.permille is not None
    return deed.add(PutUpWeight(yarn=yarn, mg=mg, regain_permille=now.room.permille,
                                regain_from=now.room.how if known else ""))


def sell_as(deed: Deed, weight: int, skein: int, whole_g: int) -> int:
    """The skein that weighed so is sold as fewer grams than its put-up; its weight, now its own.

    `skein` is what was weighed, or came out of the pile that was.
    """
    row = weighed(deed.connection, weight)
    must_be_known(deed, [skein])
    if row.yarn != skein and deed.value(select(Part.id).where(
            Part.child == skein, Part.parent == row.yarn, Part.struck.is_(None))) is None:
        raise Refused("Another skein was weighed; nothing was saved.", "Weigh this one.")
    now = to_weigh(deed.connection, skein, deed.happened)
    if row.room.permille is None or now.nominal_mg is None:
        raise Refused("Whether it is light or the air is dry is not known; nothing was saved.",
                      "Weigh the reference skein, or read the humidity, and weigh it again.")
    if not 0 < whole_g * 1000 < now.nominal_mg:
        raise Refused(f"{whole_g} g is not less than its tag says; nothing was saved.",
                      "Leave its tag as it is.")
    then = now.checked(row.mg, row.room)
    if then is not None and whole_g > then.standard_g:
        raise Refused(f"It holds {then.standard_g:.1f} g; nothing was saved.",
                      f"Sell it as {then.sell_as_g} g or less.")
    deed.change(PutUpWeight, weight, struck=deed.seq)
    deed.say(f"sold as {whole_g} g from here on")
    return deed.add(PutUpWeight(
        yarn=skein, mg=row.mg, regain_permille=row.room.permille, regain_from=row.room.how,
        sell_as_mg=whole_g * 1000))


def _too_light(checked: CheckedWeight, nominal_mg: int) -> str:
    few = checked.verdict is Verdict.TOO_LIGHT
    return (f"{checked.standard_g:.1f} g is too light for {grams(nominal_mg):f} g: "
            f"{'few of a lot may be' if few else 'none may be'} so. Sell it as "
            f"{checked.sell_as_g} g, or call it a second.")
