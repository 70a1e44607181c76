"""The owner's desk: holds, finds and matches, who leaves, and a clock that went wrong."""

from sqlalchemy import Connection

from app.calculations.codes import Kind
from app.demo.finishing import pile_of
from app.demo.hands import Hands
from app.demo.opening import base_called
from app.demo.sources import Line
from app.lookups.holds import live_holds
from app.lookups.present import leaves
from app.lookups.walks import below
from app.problems import NotFound
from app.work.holding import hold, lift_hold
from app.work.matching import belongs_to, find, is_missing_from, new_tag
from app.work.people import retire
from app.work.selling import set_price


def put_hold(hands: Hands, line: Line) -> None:
    """A hold on a cone or a lot."""
    if "cone" in line:
        hands.do(hold, "cone", hands.thing(Kind.CONE, line["cone"]), line["why"])
    else:
        hands.do(hold, "lot", hands.lot(line["lot"]), line["why"])


def lift_the_hold(hands: Hands, line: Line) -> None:
    """The hold on a lot ends."""
    hands.do(lift_hold, _hold_on(hands, line["lot"]), line["why"])


def find_skein(hands: Hands, line: Line) -> None:
    """One without a tag lies somewhere; it stands beside all totals."""
    base = hands.book.ask(base_called, line["base"])
    hands.kept[line["keep"]] = [hands.do(find, base, round(line["g"] * 1000))]


def match_missing(hands: Hands, line: Line) -> None:
    """The find is the one that was missing when that lot was counted; it gets a tag."""
    (found,) = hands.kept.pop(line["kept"])
    missing = hands.book.ask(missing_of, hands.lot(line["lot"]))
    hands.do(is_missing_from, found, missing)
    hands.do(new_tag, found, hands.kept[line["new"]].pop(0))


def wears_anothers(hands: Hands, line: Line) -> None:
    """A skein wears another lot's tag: it is put right, and gets a tag of its own lot."""
    skein = hands.skeins(hands.lot(line["says"]))[-1]
    hands.do(belongs_to, skein, hands.book.ask(pile_of, hands.lot(line["is"])))
    hands.do(new_tag, skein, hands.kept[line["new"]].pop(0))


def price(hands: Hands, line: Line) -> None:
    """A put-up costs something else from now on."""
    hands.do(set_price, hands.book.ask(base_called, line["base"]), line["put_up"], line["price"])


def leave(hands: Hands, line: Line) -> None:
    """Someone leaves; the initials stay theirs."""
    hands.do(retire, line["who"])


def _hold_on(hands: Hands, code: str) -> int:
    found = next((one.id for one in hands.book.ask(live_holds) if one.code == code), None)
    if found is None:
        raise NotFound(f"No hold is on {code}.")
    return found


def missing_of(connection: Connection, lot: int) -> int:
    """The row of a lot that was counted short."""
    return next(leaf.yarn for leaf in leaves(connection, below(connection, "lot", lot))
                if leaf.state == "missing at a count")
