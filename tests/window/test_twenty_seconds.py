"""The shop's hard cases on the demo studio's book, through the window: how many actions, how long.

A scan, a key, and words typed into the box with Enter are an action each. What the customer asked
is answered by the third at the latest.
"""

import shutil
from datetime import UTC, datetime
from time import perf_counter

import pytest

from app.lookups.things import by_code, of_lot
from app.store.book import Book
from app.store.deed import By
from app.work.holding import hold
from app.work.selling import OrderIn, Wanted, place_order
from tests.makers import Clock
from tests.window.benches.at_work import open_window, plate
from tests.window.benches.counter_hands import AtCounter

MOST = 3
"""Actions from the question to its answer."""


class InTheShop(AtCounter):
    """Counts what the hands do."""

    actions = 0
    began = 0.0

    def asked(self):
        """The customer stands there: the clock begins."""
        self.actions, self.began = 0, perf_counter()

    def answered(self, what):
        """It is on the screen: say how many actions it took, and how long the machine."""
        took = perf_counter() - self.began
        print(f"{what}: {self.actions} actions, {took:.2f} s of the machine")  # noqa: T201
        assert self.actions <= MOST

    def scan(self, *codes):
        self.actions += len(codes)
        super().scan(*codes)

    def ask(self, words):
        self.actions += 1
        counted = self.actions
        super().ask(words)
        self.actions = counted

    def press(self, *keys):
        self.actions += len(keys)
        super().press(*keys)

    def do(self, work, *args):
        """A deed that was done elsewhere."""
        return self.studio.do(work, *args, by=By("OW", "desk")).answer

    def marks(self, lot):
        """The tags of a lot that hang on skeins."""
        return [tag.code for tag in self.studio.ask(of_lot, self.id_of(lot))
                if tag.kind == "skein"]

    def id_of(self, code):
        return self.studio.ask(by_code, code).id


@pytest.fixture
def shop(qtbot, settings, demo_folder, tmp_path):
    """Tagging, packing, counter and desk, on a copy of the demo's book."""
    path = tmp_path / "demo.book"
    shutil.copy(demo_folder / "quernlow-dyeyard.book", path)
    book = Book(path, Clock(datetime(2026, 5, 15, 12, tzinfo=UTC)))
    settings.person, settings.station = "SK", "till"
    for at in open_window(InTheShop, qtbot, settings, book, (7, 8, 9, 10), book):
        at.enter(9)
        yield at
    book.close()


def number_of_way(shop, words):
    return next(n for n, way in enumerate(shop.hand.question.found.ways, 1) if words in way.words)


def test_two_more_of_a_lot_with_one_free_the_kit_is_opened_or_the_old_lot_is_a_tenth_away(shop):
    shop.asked()
    shop.scan("2615R6F", plate(2))
    shop._qtbot.waitUntil(lambda: hasattr(shop.hand.question, "found"))
    shop.answered("two more of 26·15·R6F")
    asked = shop.hand.question
    assert asked.free.accessibleName() == "1 left to sell 2 skeins wanted"
    words = shop.words(asked)
    assert "1 in kit Lock-Gate Mitts, not sold: open it" in words
    assert [key.accessibleName() for key in asked.keys][:2] == ["Same lot", "From a kit"]
    assert "26·06·H3W, Sluice Keeper’s Glove, 4 free: 0.1 ± 0.5, looks the same" in words
    assert asked.found.ways[2].difference is not None
    assert f"{asked.found.ways[2].difference.ciede2000:.2f}" == "0.10"
    assert "The fewest lots for it: 26·06·H3W, 4 free; least alike are " in words
    assert "0.10 apart." in words
    assert asked.found.need is None
    shop.press(str(number_of_way(shop, "in kit Lock-Gate Mitts")), "1")
    assert shop.said.startswith("opened kit ")
    assert shop.hand.question.free.accessibleName() == "2 left to sell 2 skeins wanted"
    shop.press("F8", "F11")
    more = shop.hand.question
    more.used.line.setText("3")
    more.allowance.line.setText("8")
    shop.fill(more.done, "62")
    shop._qtbot.waitUntil(lambda: hasattr(shop.hand.question, "found"))
    assert "770 m with the allowance, 1.99 reckoned: it only just fits" in (
        shop.words(shop.hand.question))


