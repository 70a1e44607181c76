"""Wash, rail, the count before the scissors, tags and shelves."""

from decimal import Decimal

from sqlalchemy import Connection, func, select

from app.calculations.codes import Kind
from app.calculations.units import milligrams
from app.demo.hands import Hands, TagSheet, lot_facts
from app.demo.sources import Line
from app.exchange.tag_printing import (
    LotOrder,
    OnStock,
    Printed,
    PrintOrder,
    print_for_lot,
    print_for_pile,
)
from app.exchange.tag_reprinting import print_in_place
from app.lookups.finishing import expected_by_tie
from app.lookups.tagging import pile_facts
from app.lookups.walks import below
from app.problems import NotFound
from app.records import Second, Yarn
from app.store.dialect import among, listed
from app.work.finishing import finish
from app.work.loading import into_load
from app.work.mixing import mix, split
from app.work.moving import To, call_second, move
from app.work.readings import bleed, rinse, room
from app.work.remaking import cut, gather
from app.work.tagging import apply_tag, spoil_tags

STOCK = "roll-62x40"
"""What tags are printed on where no paper says otherwise: one label after the other."""
SHELF_OF_BASE = {"Tarnfield 4-ply": 1, "Downholm Sock": 3, "Gossamer Lamb": 4,
                 "Moorit Hill DK": 5, "Flaxen Fold": 5, "Kettle Chunky": 6}
SPOILED_IN = 70
"""One sheet in so many jams once."""


def load(hands: Hands, line: Line) -> None:
    """Cords meet in a soak, wash, spin or on a rail."""
    plate = (hands.thing(Kind.VESSEL, line["vessel"]) if "vessel" in line else
             hands.thing(Kind.RAIL, line["rail"]) if "rail" in line else None)
    discs = [hands.thing(Kind.DISC, disc) for disc in hands.discs(line)]
    yarn = hands.yarn({"lots": line["lots"]}) if "lots" in line else []
    rows = [*yarn, *(row for disc in hands.discs(line) for row in hands.on(disc))]
    made = hands.do(into_load, line["step"], discs=discs, yarn=yarn, plate=plate)
    if line["step"] == "wash":
        hands.washes.update((row, made) for row in rows)
        hands.do(rinse, made, hands.balance.choice((2, 2, 2, 3)))
    if line["step"] == "rail":
        hands.do(room, made, hands.balance.randint(185, 225), hands.balance.randint(480, 620))


def bleeds(hands: Hands, line: Line) -> None:
    """The water of a lot's wash runs coloured."""
    rows = hands.yarn(line)
    hands.do(bleed, hands.washes[rows[0]], line["how"], rows[0])


def split_cord(hands: Hands, line: Line) -> None:
    """One row on several cords."""
    (yarn,) = hands.yarn(line)
    hands.do(split, yarn, line["counts"],
             [hands.thing(Kind.DISC, disc) for disc in line["onto"]])


def mix_cords(hands: Hands, line: Line) -> None:
    """The nets came open: nobody can tell any more."""
    hands.do(mix, hands.yarn(line))


def count(hands: Hands, line: Line) -> None:
    """The count by tie colour: as it should be, less what is short, or as the paper says."""
    yarn = hands.yarn(line)
    ties = line.get("ties") or {
        one.tie: one.count for one in hands.book.ask(expected_by_tie, yarn)}
    short = line.get("short", 0)
    first = next(iter(ties))
    hands.do(finish, yarn, {**ties, first: ties[first] - short})


def tags(hands: Hands, line: Line) -> None:
    """Tags for all that was counted of a lot, each tied on; some jam and are printed anew."""
    lot = _lot_of(hands, line)
    tied = _print(hands, lot, line)
    jams = "cord" in line and hands.whim.randrange(SPOILED_IN) == 0
    jammed = line.get("spoiled", int(jams))
    if jammed:
        hands.do(spoil_tags, tied[:jammed], "jammed in the printer")
        tied = tied[jammed:] + _print(hands, lot, line)
    now = line.get("tie_on", len(tied))
    for tag in tied[:now]:
        hands.do(apply_tag, tag)
    if "keep" in line:
        hands.kept[line["keep"]] = tied[now:]


