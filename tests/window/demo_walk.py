"""Ten things that went wrong in the demo studio, each found by doing what the screen says.

python -m tests.window.demo_walk DIR [BOOK] draws the pictures of the README on the way.
"""

import re
import shutil
import sys
from collections.abc import Callable, Iterable, Sequence
from datetime import UTC, datetime
from pathlib import Path
from tempfile import TemporaryDirectory

from PIL import Image
from PySide6.QtWidgets import QAbstractItemView, QApplication, QLabel, QWidget
from sqlalchemy import select

from app.calculations.codes import Kind, bare_characters, numbered
from app.demo.life import live
from app.lookups.certainty import tally
from app.lookups.counter import Tagged, at_counter
from app.lookups.fills import baths_of
from app.lookups.jars import jars_now
from app.lookups.things import by_code
from app.lookups.thread import thread
from app.records import Bath, DeedRow, DyeLot
from app.window.main_window import MainWindow
from app.window.parts.key_button import KeyButton
from app.window.posing import quiet, show_in
from tests.window.pictures import DONE, Hands, benches, cone, count, save, the_window

WIDE = 960  # of a picture in the README
GOOD, FAULT = (numbered(Kind.ACTION, number).text for number in (7, 8))
Truth = Callable[[int], bool]


class Owner(Hands):
    """Knows what a person knows: a complaint, a code, a count; reads the screen for all else."""

    def __init__(self, window: MainWindow, folder: Path | None = None) -> None:
        super().__init__(window)
        self._folder = folder

    def at(self, title: str) -> None:
        """Go to a bench."""
        show_in(self.window, title)

    @property
    def says(self) -> str:
        """All that can be read on the bench, in what looks wrong, and in the foot."""
        bench = self.window.floor.bench()
        read = [words for one in bench.findChildren(QWidget) if one.isVisible()
                for words in _words(one)]
        read += [one.sentence for one in self.window.floor.findings._open]
        strip = self.window.floor.problem
        read += [strip.accessibleName()] if strip.isVisible() else []
        return "\n".join((*read, self.window.foot.said.text())).replace("\u00a0", " ")

    def reads(self, *sentences: str) -> None:
        """These stand on the screen."""
        says = self.says
        for sentence in sentences:
            assert sentence in says, f"“{sentence}” is not on the screen:\n{says}"

    def picture(self, name: str) -> None:
        """Keep what is in sight, small enough for a page of words."""
        if self._folder is None:
            return
        for key in self.window.floor.findings.findChildren(KeyButton):
            if key.isVisible() and key.accessibleName() == "Go on":
                key.click()
        quiet(self.window)
        png = self._folder / f"{name}.png"
        save(self.window, png)
        with Image.open(png) as whole:
            small = whole.convert("RGB")
        small.thumbnail((WIDE, WIDE), Image.Resampling.LANCZOS)
        small.quantize(96, dither=Image.Dither.NONE).save(png, optimize=True)

    def tap(self, words: str) -> None:
        """A tap on the key that says so."""
        bench = self.window.floor.bench()
        key = next(one for one in bench.findChildren(KeyButton)
                   if one.isVisible() and one.accessibleName() == words)
        key.click()
        quiet(self.window)

    def tells(self, fault: str, *marks: str) -> None:
        """These have the fault: scanned, FAULT, what it is, the others, DONE."""
        self.scan(marks[0], FAULT)
        self.tap(fault)
        self.scan(*marks[1:], DONE)
        self.reads(f"{fault} on {len(marks)} skein")

    def sees_good(self, *marks: str) -> None:
        """At the desk: these were looked at."""
        for mark in marks:
            self.scan(mark)
            self.press("G")
            self.reads("seen good: 1 skein")

    def follows(self, fault: str, faulty: Truth, most: int = 6) -> str:
        """Look at what the page of faults says next, until it calls something likely."""
        for _ in range(most):
            self.press("F1")
            card = self.window.floor.bench().back.faults.page.suspects
            head: str = card.headline.text()
            if head.startswith("Likely"):
                return head.removeprefix("Likely ").rstrip(".")
            first = next(line.text() for line in card.looks if line.text().startswith("Next: "))
            asked = re.search(r"Look at (\d+)", first)
            marks = card.asked.looks[0].skeins[:int(asked[1]) if asked else 1]
            bad = [mark for mark in marks if faulty(self.skein(mark))]
            if bad:
                self.tells(fault, *bad)
            self.sees_good(*(mark for mark in marks if mark not in bad))
        raise AssertionError(f"Not decided after {most} looks:\n{self.says}")

    def skein(self, mark: str) -> int:
        """The skein that wears this tag."""
        bare = bare_characters(mark)
        return self.window.session.ask(by_code, f"{bare[:-2]}-{bare[-2:]}").id

    def skeins(self, lot: str, *states: str, buyer: str = "") -> list[str]:
        """Tags of a lot that lie there or were sold, as somebody can read them off."""
        ask = self.window.session.ask
        found: Sequence[Tagged] = ask(at_counter, ask(by_code, lot).id).skeins
        return [one.mark for one in found if one.state in states and not one.void
                and buyer in (one.name or "")]

    def went_through(self, kind: str, thing: int) -> Truth:
        """What is really so of a skein, and nobody knows before they look."""
        ask = self.window.session.ask
        return lambda row: tally(ask(thread, [row]), {row: 1}, (kind, thing)).least == 1


