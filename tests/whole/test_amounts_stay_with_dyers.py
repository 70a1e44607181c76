"""How much of what a recipe holds is for those who dye: no other screen, paper or list has it."""

from collections.abc import Iterator
from dataclasses import replace
from random import Random

import pytest

from app.exchange.answers import trace_data
from app.exchange.batch_records import batch_pdf
from app.exchange.free_counts import free_counts_file
from app.exchange.reports import trace_pdf
from app.exchange.tag_printing import LotOrder, OnStock, print_for_lot
from app.exchange.tracing import sentences, traced
from app.lookups.batch_record import batch_record
from app.lookups.counter import at_counter
from app.lookups.lot_lines import lot_line
from app.lookups.story import story
from app.lookups.things import lot_found
from app.store.deed import By
from app.work.dyeing import BathIn, into_bath
from app.work.studio import choose
from app.work.weighing import close_weighing
from tests.documents.samples import text_of
from tests.dyehouse import DYES, Dyehouse
from tests.makers import Studio
from tests.whole.test_house_rules import MODULES, name_of

SIZES = (8137, 2291, 1009)
"""Millionths of the fibre that stand in no code, date or weight of this studio."""
WEIGHED = (4898, 1379, 607)
TELLING = ("8137", "2291", "1009", "4898", "1379", "4.898", "1.379", "0.607")

MAY_KNOW = {
    "app/lookups/recipe_amounts.py", "app/lookups/at_balance.py", "app/lookups/batch_record.py",
    "app/exchange/weigh_sheets.py", "app/exchange/recipes_in.py",
    "app/window/benches/weighing/recipe_page.py", "app/window/benches/weighing/recipe_draft.py",
    "app/window/benches/weighing/history_card.py",
}
"""The dye bench, the batch record, the weigh-out sheet and the notebook of recipes."""


@pytest.fixture
def dyed(studio: Studio) -> tuple[Studio, int]:
    """A lot dyed by these amounts, tagged and on its way to a shelf."""
    house = Dyehouse(studio, tuple(
        replace(one, amount=size) for one, size in zip(DYES, SIZES, strict=True)))
    weighing = house.begin()
    for number, mg in zip((1, 2, 3), WEIGHED, strict=True):
        house.take(weighing, house.jar(number).fill, mg)
    studio.do(close_weighing, weighing)
    cone = studio.cone()
    rows = studio.wind(cone, 4)
    lot: int = studio.do(into_bath, BathIn((rows,), house.recipe, None, weighing),
                         studio.random)["lots"][0]
    studio.finish(rows, red=4)
    studio.do(choose, {"name": "Quernlow Dyeyard", "address": "4 Sluice Row, Quernlow"})
    return studio, lot


def papers(studio: Studio, lot: int) -> Iterator[tuple[str, str]]:
    """(what it is, all that stands on it) of what people see who do not dye."""
    book, now = studio.book, studio.clock.now
    found = book.ask(lot_found, lot)
    assert found is not None
    one = book.ask(traced, found, now)
    yield "story", repr(book.ask(story, found, now))
    yield "trace", repr((tuple(sentences(one)), trace_data(one)))
    yield "trace on paper", words_of(book.ask(trace_pdf, found, now, "OW"))
    order = LotOrder(lot, OnStock("swing-85x55"))
    yield "tags", words_of(print_for_lot(book, By("LP", "tagging"), order, Random(3)).pdf)
    yield "counter", repr((book.ask(at_counter, lot), book.ask(lot_line, lot)))
    yield "web shop", book.ask(free_counts_file).decode()


def words_of(pdf: bytes) -> str:
    return " ".join(text_of(pdf))


def test_no_amount_leaves_the_dye_bench(dyed: tuple[Studio, int]) -> None:
    studio, lot = dyed
    told = {what: [one for one in TELLING if one in words] for what, words in papers(studio, lot)}
    assert told == dict.fromkeys(told, [])


def test_the_batch_record_has_them_so_that_this_test_can_fail(dyed: tuple[Studio, int]) -> None:
    studio, lot = dyed
    record = studio.book.ask(batch_record, lot, studio.clock.now)
    assert "0.8137" in words_of(batch_pdf(record, "OW"))


def test_only_who_dyes_asks_for_amounts() -> None:
    asking = {name_of(path) for path in MODULES
              if "lookups.recipe_amounts import" in path.read_text(encoding="utf-8")}
    assert {name for name in asking if not name.startswith("app/demo/")} <= MAY_KNOW
