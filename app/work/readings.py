"""What is read at the pot, in the wash and of the room: one tap, one number."""

from collections.abc import Mapping

from sqlalchemy import select

from app.calculations.pot_words import CLEARNESS
from app.problems import NotFound, Refused
from app.records import Bath, BathReading, InLoad, Load, LoadReading, Step
from app.store.deed import Deed

BLEEDING = ("none", "slight", "strong")
MOST = {"pH centi": 1400, "decidegrees": 1300, "clearness": 2, "water ml": 200_000, "rinse": 20,
        "bleed": 2, "room decidegrees": 600, "room permille": 1000}
"""What can be read at all; beyond it a digit slipped."""
RINSES_TOO_MANY = 4


def read_bath(
    deed: Deed, bath: int, *, ph_centi: int | None = None, decidegrees: int | None = None,
    clearness: int | None = None,
) -> list[int]:
    """pH in hundredths, heat in tenths of a degree, clearness 0 clear, 1 tinted, 2 coloured."""
    read = {"pH centi": ph_centi, "decidegrees": decidegrees, "clearness": clearness}
    given = _given(read)
    _must_be_there(deed, bath)
    words = {"pH centi": "pH {:.2f}", "decidegrees": "{:g} °C"}
    said = [CLEARNESS[value] if kind == "clearness" else
            words[kind].format(value / (100 if kind == "pH centi" else 10))
            for kind, value in given.items()]
    deed.say(f"bath {bath}: {', '.join(said)}")
    return deed.add_all([BathReading(bath=bath, kind=kind, value=value)
                         for kind, value in given.items()])


def step_done(deed: Deed, bath: int, step: int) -> int:
    """A step of the recipe was done in this bath."""
    version = _must_be_there(deed, bath)
    words = deed.value(select(Step.words).where(
        Step.id == step, Step.recipe_version == version, Step.struck.is_(None)))
    if words is None:
        raise Refused("This step is not of the recipe of this bath; nothing was saved.",
                      "Choose one of its steps.")
    deed.say(f"bath {bath}: {words}")
    return deed.add(BathReading(bath=bath, kind="step done", value=step))


def water_added(deed: Deed, bath: int, ml: int) -> int:
    """Water was added to a bath."""
    given = _given({"water ml": ml})
    _must_be_there(deed, bath)
    deed.say(f"bath {bath}: {ml / 1000:g} L of water added")
    return deed.add(BathReading(bath=bath, kind="water ml", value=given["water ml"]))


def rinse(deed: Deed, load: int, number: int) -> int:
    """The rinse after which the water was clear, or the last one done: 1, 2, 3 ..."""
    given = _given({"rinse": number})
    if number >= RINSES_TOO_MANY:
        deed.note(f"Rinse {number}: this is not rinsing any more, the dye is not fixed. Back to "
                  "acid and heat?")
    return _of_load(deed, load, given, f"rinse {number}")


def bleed(deed: Deed, load: int, how: int, yarn: int | None = None) -> int:
    """How the water looks: 0 none, 1 slight, 2 strong; of one yarn, or of the whole load."""
    given = _given({"bleed": how})
    if yarn is not None and deed.value(select(InLoad.id).where(
            InLoad.load == load, InLoad.yarn == yarn, InLoad.struck.is_(None))) is None:
        raise Refused("This yarn is not in the load; nothing was saved.", "Scan its disc again.")
    return _of_load(deed, load, given, f"bleeding {BLEEDING[how]}", yarn)


def room(deed: Deed, load: int, decidegrees: int, permille: int) -> list[int]:
    """The room where a load hangs: heat in tenths of a degree, humidity in per mille."""
    given = _given({"room decidegrees": decidegrees, "room permille": permille})
    _must_be_a_load(deed, load)
    deed.say(f"load {load}: the room has {decidegrees / 10:g} °C and {permille / 10:g} %")
    return deed.add_all([LoadReading(load=load, kind=kind, value=value)
                         for kind, value in given.items()])


def _given(read: Mapping[str, int | None]) -> dict[str, int]:
    given = {kind: value for kind, value in read.items() if value is not None}
    if not given:
        raise Refused("Nothing was read; nothing was saved.", "Give at least one number.")
    for kind, value in given.items():
        if not 0 <= value <= MOST[kind]:
            raise Refused(f"{value} cannot be read there; nothing was saved.",
                          f"Give a number from 0 to {MOST[kind]}.")
    return given


def _must_be_there(deed: Deed, bath: int) -> int:
    version: int | None = deed.value(select(Bath.recipe_version).where(
        Bath.id == bath, Bath.struck.is_(None)))
    if version is None:
        raise NotFound("This bath is not in the book; nothing was saved.", "Scan its pot.")
    return version


def _must_be_a_load(deed: Deed, load: int) -> str:
    step: str | None = deed.value(select(Load.step).where(Load.id == load, Load.struck.is_(None)))
    if step is None:
        raise NotFound("This load is not in the book; nothing was saved.", "Scan what is in it.")
    return step


def _of_load(
    deed: Deed, load: int, given: Mapping[str, int], words: str, yarn: int | None = None
) -> int:
    step = _must_be_a_load(deed, load)
    deed.say(f"{step} {load}: {words}")
    ((kind, value),) = given.items()
    return deed.add(LoadReading(load=load, yarn=yarn, kind=kind, value=value))
