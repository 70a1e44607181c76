"""A bouncing scanner, an overdye, a fallen tag and minis: what the book says to the last gram."""

from datetime import timedelta
from typing import Any

import pytest
from sqlalchemy import func, select

from app.calculations.codes import Kind
from app.lookups.finishing import NO_TIE
from app.lookups.left_to_sell import left_to_sell
from app.lookups.origins import origins
from app.lookups.present import NOT_MATCHED, Amount
from app.lookups.tagging import marks_for
from app.lookups.things import by_code
from app.problems import Refused
from app.records import DeedRow, Tag, TagOn, Whereabouts, Yarn
from app.scanning.resolve import resolve
from app.work.bundling import make_plates
from app.work.dyeing import BathIn, into_bath, name_colourway
from app.work.finishing import finish
from app.work.matching import find, is_missing_from, new_tag
from app.work.moving import To, move
from app.work.remaking import cut, gather
from app.work.selling import OrderIn, Wanted, place_order, send, take_for
from app.work.tagging import apply_tag, reprint
from tests.makers import EACH_MG, Studio
from tests.whole.answers import agree, said, skeins, states, stops


@pytest.fixture
def shelf(studio: Studio) -> int:
    """A place for what is finished."""
    (plate,) = studio.do(make_plates, Kind.SHELF, [3])
    return int(plate)


def rows(studio: Studio, kind: Any) -> int:
    """How many rows of a kind the book ever held."""
    return studio.book.ask(lambda c: c.execute(select(func.count()).select_from(kind)).scalar_one())


def mark_on(studio: Studio, skein: int) -> str:
    """The mark of the tag that a skein wears."""
    return studio.book.ask(lambda c: c.execute(
        select(Tag.mark).join(TagOn, TagOn.tag == Tag.id)
        .where(TagOn.yarn == skein, TagOn.until.is_(None), TagOn.struck.is_(None))).scalar_one())


def test_a_trigger_that_bounces_moves_a_skein_once(studio: Studio, shelf: int) -> None:
    lot, tagged = studio.tagged(studio.cone(), 5)
    studio.do(move, tagged, To("shelf", place=shelf))
    wanted = Wanted("green", 2, lot)
    (line,) = studio.do(place_order, OrderIn("1187", studio.clock.now, "web", (wanted,)))
    first = studio.done(take_for, line, [tagged[0], tagged[0]], token="b1")
    assert first.said == "took 1 skein for order 1187"
    moves, entries = rows(studio, Whereabouts), rows(studio, DeedRow)
    studio.clock.now += timedelta(seconds=2)
    assert studio.done(take_for, line, tagged[:1], token="b1").seq == first.seq
    studio.clock.now += timedelta(minutes=5)
    with pytest.raises(Refused, match=r"taken for order 1187 already and counted once; nothing was "
                                      r"saved\. Put it back on the shelf, if that was meant"):
        studio.do(take_for, line, tagged[:1], token="b2")
    assert (rows(studio, Whereabouts), rows(studio, DeedRow)) == (moves, entries)
    assert states(studio) == {"taken": 1, "shelf": 4}
    assert studio.book.ask(left_to_sell, lot).count == 3
    studio.do(take_for, line, tagged[1:2])
    assert studio.done(send, "1187").said == "sent order 1187: 2 skeins"
    agree(studio)


