"""A recall list in words: sums that add up, rows by buyer and place, a file, and a letter each."""

import csv
import io
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection

from app.calculations.adding_up import adding_up
from app.exchange.free_counts import plain
from app.exchange.tracing import STATE_WORDS
from app.lookups.holds import HoldFacts, live_holds
from app.lookups.present import HERE
from app.lookups.recall import RecallList, WithOne, recall_list
from app.lookups.recent import head
from app.lookups.studio import setting
from app.work.dividing import skeins

KNOWN, NOT_KNOWN, STILL_HERE, IN_WORK, ELSEWHERE = (
    "sold, buyer known", "sold, buyer not known", "still here", "in work", "elsewhere or lost")
_GROUPS = {"sent, buyer known": KNOWN, "sent, buyer not known": NOT_KNOWN, "in work": IN_WORK,
           "piled": IN_WORK, **dict.fromkeys(HERE, STILL_HERE)}
HEADINGS = ("who or where", "order", "since", "how many", "of it", "put-up", "grams", "marks")


@dataclass(frozen=True, slots=True)
class Sum:
    """Skeins, minis and balls in one of the groups, and what they weigh."""

    words: str
    count: int
    mg: int
    grams: str
    """To a tenth, rounded so that the groups add up to all."""
    put_ups: str = ""
    """'7 skeins, 3 minis'; nothing where the whole list is of skeins."""


@dataclass(frozen=True, slots=True)
class Recalled:
    """Who has something of one thing, as the book stands at a moment."""

    found: RecallList
    on: str
    """'cone C·0114·F', 'batch 7731 of Aske Mill'."""
    began: datetime
    listed: datetime
    holds: tuple[HoldFacts, ...]
    studio: str
    entry: int
    journal_head: str

    @property
    def sums(self) -> tuple[Sum, ...]:
        """The groups in their order, each thing in one of them; the last is all together."""
        counts = {one: Counter[str]()
                  for one in (KNOWN, NOT_KNOWN, STILL_HERE, IN_WORK, ELSEWHERE)}
        weigh, every = Counter[str](), Counter[str]()
        for (state, put_up), amount in self.found.totals.items():
            counts[group_of(state)][put_up] += amount.count
            weigh[group_of(state)] += amount.mg
            every[put_up] += amount.count
        mixed = every.keys() != {"skein"}
        tenths = adding_up([weigh[one] for one in counts], 100)
        some = [Sum(words, of.total(), weigh[words], f"{tenth / 10:,.1f}",
                    _put_ups(of) if mixed else "")
                for (words, of), tenth in zip(counts.items(), tenths, strict=True)
                if of or words != ELSEWHERE]
        return (*some, Sum("in all", self.found.count, self.found.mg, f"{sum(tenths) / 10:,.1f}",
                           _put_ups(every) if mixed else ""))

    @property
    def how_sure(self) -> str:
        """How many of them really come from it, and why the rows may name more."""
        return " ".join(filter(None, (self._of_it, named_twice(self.found))))

    @property
    def _of_it(self) -> str:
        link = self.found.together
        if link is None:
            return "Nothing came of it yet."
        if link.least == link.most == link.of:
            return f"All {link.of} come from it." if link.of > 1 else "It comes from it."
        span = f"{link.least}" if link.least == link.most else f"{link.least} to {link.most}"
        return (f"{span} of the {link.of} come from it; which is not known of all, so whoever has "
                "one of those is told so.")


def recalled(
    connection: Connection, kind: str, thing: int, on: str, began: datetime, listed: datetime
) -> Recalled:
    """The list of a cone, batch, lot, load, bath, jar fill or yarn, asked for at `began`."""
    entry, journal_head = head(connection)
    return Recalled(
        recall_list(connection, kind, thing), on, began, listed,
        tuple(hold for hold in live_holds(connection) if hold.source == (kind, thing)),
        setting(connection, "name"), entry, journal_head)


def named_twice(found: RecallList) -> str:
    """Why the rows may name more than there are: a find may be any of several."""
    named = sum(row.count for row in found.rows)
    finds = named - found.count
    if finds <= 0:
        return ""
    stand = "is, or may be, one" if finds == 1 else "are, or may be, some"
    return (f"{finds} found without a tag {stand} of the others, not known which: the list names "
            f"{named}, and there {'is' if found.count == 1 else 'are'} {found.count}.")


def group_of(state: str) -> str:
    """Which of the sums a state belongs to."""
    return _GROUPS.get(state, ELSEWHERE)


def cells(row: WithOne) -> tuple[str, ...]:
    """One row of the list, by its headings: days that sort, and grams that add up."""
    return (who(row), row.order or "", row.since.astimezone().date().isoformat() if row.since
            else "", str(row.count), row.of_it, row.put_up, f"{row.mg / 1000:.3f}",
            ", ".join(row.marks))


def who(row: WithOne) -> str:
    """The buyer by name, the customer's number, or the place; what is only put by is here still."""
    state = STATE_WORDS.get(row.state, row.state)
    customer = row.name or (f"customer {row.customer}" if row.customer else "")
    if customer:
        return f"{state} for {customer}" if row.state in HERE else customer
    return f"{state}: {row.place}" if row.place else state


def marks_together(marks: Iterable[str]) -> str:
    """The marks one after the other, none broken in two at the end of a line."""
    return ", ".join(mark.replace(" ", "\u00a0") for mark in marks)


def as_csv(rows: Iterable[WithOne]) -> bytes:
    """The list as CSV: UTF-8 with its mark, CRLF (RFC 4180)."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(HEADINGS)
    writer.writerows([plain(cell) for cell in cells(row)] for row in rows)
    return text.getvalue().encode("utf-8-sig")


def letters(one: Recalled) -> str:
    """A letter for each buyer with a name, to be pasted; nobody else's name is in it."""
    buyers: dict[object, list[WithOne]] = {}  # two may have the same name
    for row in one.found.rows:
        if row.name and row.state in ("sent, buyer known", "given"):
            buyers.setdefault(row.customer or row.name, []).append(row)
    return "\r\n\r\n\r\n".join("\r\n".join(_letter(one, rows[0].name or "", rows))
                               for rows in buyers.values())


def _put_ups(counts: Counter[str]) -> str:
    in_turn = sorted(counts, key=lambda put_up: (put_up != "skein", put_up))
    return ", ".join(skeins(counts[put_up], put_up) for put_up in in_turn)


def _letter(one: Recalled, name: str, rows: list[WithOne]) -> Iterator[str]:
    yield f"Dear {name},"
    yield ""
    yield "Yarn that we sold you may have a fault, and we would rather tell you than wait."
    for hold in one.holds[:1]:
        yield f"What was seen: {hold.why}."
    yield ""
    for row in rows:
        order = f"Order {row.order}: " if row.order else ""
        marks = f" ({', '.join(row.marks)})" if row.marks else ""
        sold = skeins(row.count, row.put_up)
        yield f"{order}{sold}{marks}. It concerns {row.hit_words}."
    yield ""
    yield ("Please do not knit with it yet. Look at it in daylight and tell us what you see, also "
           "if it is good: that helps us as much. We send another, or pay it back.")
    if one.studio:
        yield ""
        yield one.studio
