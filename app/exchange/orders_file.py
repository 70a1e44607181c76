"""A web shop's list as orders: whole ones to be taken in, and those that stay out, each with why.

An order with a single row in trouble stays out whole, and nothing is saved here.
"""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime

from app.calculations.codes import bare_characters, shown
from app.exchange.cells import Cell, Row, Table
from app.exchange.columns import ColumnMatch
from app.exchange.rows import RowReader, RowTrouble
from app.exchange.written import day, decimal_marks, money, number_in, pieces
from app.lookups.order_words import ReadAs, StudioNames, read_words
from app.problems import BadInput
from app.work.selling import Wanted

MOST_OF_ONE = 500  # in one line; a studio winds some 110 skeins a day
MOST_ORDERS = 2_000  # in one list; a studio packs 20 to 30 a day
_LONGEST = 40  # of an order's number


@dataclass(frozen=True, slots=True)
class LotFacts:
    """A lot of the book that an order may name, and how many of it may still be promised."""

    id: int
    colourway: int
    base: int
    words: str
    left: int


@dataclass(frozen=True, slots=True)
class InShop:
    """What the book knows of what a list says: names, lots, orders, and customers."""

    names: StudioNames
    lots: Mapping[str, LotFacts] = field(default_factory=dict)
    orders: Mapping[str, datetime] = field(default_factory=dict)
    mails: Mapping[str, int] = field(default_factory=dict)
    numbers: Mapping[str, int] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Buyer:
    """Who an order is for, as the list says; `known` is the customer with this mail or number."""

    name: str
    mail: str
    number: str
    known: int | None


@dataclass(frozen=True, slots=True)
class LineRead:
    """A line of an order, and in a sentence why its words name no yarn of the studio, if so."""

    row: int
    wanted: Wanted
    doubt: str


@dataclass(frozen=True, slots=True)
class OrderRead:
    """A whole order of a list."""

    number: str
    placed: datetime
    buyer: Buyer | None
    lines: tuple[LineRead, ...]

    @property
    def count(self) -> int:
        """Skeins, minis or balls in all lines."""
        return sum(line.wanted.count for line in self.lines)


@dataclass(frozen=True, slots=True)
class OrdersList:
    """What a list gives: orders to take in, those that stay out, those that are there already."""

    orders: tuple[OrderRead, ...]
    out: tuple[str, ...]
    """Numbers of orders with a row in trouble."""
    before: Mapping[str, datetime]
    troubles: tuple[RowTrouble, ...]
    notes: tuple[str, ...] = ()

    @property
    def doubts(self) -> tuple[str, ...]:
        """Words that are kept as they are, a sentence each."""
        return tuple(dict.fromkeys(
            line.doubt for order in self.orders for line in order.lines if line.doubt))


@dataclass(slots=True)
class _Gathered:
    """The rows of one order so far."""

    placed: datetime
    said: dict[str, str] = field(default_factory=dict)
    lines: list[LineRead] = field(default_factory=list)
    out: bool = False


@dataclass(slots=True, kw_only=True)
class _Reader(RowReader):
    """Reads lines of orders; an order's own fields may stand in one of its rows alone."""

    shop: InShop
    now: datetime
    marks: frozenset[str]
    orders: dict[str, _Gathered] = field(default_factory=dict)
    before: dict[str, datetime] = field(default_factory=dict)
    currency: tuple[str, int] | None = None
    last: str = ""

    def read(self, row: Row) -> None:
        number = self._number(row)
        if not number:
            if self.last in self.orders:
                self.orders[self.last].out = True
            return
        self.last = number
        if number in self.shop.orders:
            self.before[number] = self.shop.orders[number]
            return
        before = len(self.troubles)
        placed = self._day(row)
        order = self.orders.setdefault(number, _Gathered(placed))
        self._buyer(row, order)
        line = self._line(row)
        if line is None or len(self.troubles) > before:
            order.out = True
        else:
            order.lines.append(line)

    def _number(self, row: Row) -> str:
        before = len(self.troubles)
        number = number_of_order(self.words(row, "number"))
        if len(self.troubles) > before:
            return ""
        if not number:
            above = (f" It may belong to order {self.last} above it, which stays out."
                     if self.last in self.orders else "")
            self.trouble(row, "number", f"nothing stands there.{above}")
        elif len(number) > _LONGEST:
            self.trouble(row, "number", "no order has so long a number.", f"{number[:_LONGEST]}…")
            return ""
        return number

    def _day(self, row: Row) -> datetime:
        cell = self.cell(row, "placed")
        try:
            return day(cell, self.now) if cell != "" else self.now
        except BadInput as why:
            self.trouble(row, "placed", why.what, cell)
            return self.now

    def _buyer(self, row: Row, order: _Gathered) -> None:
        for name in ("name", "mail", "customer"):
            words = " ".join(self.words(row, name).split())
            said = order.said.setdefault(name, words) or words
            order.said[name] = said
            if words and words.casefold() != said.casefold():
                self.trouble(row, name, "other rows of this order say it otherwise.", words)
            elif name == "mail" and words and not _is_mail(words):
                self.trouble(row, name, "it is no e-mail address.", words)

    def _line(self, row: Row) -> LineRead | None:
        what = self.needed(row, "what")
        more = self.words(row, "more")
        words = f"{what}, {more}" if what and more else what or more
        count = self._count(row)
        lot, price = self._lot(row), self._price(row)
        if not words or count is None:
            return None
        read = read_words(words, self.shop.names)
        if lot is not None and self._is_other_yarn(row, lot, read):
            return None
        colourway, base = (lot.colourway, lot.base) if lot else (read.colourway, read.base)
        return LineRead(row.number, Wanted(words, count, lot.id if lot else None, price, colourway,
                                           base, read.put_up), "" if lot else read.doubt)

    def _count(self, row: Row) -> int | None:
        before = len(self.troubles)
        cell = self.cell(row, "count")
        if len(self.troubles) > before:
            return None
        try:
            if cell == "":
                raise BadInput("nothing stands there.")
            return pieces(cell, MOST_OF_ONE)
        except BadInput as why:
            self.trouble(row, "count", why.what, cell)
            return None

    def _lot(self, row: Row) -> LotFacts | None:
        code = self.words(row, "lot")
        lot = self.shop.lots.get(bare_characters(code))
        if code and lot is None:
            self.trouble(row, "lot", "no lot of the book has this code.", code)
        return lot

    def _is_other_yarn(self, row: Row, lot: LotFacts, read: ReadAs) -> bool:
        if read.colourway in (None, lot.colourway) and read.base in (None, lot.base):
            return False
        self.trouble(row, "lot", f"this lot is {lot.words}, and the row wants other yarn.",
                     shown(self.words(row, "lot")))
        return True

    def _price(self, row: Row) -> int | None:
        cell = self.cell(row, "price")
        if cell == "":
            return None
        try:
            price, currency = money(cell, self.marks)
        except BadInput as why:
            self.trouble(row, "price", why.what, cell)
            return None
        if currency:
            first, at = self.currency = self.currency or (currency, row.number)
            if currency != first:
                self.trouble(row, "price", f"it is in another currency than in row {at}.", cell)
        return price