def tags_again(hands: Hands, line: Line) -> None:
    """More tags than the count asks for, with what was said for a reason."""
    pile = hands.book.ask(pile_of, hands.lot(line["lot"]))
    order = PrintOrder(pile, line["tags"], OnStock(STOCK), why=line["why"])
    printed = print_for_pile(hands.book, hands.by, order, hands.chance, hands.token())
    hands.kept[line["keep"]] = _filed(hands, printed, STOCK)


def spoil(hands: Hands, line: Line) -> None:
    """Tags that lay ready are thrown away."""
    hands.do(spoil_tags, hands.kept.pop(line["kept"]), line["why"])


def tag_in_place(hands: Hands, line: Line) -> None:
    """A new tag for a skein whose old one cannot be read."""
    skein = hands.skeins(hands.lot(line["lot"]), ("shelf", "table"))[0]
    printed = print_in_place(hands.book, hands.by, [skein], OnStock(STOCK), hands.chance)
    _filed(hands, printed, STOCK)


def shelve(hands: Hands, line: Line) -> None:
    """What lies tagged on the table goes on its shelf."""
    lot = _lot_of(hands, line)
    skeins = hands.skeins(lot, ("table", "fair"))
    shelf = line.get("shelf") or SHELF_OF_BASE[hands.book.ask(lot_facts, lot).base]
    hands.do(move, skeins[:line.get("skeins")], To("shelf", hands.thing(Kind.SHELF, shelf)))


def show(hands: Hands, line: Line) -> None:
    """Some of a lot are carried to another shelf: the window, the seconds."""
    skeins = hands.skeins(hands.lot(line["lot"]))[:line["skeins"]]
    hands.do(move, skeins, To("shelf", hands.place(line)))


def seconds(hands: Hands, line: Line) -> None:
    """Sound yarn, to be sold below price."""
    hands.do(call_second, hands.skeins(hands.lot(line["lot"]))[:line["skeins"]], line["why"])


def make_small(hands: Hands, line: Line) -> None:
    """One skein is made into minis or balls."""
    skein = hands.skeins(hands.lot(line["lot"]))[0]
    hands.do(cut, skein, line["into"], line["put_up"], milligrams(Decimal(str(line["waste_g"]))))


def gather_seconds(hands: Hands, line: Line) -> None:
    """Back on a cord, their tags void: for another bath."""
    lot = hands.lot(line["lot"])
    rows = [row for row in hands.skeins(lot) if row in hands.book.ask(seconds_among, lot)]
    hands.do(gather, rows[:line["skeins"]], hands.thing(Kind.DISC, line["disc"]))


def _lot_of(hands: Hands, line: Line) -> int:
    """The lot that a line names, or the one on its disc."""
    if "cord" in line or "lot" in line:
        return hands.lot(line.get("cord") or line["lot"])
    (lot,) = hands.book.ask(pile_facts, hands.yarn(line)[0]).lots
    if lot is None:
        raise NotFound(f"The lot on disc {line['disc']} is not known.")
    return lot


def _print(hands: Hands, lot: int, line: Line) -> list[int]:
    stock = line.get("stock", STOCK)
    order = LotOrder(lot, OnStock(stock, line.get("first_cell", 1)))
    return _filed(
        hands, print_for_lot(hands.book, hands.by, order, hands.chance, hands.token()), stock)


def _filed(hands: Hands, printed: Printed, stock: str) -> list[int]:
    code = printed.places[0].code.rpartition("-")[0]
    hands.sheets.append(TagSheet(code, stock, len(printed.tags), printed.pdf))
    return list(printed.tags)


def pile_of(connection: Connection, lot: int) -> int:
    """The first pile that was counted of a lot."""
    return connection.execute(
        select(func.min(Yarn.id)).where(
            Yarn.kind == "pile", among(Yarn.id, "ids")),
        {"ids": listed(below(connection, "lot", lot))}).scalar_one()


def seconds_among(connection: Connection, lot: int) -> set[int]:
    """The seconds of a lot."""
    return set(connection.execute(
        select(Second.yarn).where(among(Second.yarn, "ids"), Second.struck.is_(None)),
        {"ids": listed(below(connection, "lot", lot))}).scalars())