def test_six_unsold_skeins_are_overdyed(studio: Studio, shelf: int) -> None:
    cone = studio.cone()
    first, tagged = studio.tagged(cone, 11)
    studio.do(move, tagged, To("shelf", place=shelf))
    marks = [mark_on(studio, skein) for skein in tagged[:6]]
    before = {kind: rows(studio, kind) for kind in (Yarn, Tag, TagOn, Whereabouts)}

    group = studio.do(gather, tagged[:6], studio.discs[0])
    recipe = studio.do(name_colourway, "Ferry Ledger over", "#24304F")
    bathed = studio.do(into_bath, BathIn((group,), recipe, studio.pot), studio.random)
    (second,) = bathed["lots"]
    (pile,) = studio.do(finish, [group], {NO_TIE: 6})
    over = studio.tag(pile, 6)
    studio.do(move, over, To("shelf", place=shelf))

    assert bathed["codes"][0] not in (None, studio.code(first))
    for mark in marks:
        scanned = studio.book.ask(resolve, mark, False)
        assert scanned.found is not None
        assert scanned.found.void
        assert scanned.next_step == "Throw this tag away."
    assert said(studio, over[0], "lot") == [
        (first, "known", "counted"), (second, "known", "counted")]
    assert said(studio, over[0]) == [(cone, "known", "counted")]
    assert [one.words for one in studio.book.ask(origins, {over[0]: 1}) if one.kind == "lot"] == [
        "Sluice Keeper's Glove", "Ferry Ledger over"]
    trailed = stops(studio, mark_on(studio, over[0]))
    assert [count for kind, count in trailed if kind == "dye lot"] == ["11 skeins", "6 skeins"]
    assert studio.book.ask(left_to_sell, first).count == 11 - 6
    assert studio.book.ask(left_to_sell, second).count == 6
    assert studio.present("lot", second) == {("shelf", "skein"): skeins(6)}
    assert studio.present("cone", cone) == {("shelf", "skein"): skeins(11)}
    assert all(rows(studio, kind) > count for kind, count in before.items())
    agree(studio)


def test_a_skein_whose_tag_fell_off_stays_not_known_until_it_is_matched(
    studio: Studio, shelf: int,
) -> None:
    group = studio.wind(studio.cone(), 8, "yellow")
    lot = studio.dye(group)
    (pile,) = studio.finish(group, yellow=7)
    tagged = studio.tag(pile, 6)
    studio.do(move, tagged, To("shelf", place=shelf))

    found = studio.do(find, 1, 101_000)
    assert said(studio, found) == [(None, "not known", "stated")]
    assert said(studio, found, "lot") == [(None, "not known", "stated")]
    assert states(studio)[NOT_MATCHED] == 1
    (tag,) = studio.print(pile, 1)
    with pytest.raises(Refused, match="a lot that nobody knows"):
        studio.do(new_tag, found, tag)
    studio.do(is_missing_from, found, group)
    studio.do(new_tag, found, tag)
    assert said(studio, found, "lot") == [(lot, "known", "recognised")]
    assert states(studio) == {"shelf": 6, "piled": 1, "table": 1}

    lost = mark_on(studio, tagged[0])
    (fresh,) = studio.book.ask(marks_for, str(studio.code(lot)), 1, studio.random)
    studio.do(reprint, tagged[0], fresh, "{}", ("swing tag", 1))
    void = studio.book.ask(by_code, lost)
    assert void is not None
    assert (void.void, void.successor) == (True, fresh)
    assert mark_on(studio, tagged[0]) == fresh
    agree(studio)


def test_a_skein_becomes_five_minis_and_no_gram_is_lost(studio: Studio) -> None:
    lot, (skein, other) = studio.tagged(studio.cone(), 2)
    old = mark_on(studio, skein)
    pile = studio.do(cut, skein, 5, "mini", 600)
    tags = studio.print(pile, 5)
    minis = [studio.do(apply_tag, tag) for tag in tags]
    marks = [mark_on(studio, mini) for mini in minis]
    assert len({*marks, old}) == 6
    assert {mark[:7] for mark in marks} == {studio.code(lot)}
    assert {said(studio, mini, "lot")[0][:2] for mini in minis} == {(lot, "known")}
    scanned = studio.book.ask(by_code, old)
    assert scanned is not None
    assert scanned.void
    closed = studio.book.ask(lambda c: c.execute(
        select(Yarn.closed).where(Yarn.id == skein)).scalar_one())
    assert closed is not None
    assert studio.present() == {("table", "mini"): Amount(5, 102_525),
                                ("table", "skein"): skeins(1)}
    assert EACH_MG == 102_525 + 600  # 103.1 g = 5 minis of 20.5 g and 0.6 g of waste
    each = studio.book.ask(lambda c: c.execute(
        select(Yarn.mg).where(Yarn.id.in_(minis))).scalars().all())
    assert [round(mg / 1000, 1) for mg in each] == [20.5] * 5
    with pytest.raises(Refused, match="became something else"):
        studio.do(move, [skein], To("table"))
    assert other not in minis
    agree(studio)