def _words(widget: QWidget) -> Iterable[str]:
    """What one widget shows: words, a table's rows, or what a key says."""
    if isinstance(widget, QLabel):
        yield widget.text()
    elif isinstance(widget, QAbstractItemView):
        model = widget.model()
        for row in range(min(model.rowCount(), 20)):
            yield " | ".join(str(model.index(row, column).data() or "")
                             for column in range(model.columnCount()))
    else:
        yield widget.accessibleName()


def an_oily_cone(owner: Owner) -> None:
    """Two buyers each bring a skein with a stain; both lots were dyed on different days."""
    owner.at("Counter")
    owner.tells("stain", "2614Y51-0R")
    owner.tells("stain", "2614Y51-RX")
    owner.reads("“stain” was told before of yarn that shares cone C·0114·F, cone C·0115·T")
    owner.at("Finishing")
    on_shelf = [mark for lot in ("2614Y51", "2614W0Y", "2615T9R")
                for mark in owner.skeins(lot, "shelf")]
    owner.scan(*on_shelf, GOOD)
    owner.reads("seen good: 12 skeins")
    owner.at("Desk")
    owner.press("F1")
    owner.reads("Not decided: possible are cone C·0114·F",
                "Next: Look at 3 skeins of lot 26·14·T26 that went through wash load 234")
    bad = [owner.skein(mark) for mark in owner.skeins("2614T26", "shelf")[:2]]
    assert owner.follows("stain", lambda row: row in bad, most=2) == "cone C·0114·F"
    owner.reads("Still there, look at it first: cone C·0114·F")
    owner.picture("case-1")
    owner.tap("Open it")
    owner.reads("C·0114·F", "317 m are left on it", "oil in the yarn, seen under the lamp")


def a_weak_jar(owner: Owner) -> None:
    """The shade check reads two lots of one colourway as plainly another."""
    owner.at("Inspecting")
    owner.scan("2612F5F")
    owner.reads("2.5 ± 0.5", "Only as a second colour.")
    for lot in ("2606H3W", "2613F03"):
        owner.scan(owner.skeins(lot, "shelf")[0], GOOD)
        owner.reads("seen good: 1 skein")
    owner.at("Desk")
    for lot in ("2612F5F", "2613Y8T"):
        owner.tells("off shade", owner.skeins(lot, "shelf")[0])
    owner.reads("jar fill turquoise B1, fill 3")
    ask = owner.window.session.ask
    fill = next(jar.fill for jar in ask(jars_now) if "turquoise" in jar.dye)
    weak = ask(lambda c: c.execute(
        select(DyeLot.id).join(Bath, Bath.id == DyeLot.bath)
        .join(DeedRow, DeedRow.seq == Bath.deed).where(
            DyeLot.bath.in_(baths_of(c, fill)),
            DeedRow.happened < datetime(2026, 4, 2, tzinfo=UTC))).scalars().all())
    green = [owner.went_through("lot", lot) for lot in weak]
    cause = owner.follows("off shade", lambda row: any(one(row) for one in green))
    assert cause == "jar fill turquoise B1, fill 3"
    owner.reads("Still there, look at it first: jar fill turquoise B1, fill 3")
    owner.picture("case-2")
    owner.at("Weighing")
    owner.scan(numbered(Kind.JAR, 5).text)
    owner.reads("Jar 5, turquoise B1", "78 %")


def a_shared_wash(owner: Owner) -> None:
    """A kit's buyer writes that the pale blue in it has a pink cast."""
    owner.at("Desk")
    owner.tells("bleed", *owner.skeins("2610X4K", "sent", buyer="Nessa Pike"))
    load = 116
    cause = owner.follows("bleed", owner.went_through("load", load))
    assert cause == "wash load 116 (washing machine, 3 Mar)"
    owner.tap("Who has it")
    owner.reads("Who has something of wash load 116", "Nessa Pike", "Agnes Wold", "in all")
    owner.picture("case-3")


