"""Kit bags: made of skeins from the shelf, opened again while they are not sold, sold whole."""

from collections import Counter
from collections.abc import Sequence

from sqlalchemy import select

from app.calculations.codes import Kind, numbered, read, shown
from app.lookups.skeins import named_by_tag
from app.problems import NotFound, Refused
from app.records import DyeLot, Kit, KitPattern, Whereabouts
from app.store.deed import Deed
from app.work.dividing import skeins
from app.work.moving import To, move
from app.work.selling import OrderIn, Wanted, order_of, place_order, till_number


def make_kit(deed: Deed, name: str, tagged: Sequence[int]) -> int:
    """A bag with its own code, and these skeins in it. The kit.

    Refused: held, promised or elsewhere, and one colour of one base from two lots.
    """
    if not name.strip():
        raise Refused("A kit needs a name; nothing was saved.", "Say what is knitted of it.")
    _one_lot_a_colour(deed, tagged)
    return fill_bag(deed, name.strip(), tagged)


def fill_bag(deed: Deed, name: str, tagged: Sequence[int], pattern: int | None = None) -> int:
    """The bag itself, with the next code, and these skeins in it. The kit."""
    codes = [read(code).number or 0 for (code,) in deed.all(select(Kit.code))]
    kit = deed.add(Kit(code=numbered(Kind.KIT, max(codes, default=0) + 1).text, name=name,
                       pattern=pattern))
    move(deed, tagged, To("kit", kit=kit))
    deed.say(f"made kit {_code(deed, kit)}, {name}: {skeins(len(set(tagged)))}")
    return kit


def open_kit(deed: Deed, kit: int, place: int, basis: str = "scanned") -> None:
    """A bag that was not sold is opened: its skeins lie on a shelf again, as `basis` says."""
    rows = _in_bag(deed, kit)
    move(deed, rows, To("shelf", place=place, basis=basis))
    deed.say(f"opened kit {_code(deed, kit)}: {skeins(len(rows))} on the shelf")


def sell_kit(deed: Deed, kit: int, customer: int | None = None, price: int | None = None) -> int:
    """The bag is sold as it is; what was in it stays known by the kit. The order that keeps it.

    Where no price is said it is that of its pattern, if it has one.
    """
    rows = _in_bag(deed, kit)
    if price is None:
        price = deed.value(
            select(KitPattern.price).join(Kit, Kit.pattern == KitPattern.id).where(Kit.id == kit))
    (line,) = place_order(deed, OrderIn(till_number(deed), deed.happened, "shop", (
        Wanted(f"kit {_code(deed, kit)}", len(rows), price=price),), customer))
    move(deed, rows, To("sent", line=line, kit=kit))
    deed.say(f"sold kit {_code(deed, kit)}, {skeins(len(rows))}"
             + ("" if customer else ", buyer not known"))
    return order_of(deed, line)


def _in_bag(deed: Deed, kit: int) -> list[int]:
    """The skeins in it now; raises NotFound or Refused where there is no such bag any more."""
    code = _code(deed, kit)
    stays = deed.all(
        select(Whereabouts.yarn, Whereabouts.state, Whereabouts.until)
        .where(Whereabouts.kit == kit, Whereabouts.struck.is_(None)).order_by(Whereabouts.yarn))
    if any(stay.state == "sent" for stay in stays):
        raise Refused(f"Kit {code} is sold; nothing was saved.",
                      "Take its skeins back by their tags.")
    rows = [stay.yarn for stay in stays if stay.until is None]
    if not rows:
        raise Refused(f"Kit {code} was opened before; nothing was saved.", "Make it anew.")
    return rows


def _code(deed: Deed, kit: int) -> str:
    code: str | None = deed.value(select(Kit.code).where(Kit.id == kit, Kit.struck.is_(None)))
    if code is None:
        raise NotFound("This kit is not in the book; nothing was saved.", "Scan the bag again.")
    return shown(code)


def _one_lot_a_colour(deed: Deed, tagged: Sequence[int]) -> None:
    lots = {tag.lot for tag in named_by_tag(deed.connection, tagged).values()}
    colours = Counter((row.colourway, row.base) for row in deed.all(
        select(DyeLot.colourway, DyeLot.base).where(DyeLot.id.in_(lots))))
    if any(count > 1 for count in colours.values()):
        deed.refuse("One colour of this kit is from two lots; nothing was saved.",
                    "Take all of a colour from one lot.")