def read_orders(table: Table, match: ColumnMatch, shop: InShop, now: datetime) -> OrdersList:
    """All orders of a list; raises BadInput where a column that must be there is not."""
    if match.lacks(()):
        raise BadInput(match.what_lacks(()), "Say which column holds it.")
    rows = [row for row in table.rows if row.number > match.row]
    place = match.places.get("price")
    prices: Sequence[Cell] = [] if place is None else [
        number_in(cell) for row in rows if isinstance(cell := row[place], str)]
    reader = _Reader(match=match, shop=shop, now=now, marks=decimal_marks(prices))
    for row in rows:
        reader.read(row)
    if len(reader.orders) > MOST_ORDERS:
        raise BadInput(f"More than {MOST_ORDERS:,} new orders stand in this list.",
                       "Ask the web shop for those of fewer days.")
    _keep_promises(reader, rows)
    whole = {number: order for number, order in reader.orders.items() if not order.out}
    return OrdersList(
        tuple(OrderRead(number, order.placed, _buyer_of(order, shop), tuple(order.lines))
              for number, order in whole.items()),
        tuple(number for number in reader.orders if number not in whole), reader.before,
        tuple(reader.troubles), table.notes)


def number_of_order(words: str) -> str:
    """An order's number as the book keeps it: '#1042' is 1042."""
    return " ".join(words.split()).removeprefix("#").strip()


def key_of_mail(mail: str) -> str:
    """By what two written addresses are compared."""
    return mail.strip().casefold()


def _keep_promises(reader: _Reader, rows: Sequence[Row]) -> None:
    """An order for more of a lot than can still be promised stays out, the first come first."""
    lots = {lot.id: lot for lot in reader.shop.lots.values()}
    promised = Counter[int]()
    by_number = {row.number: row for row in rows}
    for order in (order for order in reader.orders.values() if not order.out):
        wanted = Counter[int]()
        for line in order.lines:
            if line.wanted.lot is not None:
                wanted[line.wanted.lot] += line.wanted.count
                left = lots[line.wanted.lot].left - promised[line.wanted.lot]
                if wanted[line.wanted.lot] > left:
                    row = by_number[line.row]
                    reader.trouble(row, "lot", f"{max(0, left)} of it can still be promised, not "
                                               f"{wanted[line.wanted.lot]}.",
                                   shown(reader.words(row, "lot")))
                    order.out = True
        if not order.out:
            promised.update(wanted)


def _buyer_of(order: _Gathered, shop: InShop) -> Buyer | None:
    """By the same e-mail, else by the shop's number of the customer; never by a name alone."""
    name, mail, number = (order.said.get(one, "") for one in ("name", "mail", "customer"))
    if not (name or mail or number):
        return None
    known = shop.mails.get(key_of_mail(mail)) or shop.numbers.get(number)
    return Buyer(name or mail or f"customer {number} of the web shop", mail, number, known)


def _is_mail(words: str) -> bool:
    before, at, after = words.partition("@")
    return bool(before and at and "." in after and " " not in words)