def a_yellow_cone(owner: Owner) -> None:
    """A buyer of three skeins of one pale pink lot sees stripes in her knitting."""
    owner.at("Desk")
    yellow = owner.went_through("cone", owner.window.session.ask(by_code, cone(52)).id)
    hers = owner.skeins("2611T01", "sent", buyer="Hanne Birkett")
    owner.tells("streak", *(mark for mark in hers if yellow(owner.skein(mark))))
    assert owner.follows("streak", yellow) == "cone C·0052·M"
    owner.tap("Open it")
    owner.reads("2.3 ± 0.5 from another cone of its base",
                "7 in dye lot 26·11·T01 (Paper Ticket), 6 in dye lot 26·14·H7W (Ferry Ledger)",
                "as reckoned it shows as 0.2 in Ferry Ledger", "1.2 in Paper Ticket")
    owner.picture("case-4")


def two_pots(owner: Owner) -> None:
    """A customer with six skeins of one order finds that three differ a little."""
    owner.at("Counter")
    owner.ask("S-402")
    owner.reads("Order S-402, Jonna Weald", "More than one lot fits", "26·14·K14", "26·14·M32")
    owner.picture("case-5")
    owner.at("Desk")
    owner.scan("2614K14")
    owner.reads("Sisters", "26·14·M32", "Companions", "26·14·H7W")
    owner.at("Inspecting")
    owner.scan("2614M32")
    owner.reads("0.6 ± 0.5")


def a_join(owner: Owner) -> None:
    """The rest of a cone has thin places: what was made of it?"""
    owner.at("Desk")
    owner.scan(cone(122))
    owner.reads("thin places every few metres, felt at the reel", "3,822 m are left on it",
                "26·16·WT2 2F | on a shelf | partly: 38 % of the metres | HOLD")
    owner.picture("case-6")
    owner.press("R")
    owner.reads("= 5 in all", "4 skeins | all 4", "this one, 38 % of its metres")


def an_overdye(owner: Owner) -> None:
    """A scan of an old pink tag, and of the dark lot that its skein became."""
    owner.at("Desk")
    owner.scan("2617M9K")
    owner.reads("Night Ticket, Gossamer Lamb", "26·11·T01", "C·0052·M",
                "gathered 6 skeins, their tags are void")
    owner.picture("case-7")


def a_short_reorder(owner: Owner) -> None:
    """ “Can I have two more of this lot?” and one is left."""
    owner.at("Counter")
    owner.scan("2615R6F", count(2))
    owner.reads("1 left to sell", "1 put by until 29 May 2026 for Peer Oxley-Moss",
                "1 in kit Lock-Gate Mitts, not sold: open it",
                "26·06·H3W, Sluice Keeper’s Glove, 4 free: 0.1 ± 0.5, looks the same")
    owner.picture("case-8")


def a_muddle_of_tags(owner: Owner) -> None:
    """A torn tag is read out on the telephone; and a skein lies there that nobody misses."""
    owner.at("Counter")
    owner.scan("2618F49-4F")
    owner.reads("26·18·F49 4F is void: 26·18·F49 8K took its place", "order T136")
    owner.at("Desk")
    owner.tap("Balances")
    owner.reads("Tags: 1,301 printed", "24 spoiled or void",
                "lot 26·18·F49, Downholm Sock: 1 too few", "counted and never tagged",
                "a skein without a tag, Downholm Sock: 1 too many")
    owner.picture("case-9")
    rows = owner.window.floor.bench().back.balances.rows
    next(row for row in rows if row.gap.code == "2618F49").opens.click()
    quiet(owner.window)
    owner.reads("1 skein of Downholm Sock without a tag, 103.2 g, found 30 Apr 2026")


def a_short_kit(owner: Owner) -> None:
    """How many kits can be made, and who got one with the pink-cast blue in it."""
    owner.at("Packing")
    owner.tap("Kits")
    owner.reads("Stair-Rail Cowl | 9 | C Wet Thatch Tuesday")
    owner.picture("case-10")
    owner.at("Desk")
    owner.scan("2610X4K")
    owner.press("R")
    owner.reads("Nessa Pike", "Agnes Wold", "2 sold, buyer known", "+ 2 sold, buyer not known",
                "+ 4 still here", "= 8 in all")


CASES = (an_oily_cone, a_weak_jar, a_shared_wash, a_yellow_cone, two_pots, a_join, an_overdye,
         a_short_reorder, a_muddle_of_tags, a_short_kit)


def walk(book: Path, folder: Path | None = None) -> None:
    """All ten, one after the other, in one window on this book, which is written in."""
    places, _ = benches()
    with the_window(book, 1.0, places, "Desk") as window:
        for case in CASES:
            case(Owner(window, folder))


if __name__ == "__main__":
    QApplication.instance() or QApplication([])
    with TemporaryDirectory() as made:
        copy, there = Path(made) / "walk.book", Path(sys.argv[1])
        there.mkdir(parents=True, exist_ok=True)
        if len(sys.argv) > 2:
            shutil.copy(sys.argv[2], copy)
        else:
            live(copy)
        walk(copy, there)
