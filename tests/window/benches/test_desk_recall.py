"""The desk: a batch is held with one entry, and everyone who has some of it is listed."""

import re

import pytest

from app.lookups.free_counts import free_counts
from app.lookups.recall import recall_list
from app.records import Recall
from app.window.benches.desk import recalls
from app.window.benches.desk.recall_page import SumWords
from app.work.jars import Refill, refill
from app.work.recalling import keep_recall
from tests.deeds import customer, send
from tests.dyehouse import Dyehouse
from tests.lookups.half_sold import half_sold
from tests.makers import EACH_MG
from tests.window.benches.desk_hands import open_desk


@pytest.fixture
def made(monkeypatch):
    """Papers that were made, instead of a folder of them: {name: bytes}."""
    papers = {}
    monkeypatch.setattr(recalls, "put_on_paper", lambda _bench, _kind, name, pdf, _said:
                        papers.update({name: pdf("OW")}))
    return papers


@pytest.fixture
def desk(qtbot, settings, studio, made):
    yield from open_desk(qtbot, settings, studio)


def code_of_cone(studio, cone):
    return studio.book.ask(lambda c: c.exec_driver_sql(
        "SELECT code FROM cone WHERE id = ?", (cone,)).scalar())


def sums_of(desk):
    """{words: (pieces, mg)} as the page says them, read off the large numbers."""
    page = desk.bench.recalls.page
    said = [one.accessibleName() for one in page.findChildren(SumWords)
            if one.isVisible()]
    read = (re.fullmatch(r"(?:[+=] )?([\d,]+) (.+) ([\d,.]+) g", one) for one in said)
    return {one[2]: int(one[1].replace(",", "")) for one in read if one}


def test_a_whole_batch_is_held_after_half_of_it_was_sold(desk, made):
    """118 with known buyers, 34 not known, 96 on a shelf, 62 in work: 310, and none left to sell.
    """
    studio = desk.studio
    cones = half_sold(studio)
    left = [one.left for one in studio.book.ask(free_counts)]
    assert sum(left) == 96
    desk.scan(code_of_cone(studio, cones[1]))
    assert desk.name.batch_keys[0].accessibleName() == "Hold the whole batch: 24 cones"
    desk.press("B")
    assert "Put a hold on the whole batch 7732 of Aske Mill?" in desk.words(desk.hand.page.why)
    desk.type("moths")
    desk.press("Enter")
    assert desk.said == "put a hold on batch 7732 of Aske Mill: moths"
    assert not any(one.left for one in studio.book.ask(free_counts))
    desk.press("F4")
    desk.click(desk.bench.back.holds.who_keys[0])
    assert sums_of(desk) == {"sold, buyer known": 118, "sold, buyer not known": 34,
                             "still here": 96, "in work": 62, "in all": 118 + 34 + 96 + 62}
    page = desk.bench.recalls.page
    assert page.title.text() == "Who has something of batch 7732 of Aske Mill"
    for key in page.paper_keys.values():
        desk.click(key)
    letters = made["recall-batch-7732-of-Aske-Mill.txt"].decode("utf-8-sig")
    assert letters.count("Dear Buyer") == 10
    assert "What was seen: moths." in letters
    told = [int(some) for some in re.findall(r"(\d+) skeins? \(", letters)]
    assert sum(told) == 118
    assert made["recall-batch-7732-of-Aske-Mill.xlsx"][:2] == b"PK"
    assert made["recall-batch-7732-of-Aske-Mill.pdf"][:4] == b"%PDF"


def test_a_makers_powder_is_held_from_its_jar_and_all_it_dyed_is_listed(desk):
    """A jar with the rest of one batch under another: each can be held, the most of it first."""
    studio = desk.studio
    house = Dyehouse(studio)
    house.dye(house.weighed())
    studio.do(refill, 1, Refill("q", 1_500_000))
    house.dye(house.weighed(), count=3)
    desk.scan("J001H")
    assert [key.accessibleName() for key in desk.name.batch_keys if key.isVisible()] == [
        "Hold batch q of Aske Mill: 1 jar filling", "Hold batch p of Aske Mill: 5 jar fillings"]
    desk.press("B")
    assert "Put a hold on the whole batch q of Aske Mill?" in desk.words(desk.hand.page.why)
    desk.type("recalled by its maker")
    desk.press("Enter")
    desk.press("F4")
    desk.click(desk.bench.back.holds.who_keys[0])
    assert {words: count for words, count in sums_of(desk).items() if count} == {
        "in work": 3, "in all": 3}


def kept_on(page):
    """[(practice or in earnest, of what, accounted for, how long)] as the page lists them."""
    return [tuple(line.text().split(" · ")[1:5]) for line in page.kept.lines if line.isVisible()]


def test_a_practice_recall_is_kept_once_with_how_long_it_took(desk):
    studio = desk.studio
    one, other = studio.cones(2)
    _, skeins = studio.tagged(one, 3)
    studio.do(send, skeins[:1])
    studio.do(keep_recall, "cone", other, studio.clock.now, practice=True)
    desk.scan(code_of_cone(studio, one))
    desk.press("R", "F9")
    page = desk.bench.recalls.page
    assert re.fullmatch(r"practised the recall of cone C·0001·7, took \d+ (seconds|minutes): "
                        r"2 of 3 accounted for", desk.said)
    assert page.took.text() == f"P{desk.said[1:]}."
    took = desk.said.partition("took ")[2].partition(":")[0]
    assert kept_on(page) == [
        ("practice", "cone C·0001·7", "2 of 3 accounted for", f"took {took}"),
        ("practice", "cone C·0002·K", "0 of 0 accounted for", "took 60 seconds")]
    desk.press("F9")
    assert "already and holds the same now; nothing was saved" in desk.trouble
    desk.press("F10", "F8", "R", "F9")  # in earnest, and opened again it is another practice
    assert [why for why, *_ in kept_on(page)] == ["practice", "in earnest", "practice", "practice"]
    kept = studio.book.ask(lambda c: c.execute(
        Recall.__table__.select().where(Recall.thing == one)).first())
    assert (kept.practice, kept.skeins, kept.mg, kept.accounted) == (1, 3, 3 * EACH_MG, 2)
    desk.press("F8")
    assert desk.hand.isVisible()
    desk.press("F4")
    assert [on for _, on, *_ in kept_on(desk.bench.back.holds)] == [
        *["cone C·0001·7"] * 3, "cone C·0002·K"]


def test_a_buyer_of_four_out_of_a_mixed_pot_likely_has_one_or_two(desk):
    """Seven of A and five of B in one pot: a hold on B stops all twelve, not five."""
    studio = desk.studio
    a, b = studio.cones(2)
    pool = studio.mix(studio.wind(a, 7), studio.wind(b, 5))
    studio.dye(pool)
    skeins = studio.tag(studio.finish(pool, red=12)[0], 12)
    studio.do(send, skeins[:4], studio.do(customer, "Ada Nygård"))
    desk.scan(code_of_cone(studio, b))
    desk.press("H")
    desk.type("oil")
    desk.press("Enter", "R")
    page = desk.bench.recalls.page
    row = [page.table.model.index(0, column).data() for column in (0, 2, 3)]
    assert row == ["Ada Nygård", "4 skeins",
                   "likely 1 to 2 of the 4 (at least one: 93 %, expected 1.67)"]
    assert page.sure.text().startswith("5 of the 12 come from it; which is not known of all")
    assert sums_of(desk)["in all"] == 12 == studio.book.ask(recall_list, "cone", b).count
