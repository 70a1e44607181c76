"""What customers wait for that has to be dyed: noted at the counter, until such a lot was dyed."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, exists, select
from sqlalchemy.orm import aliased

from app.calculations.codes import shown
from app.records import Base, Bath, Colourway, DeedRow, DyeLot, Offer, RecipeVersion

_NOTED = ("redye", "all new")
_LATER, _BATH = aliased(DyeLot), aliased(Bath)


@dataclass(frozen=True, slots=True)
class RedyeAsked:
    """So many are wanted to match a lot, or all anew in its colourway; no name stands here."""

    lot: str
    colourway: str
    base: str
    wanted: int
    way: str
    since: datetime

    @property
    def words(self) -> str:
        """'3 to match 26·15·R6F', '9 anew, for 26·15·R6F'."""
        code = shown(self.lot) if self.lot else "a lot without a code"
        return (f"{self.wanted} to match {code}" if self.way == "redye"
                else f"{self.wanted} anew, for {code}")


_ASKED = (
    select(DyeLot.code, Colourway.name, Base.name.label("base"), Offer.wanted, Offer.way,
           DeedRow.happened)
    .join(DyeLot, DyeLot.id == Offer.lot).join(Colourway, Colourway.id == DyeLot.colourway)
    .join(Base, Base.id == DyeLot.base).join(DeedRow, DeedRow.seq == Offer.deed)
    .where(Offer.way.in_(_NOTED), Offer.answer == "taken", Offer.other_lot.is_(None),
           Offer.struck.is_(None),
           ~exists().where(RecipeVersion.colourway == DyeLot.colourway,
                           _BATH.recipe_version == RecipeVersion.id, _BATH.deed > Offer.deed,
                           _LATER.bath == _BATH.id, _LATER.base == DyeLot.base,
                           _LATER.struck.is_(None)))
    .order_by(Offer.id)
)


def redyes_asked(connection: Connection) -> tuple[RedyeAsked, ...]:
    """The oldest first; once a lot of the colourway is dyed on the base, it is looked at instead.
    """
    return tuple(RedyeAsked(row.code or "", row.name, row.base, row.wanted, row.way, row.happened)
                 for row in connection.execute(_ASKED))