def test_same_as_last_time_is_one_line_and_names_every_lot(shop):
    shop.asked()
    shop.ask("isa sluice")
    shop.answered("same as last time, by name and colourway")
    assert [row.split(", Sluice")[0] for row in shop.rows] == [
        "26·15·R6F, 4 skeins, 13 Apr 2026, order T101",
        "26·08·K53, 4 skeins, 22 Feb 2026, order 1022"]
    assert "ask for 2 m of the yarn or the tag, and look at both. Nothing was chosen" in (
        shop.hand.listed.hint.text())
    shop.asked()
    shop.ask("april sluice")
    shop.answered("same as last time, without a name, by month and colourway")
    assert shop.hand.listed.title.text() == "Sold without a name in April 2026, “sluice”"
    assert [row.split(", ")[0] for row in shop.rows] == ["26·13·Y8T", "26·12·TXK"]


def test_a_held_skein_stays_and_the_line_is_offered_lots_within_one_and_a_half(shop):
    lot = shop.id_of("2612F5F")
    shop.do(hold, "lot", lot, "weak jar")
    wanted = Wanted("Sluice Keeper’s Glove, Tarnfield 4-ply", 2, None, None,
                    *shop.studio.ask(_of, lot), "skein")
    shop.do(place_order, OrderIn("9001", shop.studio.clock(), "web", (wanted,)))
    shop.enter(8)
    shop.asked()
    shop.scan("9001", shop.marks("2612F5F")[0])
    held = shop.bench.in_hand.card.aside
    shop._qtbot.waitUntil(lambda: held.instead.text().startswith("Instead"))
    shop.answered("a skein on hold at the packing bench")
    assert "26·12·F5F: weak jar. On hold since" in held.why[0]
    assert "26·13·Y8T: 5 on shelf" in held.instead.text().replace("\u00a0", " ")
    assert "0.3 ± 0.5, looks the same" in held.instead.text()
    assert "26·06·H3W" not in held.instead.text()  # 2.57 apart


def test_a_muddled_lot_tells_its_void_tags_from_those_that_count(shop):
    shop.asked()
    shop.scan("2618F49-4F")
    shop.answered("a void tag that was sold")
    assert shop.card.note.text() == (
        "26·18·F49 4F is void: 26·18·F49 8K took its place. This skein, 26·18·F49 8K: sold 2 May "
        "2026 without a name, order T136.")
    assert "1 that wears no tag of it now" in shop.rest  # it is Brickyard Cat
    shop.enter(7)
    shop.asked()
    shop.scan("2618F49")
    shop.answered("how many tags a lot has")
    names = [one.accessibleName() for one in shop.bench.findChildren(object)
             if hasattr(one, "accessibleName") and one.isVisible()]
    assert "11 counted, 10 tied on, 0 to tie on, 1 to print, 13 void" in names  # 22 and a new one


def test_nine_kits_of_twelve_and_the_four_that_were_sold_with_the_stained_blue(shop):
    shop.enter(8)
    shop.asked()
    shop.press("F5", "Enter")
    card = shop.bench.kits.card
    shop.answered("how many kits")
    assert card.number.accessibleName() == (
        "9 kits can be made the shortest colour is C, Wet Thatch Tuesday")
    assert [row.left.text().partition(" left")[0] for row in card.rows] == [
        "31", "22", "9", "17", "14"]
    shop.fill(card.wanted, "12")
    assert card.short.text() == (
        "Of 12 kits, 9 can be made: C (Wet Thatch Tuesday) is short by 3. Dyed anew, ready by "
        "29 May 2026.")
    assert [line[:21] for line in card.stand_ins.text().split("\n")] == [
        "For C Brickyard Cat m", "For C Nettle Cellar m"]
    ferry = {lot: shop.marks(lot) for lot in ("2614K14", "2614M32")}
    on_shelf = {lot: [mark for mark in marks if _lies(shop, mark)] for lot, marks in ferry.items()}
    shop.scan(on_shelf["2614K14"][0], on_shelf["2614M32"][0])
    assert "one colour of a kit is of one lot. Nothing was taken." in shop.trouble
    shop.enter(0)
    shop.asked()
    shop.scan("2610X4K")
    shop.press("R")
    shop.answered("who has the stained blue")
    rows = [[str(cell) for cell in row] for row in shop.bench.recalls.page.table._rows]
    assert sorted(row[1] for row in rows if row[1]) == ["T65", "T67", "T90", "T91"]
    assert {row[0] for row in rows[:2]} == {"Agnes Wold", "Nessa Pike"}


def _lies(shop, mark):
    from app.lookups.skeins import now_of
    return shop.studio.ask(now_of, shop.studio.ask(by_code, mark).id).state == "shelf"


def _of(connection, lot):
    return connection.exec_driver_sql(
        "SELECT colourway, base FROM dye_lot WHERE id = ?", (lot,)).one()
