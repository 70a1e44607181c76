"""Printing: which stock, in which cells, how many, and why more than there are skeins."""

from functools import partial
from itertools import count

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.documents.own_stocks import StudioStocks
from app.documents.stocks import stocks
from app.lookups.tag_table import OnTable
from app.problems import Refused
from app.window.benches.tagging.sheet_picture import SheetPicture, Shown
from app.window.benches.tagging.sheet_plan import SheetPlan, SheetTold, Wanted, used_cells
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, Digits, Words
from app.work.tagging import EXTRA_SKEIN, may_print

_MOST = 99


class PrintCard(Card):
    """`printing` gives what is Wanted; the reason keys tell the bench what happened to tags.

    `texts` asks which of two compositions is printed; `before` was said while another pile was in
    hand.
    """

    printing = Signal(object)
    spoiled = Signal()
    fell_off = Signal()
    jammed = Signal()

    def __init__(self, before: SheetTold | None = None) -> None:
        super().__init__()
        self._before = before
        self.table: OnTable | None = None
        self.known = StudioStocks(stocks(), ())
        self.stock = next((one for one in stocks() if one.layout == "swing"), stocks()[0])
        self._turned = False  # to another stock, by hand
        self.version: int | None = None
        self.why = ""
        self._used: frozenset[int] | None = None  # cells, where somebody looked at the sheet
        self._count: int | None = None
        self.title, self.where = Words("", bold=True), Words()
        self.how = Words("Tap a cell that is gone, or free after all.", ink=SECOND)
        self.picture = SheetPicture(272)
        self.picture.tapped.connect(self.turn_over)
        self.number = Digits("0", Size.HUGE)
        self.print = KeyButton("Print", "P", strong=True)
        self.reasons = (
            KeyButton("Spoiled", "S"),
            KeyButton("Fell off", "F"),
            KeyButton("Extra skein", "X"),
            KeyButton("Jammed", "J"),
        )
        self.begin, self.fresh = KeyButton("Begin here", "B"), KeyButton("New sheet", "N")
        self.other = KeyButton("Other stock", "K")
        self._reasons = Actions(*self.reasons)
        self.texts = QWidget()
        self._texts = QVBoxLayout(self.texts)
        self._texts.setContentsMargins(0, 0, 0, 0)
        self._join()
        self._lay_out()

    @property
    def plan(self) -> SheetPlan:
        """What would be printed now."""
        to_print = self.table.facts.to_print if self.table else 0
        used = self._kept() if self._used is None else self._used
        return SheetPlan(self.stock, used, to_print if self._count is None else self._count)

    def show_table(self, table: OnTable) -> None:
        """Show the pile in hand; what was chosen for it stays while nothing was printed."""
        before = self.table
        self.table = table
        if before is None or before.facts.id != table.facts.id:
            self.version, self._turned = None, False
            self._choose_stock()
        if before is None or _counts(before) != _counts(table):
            self._used, self._count, self.why = None, None, ""
        if before is None and self._before is not None:
            self._take_up(self._before)
        self._show_texts()
        self._show()

    @property
    def sheet(self) -> SheetTold:
        """What was said of the sheet in the printer, for the next pile that is printed on it."""
        return SheetTold(self.stock, self._turned, self._used, self._kept())

    def show_stocks(self, known: StudioStocks) -> None:
        """The stocks as the studio has them now."""
        self.known = known
        self._choose_stock()
        self._show()

    def turn_over(self, cell: int) -> None:
        """A cell is not there to print on, or is free after all."""
        self._used = self.plan.used ^ {cell}
        self._show()

    def begin_here(self) -> None:
        """The first free cell is the one where the keys stand, or that was tapped last.

        Used cells that follow it at once are free too: it is another sheet than the book has.
        """
        at, used = self.picture.at, self.plan.used
        after = next(n for n in count(at + 1) if n not in used)
        self._used = used.union(range(1, at)) - set(range(at, after))
        self._show()

    def new_sheet(self) -> None:
        """Another sheet is in hand, with all its cells."""
        self._used, self.picture.at = frozenset(), 1
        self._show()

    def step(self, by: int) -> None:
        """One tag more or one less."""
        self._count = min(max(self.plan.count + by, 0), _MOST)
        self._show()

    def next_stock(self) -> None:
        """The next stock of the list."""
        stocks_here = self.known.in_use
        at = stocks_here.index(self.stock)
        self.stock, self._used = stocks_here[(at + 1) % len(stocks_here)], None
        self._turned = True
        self._show()

    def extra_skein(self) -> None:
        """One more, because there is a skein more than was counted."""
        self.why = EXTRA_SKEIN
        self._count = (self.table.facts.to_print if self.table else 0) + 1
        self._show()

    def choose_text(self, version: int) -> None:
        """The owner says which of two compositions is printed."""
        self.version = version
        self._show_texts()
        self._show()

    def refusal(self) -> Refused | None:
        """Why nothing can be printed now, or none."""
        if self.table is None:
            return Refused("No pile is in hand; nothing was printed.", "Scan its disc.")
        facts, count = self.table.facts, self.plan.count
        printed = facts.applied + facts.waiting
        if not self.why and (not facts.to_print or count > facts.to_print):
            return Refused(
                f"{printed} of {facts.counted} printed: why?",
                "Spoiled, fell off, or an extra skein?",
            )
        if not count:
            return Refused("No tag is asked for.", "Say how many.")
        if not self.plan.free:
            return Refused(self.plan.words, "Put in a new sheet.")
        try:
            may_print(facts, count, self.version, self.why)
        except Refused as problem:
            return problem
        return None

    def say_print(self) -> None:
        """P, or DONE."""
        if self.refusal() is None:
            printed = self.table.facts.printed if self.table else None
            self.printing.emit(Wanted(self.plan, self.version, self.why, printed=printed))

    def _show(self) -> None:
        plan, words = self.plan, self.plan.words
        self.title.setText(self.stock.title)
        self.where.setText(words)
        self.number.show_number(str(plan.count))
        at = self.picture.at if self._used is not None else min(plan.free, default=1)
        self.picture.show_sheet(
            Shown(self.stock, plan.used, frozenset(plan.on_first)), at, words
        )
        for key in (self.begin, self.fresh, self.how):
            key.setHidden(self.stock.cells == 1 or not plan.count)
        self.other.setHidden(not plan.count)
        self.print.say(self._print_words())
        problem = self.refusal()
        facts = self.table.facts if self.table else None
        asked = facts is not None and (facts.printed or plan.count > facts.to_print)
        self._reasons.setVisible(bool(asked))
        if problem is None:
            self.print.allow()
        else:
            self.print.refuse(problem.what)

    def _print_words(self) -> str:
        count = self.plan.count
        tags = {0: "", 1: " 1 tag"}.get(count, f" {count} tags")
        return f"Print{tags}, {self.why}" if self.why else f"Print{tags}"

    def _choose_stock(self) -> None:
        """The one that was turned to by hand, else the one printed on last, else as before."""
        last = () if self._turned or self.table is None else tuple(self.table.used)
        named = {one.name: one for one in self.known.in_use}
        names = [name for name in (*last, self.stock.name) if name in named]
        self.stock = named[names[0]] if names else self.known.in_use[0]

    def _take_up(self, told: SheetTold) -> None:
        """The sheet is as it was said to be, unless something was printed on it since."""
        if told.turned and told.stock in self.known.in_use:
            self.stock, self._turned = told.stock, True
        if self.stock == told.stock and self._kept() == told.kept:
            self._used = told.used

    def _kept(self) -> frozenset[int]:
        """The used cells of the sheet in hand, as the book has them."""
        used = self.table.used.get(self.stock.name, frozenset()) if self.table else frozenset()
        return used_cells(self.stock, used)

    def _show_texts(self) -> None:
        take_down(self._texts)
        texts = self.table.texts if self.table else {}
        if len(texts) < 2:
            return
        self._texts.addWidget(
            Words("Two compositions lie in this pile: the owner picks the text.", bold=True)
        )
        keys = []
        for number, (version, fibre) in enumerate(texts.items(), 1):
            key = KeyButton(fibre, str(number))
            key.setCheckable(True)
            key.setChecked(version == self.version)
            key.clicked.connect(partial(self.choose_text, version))
            keys.append(key)
        self._texts.addWidget(Actions(*keys))

    def _join(self) -> None:
        spoiled, fell_off, extra, jammed = self.reasons
        jammed.clicked.connect(self.jammed)
        self.begin.clicked.connect(self.begin_here)
        self.fresh.clicked.connect(self.new_sheet)
        self.print.clicked.connect(self.say_print)
        self.other.clicked.connect(self.next_stock)
        spoiled.clicked.connect(self.spoiled)
        fell_off.clicked.connect(self.fell_off)
        extra.clicked.connect(self.extra_skein)

    def _lay_out(self) -> None:
        less, more = KeyButton("−"), KeyButton("+")
        less.setAccessibleName("one tag less")
        more.setAccessibleName("one tag more")
        less.clicked.connect(partial(self.step, -1))
        more.clicked.connect(partial(self.step, 1))
        count = QHBoxLayout()
        count.setSpacing(Gap.SMALL)
        for widget in (less, self.number, more):
            count.addWidget(widget, 0, Qt.AlignmentFlag.AlignVCenter)
        count.addStretch(1)
        beside = QVBoxLayout()
        beside.setSpacing(Gap.SMALL)
        for words in (self.title, self.where, self.how):
            beside.addWidget(words)
        beside.addWidget(Actions(self.begin, self.fresh, self.other))
        beside.addStretch(1)
        beside.addLayout(count)
        row = self.add_row(self.picture)
        row.setAlignment(self.picture, Qt.AlignmentFlag.AlignTop)
        row.addLayout(beside, 1)
        self.add(self.print)
        self.add_last(self._reasons)


def _counts(table: OnTable) -> tuple[int, int, int, object]:
    facts = table.facts
    return facts.id, facts.printed, facts.void, tuple(table.used.items())
