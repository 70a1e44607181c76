"""Bases: what is said of a yarn, from a delivery on; tags follow the version of their cones."""

from dataclasses import dataclass

from sqlalchemy import func, select

from app.calculations.fibre_text import composition_text, read_composition
from app.records import Base, BaseVersion, PutUp
from app.store.deed import Deed


@dataclass(frozen=True, slots=True)
class PutUpWords:
    """A form sold: wound so many turns, tagged with what is surely inside."""

    name: str
    turns: int
    reel_mm: int
    nominal_mg: int
    nominal_mm: int


@dataclass(frozen=True, slots=True)
class BaseWords:
    """What is said of a base now; per mille where it is a share."""

    name: str
    fibre: str
    millitex: int
    oil_permille: int
    relax_permille: int
    put_ups: tuple[PutUpWords, ...]
    regain_permille: int = 160
    knit: str = ""
    care: str = ""
    origin: str = ""


def describe_base(deed: Deed, words: BaseWords) -> int:
    """A base, or the next version of one: cones of later deliveries are told by it.

    Raises BadInput where the fibres do not make 100 %.
    """
    fibre = composition_text(read_composition(words.fibre))
    base = deed.value(select(Base.id).where(Base.name == words.name, Base.struck.is_(None)))
    if base is None:
        base = deed.add(Base(name=words.name))
    last = deed.value(select(func.max(BaseVersion.number)).where(BaseVersion.base == base)) or 0
    version = deed.add(BaseVersion(
        base=base, number=last + 1, fibre=fibre, millitex=words.millitex,
        oil_permille=words.oil_permille, relax_permille=words.relax_permille,
        regain_permille=words.regain_permille, knit=words.knit, care=words.care,
        origin=words.origin,
    ))
    deed.add_all([
        PutUp(base_version=version, name=put_up.name, turns=put_up.turns, reel_mm=put_up.reel_mm,
              nominal_mg=put_up.nominal_mg, nominal_mm=put_up.nominal_mm)
        for put_up in words.put_ups
    ])
    deed.say(f"described {words.name}, version {last + 1}: {fibre}")
    return version
