"""Makes the small book of a shape, to be kept here for ever: `python -m tests.old_books.make`.

Run once at each new shape of the book, before its release; an old file is never made again.
"""

import sqlite3
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

from alembic.script import ScriptDirectory

from app.calculations.grey_scales import Step
from app.calculations.shade import Colour, Lamp, Observer, Viewing
from app.store.book import Book
from app.store.upgrade import migrations_config, upgrade_book
from app.work.additions import Addition, addition
from app.work.holding import clear, hold
from app.work.inspecting import (
    ShadeIn,
    VerdictIn,
    choose_swatch,
    decide,
    grey_step,
    read_shades,
)
from app.work.jars import JarIn, Refill, open_jar, refill, supplier_lot
from app.work.kit_patterns import PatternIn, PlaceIn, write_pattern
from app.work.kits import make_kit
from app.work.mixing import lose, recognise
from app.work.moving import call_second
from app.work.offering import OfferIn, agree_line, offered
from app.work.opening_stock import OldLot, open_lot
from app.work.put_up_weights import read_humidity, sell_as, weigh_put_up, weigh_reference
from app.work.readings import read_bath
from app.work.recipes import ComponentIn, RecipeIn, StepIn, ZoneIn, write_recipe
from app.work.returning import came_back_untagged
from app.work.selling import OrderIn, Wanted, call_off, place_order, take_for
from app.work.selling import send as send_order
from app.work.studio import choose
from app.work.tagging import apply_tag, spoil_tags
from app.work.weigh_lines import LineIn, begin_line, take_weight
from app.work.weighing import WeighingIn, begin_weighing, close_weighing
from app.work.winding import end_cone
from tests.deeds import customer, erase, into_load, put, send
from tests.makers import Clock, Studio

FOLDER = Path(__file__).parent


def a_little_thread(studio: Studio) -> None:
    """Something of everything that a book can hold at this shape."""
    one, two = studio.cones(2)
    red, blue = studio.wind(one, 7, "red", studio.discs[0]), studio.wind(two, 5, "blue")
    pool = studio.mix(red, blue, studio.join([(one, 255_200), (two, 157_300)]))
    studio.dye(pool, pot=studio.pot)
    studio.do(into_load, "wash", [pool])
    kept, _ = studio.do(lose, pool, 1)
    seen, rest = studio.split(kept, 1, 11)
    studio.do(recognise, seen, pool, red)
    (pile, *_) = studio.finish(rest, red=6, blue=4)
    skeins = studio.tag(pile, 4)
    studio.do(spoil_tags, studio.print(pile, 1), "jammed")
    ada = studio.do(customer, "Ada Nygård")
    studio.do(send, skeins[:1], ada)
    studio.do(send, skeins[1:2])
    studio.do(put, skeins[2:3], "shelf", studio.pot)
    studio.do(erase, ada, reason="on request")
    studio.do(clear, studio.do(hold, "cone", two, "yellow ecru"), skeins[2], "lamp: clean")
    a_little_trade(studio, studio.tag(studio.do(
        open_lot, OldLot("OLD-77", studio.version, 1, 3), 100_000), 2))
    a_little_dyeing(studio)
    a_little_shade(studio)
    a_little_at_the_tag_table(studio)
    studio.do(end_cone, two, 86_000)
    studio.do(choose, {"name": "Quernlow Dyeyard"})
    studio.undo()
    studio.check()


def a_little_trade(studio: Studio, skeins: list[int]) -> None:
    """An order that was read and called off, a kit, a second, a skein back without its tag."""
    studio.do(put, skeins, "shelf", studio.pot)
    wanted = Wanted("2 x the green one", 2, colourway=1, base=1, put_up="skein", price=2400)
    (line,) = studio.do(place_order, OrderIn("1187", studio.clock.now, "web", (wanted,)))
    studio.do(take_for, line, skeins[:1])
    studio.do(call_off, line)
    studio.do(send_order, "1187")
    studio.do(came_back_untagged, 1, 97_000, "1187")
    studio.do(make_kit, "Stair-Rail Cowl", skeins[1:])
    studio.do(call_second, skeins[1:], "a knot")


