"""A weigh-out: begun for a bath by a recipe, for bottles or a stock; closed when all is in."""

from dataclasses import dataclass

from sqlalchemy import func, select

from app.lookups.weighings import WeighOut, weigh_out
from app.problems import NotFound, Refused
from app.records import Colourway, Component, RecipeVersion, WeighedFor, Weighing, Yarn
from app.records.weighing import PURPOSES
from app.store.deed import Deed
from app.work.dividing import must_be_whole

FULLY = 1000  # per mille


@dataclass(frozen=True, slots=True)
class WeighingIn:
    """What is weighed for. The dry mass is that of the yarn as wound, unless it was weighed.

    A weight with a pick-up is a damp one: dry = damp/(1 + pick-up).
    """

    purpose: str
    recipe_version: int | None = None
    yarn: tuple[int, ...] = ()
    weighed_mg: int | None = None
    pick_up_permille: int | None = None
    bath_ml: int | None = None


def begin_weighing(deed: Deed, weighing: WeighingIn) -> int:
    """Begin a weigh-out; from here on its recipe version stands. The weigh-out."""
    if weighing.purpose not in PURPOSES:
        raise Refused(f"Nothing is weighed for a {weighing.purpose}; nothing was saved.",
                      f"Choose {', '.join(PURPOSES)}.")
    name = "a stock" if weighing.purpose == "stock" else _recipe(deed, weighing.recipe_version)
    rows = list(dict.fromkeys(weighing.yarn))
    for row in rows:
        must_be_whole(deed, row)
    dry_mg, basis = _dry(deed, weighing, rows)
    if weighing.purpose == "bath" and not dry_mg:
        raise Refused("Nobody said for how much yarn; nothing was saved.",
                      "Scan its discs, or weigh it dry.")
    number = deed.add(Weighing(
        purpose=weighing.purpose, dry_mg=dry_mg, dry_basis=basis, bath_ml=weighing.bath_ml,
        recipe_version=None if weighing.purpose == "stock" else weighing.recipe_version,
        pick_up_permille=weighing.pick_up_permille if basis == "weighed damp" else None))
    deed.add_all([WeighedFor(weighing=number, yarn=row) for row in rows])
    deed.say(f"began to weigh out {name}" + (f" for {dry_mg / 1000:g} g" if dry_mg else ""))
    return number


def close_weighing(deed: Deed, weighing: int) -> None:
    """All is weighed; what the recipe asks and nobody weighed is noted.

    Refused while a cup stands on the balance.
    """
    out = must_be_open(deed, weighing)
    waiting = next((line for line in out.lines if line.is_open), None)
    if waiting is not None:
        raise Refused(f"{waiting.asked} is not weighed yet; nothing was saved.",
                      "Take its weight, or say what became of the cup.")
    if out.missing:
        deed.note(f"Not weighed: {', '.join(out.missing)}.")
    deed.change(Weighing, weighing, closed=deed.seq)
    deed.say(f"closed weigh-out {weighing}")


def must_be_open(deed: Deed, weighing: int) -> WeighOut:
    """The weigh-out; raises NotFound or Refused where it is not open."""
    out = weigh_out(deed.connection, weighing)
    if out is None:
        raise NotFound("This weigh-out is not in the book; nothing was saved.", "Begin one.")
    if out.closed:
        raise Refused(f"Weigh-out {weighing} is closed; nothing was saved.",
                      "Begin another, or enter it as an addition at the pot.")
    return out


def _recipe(deed: Deed, version: int | None) -> str:
    row = deed.one(
        select(Colourway.name, RecipeVersion.number)
        .join(RecipeVersion, RecipeVersion.colourway == Colourway.id)
        .where(RecipeVersion.id == version, RecipeVersion.struck.is_(None)))
    if row is None:
        raise NotFound("This recipe is not in the book; nothing was saved.", "Choose a recipe.")
    if deed.value(select(Component.id).where(
            Component.recipe_version == version, Component.struck.is_(None))) is None:
        deed.note("No dye is written in this recipe: every jar is taken as it is scanned.")
    return f"{row.name}, version {row.number}"


def _dry(deed: Deed, weighing: WeighingIn, rows: list[int]) -> tuple[int | None, str]:
    if weighing.weighed_mg is None:
        wound = deed.value(select(func.sum(Yarn.mg)).where(Yarn.id.in_(rows)))
        return wound, "wound"
    if weighing.weighed_mg <= 0 or (weighing.pick_up_permille or 0) < 0:
        raise Refused("Yarn weighs something; nothing was saved.", "Weigh it again.")
    if weighing.pick_up_permille is None:
        return weighing.weighed_mg, "weighed dry"
    dry = round(weighing.weighed_mg * FULLY / (FULLY + weighing.pick_up_permille))
    deed.note(f"Reckoned from a damp weight at {weighing.pick_up_permille / 10:g} % pick-up: "
              f"{dry / 1000:.1f} g dry. The weight from winding is surer.")
    return dry, "weighed damp"