def a_little_dyeing(studio: Studio) -> None:
    """A recipe in per cent and one by zones, a jar refilled, a weigh-out, an addition, readings."""
    lot = studio.do(supplier_lot, 1, "p")
    fill = studio.do(open_jar, JarIn(1, "B1 turquoise", ((lot, 140_000),), 1000))
    recipe = studio.do(write_recipe, RecipeIn(
        1, (ComponentIn("B1 turquoise", "owf", 8500),), liquor_tenths=200, reason="bluer",
        steps=(StepIn("heat up", 850, 46),)))
    weighing = studio.do(begin_weighing, WeighingIn("bath", recipe, (), 602_000))
    studio.do(take_weight, studio.do(begin_line, LineIn(weighing, fill=fill)), 5_117)
    studio.do(close_weighing, weighing)
    studio.do(addition, Addition(1, fill=fill, mg=200, why="too pale"))
    studio.do(read_bath, 1, ph_centi=430)
    studio.do(refill, 1, Refill("q", 500_000))
    studio.do(hold, "fill", fill, "the lid was off")
    studio.do(write_recipe, RecipeIn(
        1, (ComponentIn("B1 turquoise", "bottle", 10_000, zone="A"),), look="zones",
        zones=(ZoneIn("A", 1000, 60),), reason="painted"))


def a_little_shade(studio: Studio) -> None:
    """Cards, a step, a swatch, verdicts, the pattern of a kit, an offer, a line from two lots."""
    teal = Colour(48.3, -36.6, 3.3, Viewing(Lamp.D65, Observer.TWO, wet=False), 4, 0.3)
    studio.do(read_shades, [ShadeIn(teal, lot=1), ShadeIn(teal, standard=(1, 1)),
                            ShadeIn(teal, cone=1, zone="end", came="cgats", instrument="sphere")])
    studio.do(grey_step, 1, Step.FOUR_FIVE, 2, "staining", "D65")
    studio.do(choose_swatch, 2, "#1B856E")
    studio.do(decide, 1, VerdictIn("hold", why="pink cast"))
    studio.do(decide, 1, VerdictIn("one-off", "Late Frost"))
    studio.do(write_pattern, PatternIn("Cowl", (PlaceIn("A", 1, 1, 1, stand_ins=(1,)),), 7900))
    studio.do(offered, OfferIn(1, 2, "nearest lot", "taken", 2, 10))
    studio.do(agree_line, 1, "rows card put in")


def a_little_at_the_tag_table(studio: Studio) -> None:
    """Cells that pass over one, the room, a light skein sold as what it weighs."""
    group = studio.wind(studio.cone(), 2)
    studio.dye(group)
    (pile,) = studio.finish(group, red=2)
    tags = studio.print(pile, 2, cells=(9, 11))
    skein, _ = [studio.do(apply_tag, tag) for tag in tags]
    studio.do(weigh_reference, "wool", 58_000, 50_000)
    studio.do(read_humidity, 620)
    studio.do(sell_as, studio.do(weigh_put_up, skein, 96_400), skein, 96)


def make(folder: Path) -> Path:
    """A book of today's shape, named by it."""
    head = ScriptDirectory.from_config(migrations_config()).get_current_head()
    path = folder / f"{head}.book"
    if path.exists():
        raise SystemExit(f"{path.name} is there already, and stays as it is.")
    upgrade_book(path, datetime(2026, 2, 2, 8, tzinfo=UTC))
    with closing(Book(path, Clock())) as book:
        a_little_thread(Studio(book))
    with closing(sqlite3.connect(path, isolation_level=None)) as raw:  # as small as it can be
        for step in ("journal_mode = DELETE", "page_size = 1024"):
            raw.execute(f"PRAGMA {step}")
        raw.execute("VACUUM")
    return path


if __name__ == "__main__":
    made = make(FOLDER)
    print(f"{made.name}: {made.stat().st_size / 1000:.0f} kB")  # noqa: T201
