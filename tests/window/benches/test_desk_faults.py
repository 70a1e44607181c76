"""The desk: a fault is reported, its suspects are looked into, and held."""

import re
from io import BytesIO

import pytest
from PIL import Image

from app.calculations.codes import shown
from app.lookups.holds import live_holds
from app.lookups.reports import reports
from app.lookups.skeins import named_by_tag
from app.work.holding import hold
from app.work.reporting import FaultIn, report_fault, seen_good
from app.work.selling import OrderIn, Wanted, place_order
from tests.calculations.suspect_cases import EARLIER
from tests.deeds import customer, into_load
from tests.lookups.suspected import ThirtyTwo
from tests.window.benches.at_work import DONE, FAULT, GOOD, HOLD, plate
from tests.window.benches.desk_hands import open_desk

BROKEN = b"\x89PNG\r\n\x1a\n" + b"\0" * 40


def a_photo():
    out = BytesIO()
    Image.new("RGB", (640, 400), "grey").save(out, "PNG")
    return out.getvalue()


@pytest.fixture
def desk(qtbot, settings, studio):
    yield from open_desk(qtbot, settings, studio)


def mark_of(desk, yarn):
    """The tag of a skein."""
    return desk.studio.book.ask(named_by_tag, [yarn])[yarn].mark


def cone_code(desk, cone):
    return next(iter(desk.studio.book.ask(lambda c: c.exec_driver_sql(
        "SELECT code FROM cone WHERE id = ?", (cone,)).scalars().all())))


def suspects_of(desk):
    return desk.bench.back.faults.page.suspects


def chances(desk):
    """{suspect: (word, per cent)} as they stand in the table."""
    model = suspects_of(desk).table.model
    read = [[model.index(row, column).data() for column in range(3)]
            for row in range(model.rowCount())]
    return {name: (word, int(re.sub(r"\D", "", chance))) for name, word, chance in read}


def report(desk, fault, *more):
    """Press F, the key of the fault, DONE."""
    desk.press("F")
    card = desk.hand.page.why
    desk.click(next(key for key in card.faults if key.accessibleName() == fault))
    desk.scan(*more, DONE)


def test_from_two_complaints_to_the_cone_by_looking_at_three_skeins(desk):
    """Two cones are suspected, nothing is decided; the next look says which three to see."""
    case = ThirtyTwo(desk.studio)
    case.found(EARLIER, "other")
    cone = f"cone {shown(cone_code(desk, case.a))}"
    desk.press("F1")
    card = suspects_of(desk)
    assert card.headline.text().startswith(f"Not decided: possible are {cone}, wash load ")
    before = chances(desk)
    assert before[cone] == ("possible", 41)
    assert sorted(chance for _, chance in before.values())[-3:] == [19, 26, 41]
    assert card.looks[0].text().startswith("Next: Look at 3 of the 4 skeins of lot ")
    named = [mark_of(desk, skein) for skein in case.skeins["L2 W2"]]
    for mark in named[:2]:
        desk.scan(mark)
        report(desk, "other")
        assert desk.said == "other on 1 skein"
    desk.scan(named[2])
    desk.press("G")
    assert desk.said == "seen good: 1 skein"
    desk.press("F1")
    assert card.headline.text() == f"Likely {cone}."
    assert chances(desk)[cone] == ("likely", 96)
    assert card.there.text() == f"Still there, look at it first: {cone}."
    hold_and_close(desk, cone)


def hold_and_close(desk, cone):
    """From the suspect: one entry holds it, one closes the report with its cause."""
    desk.press("F9")
    desk.type("oil")
    desk.press("Enter")
    (held,) = desk.studio.book.ask(live_holds)
    assert held.on == cone
    desk.press("F10")
    desk.scan(plate(1))
    causes = [one.cause for one in desk.studio.book.ask(reports)]
    assert causes.count(f"{cone}: seen on the thing itself") == 1


def test_a_buyers_complaint_keeps_where_how_far_apart_and_a_photo(desk):
    """The order finds who told; the name of the buyer is nowhere in the journal."""
    studio = desk.studio
    lot, skeins = studio.tagged(studio.cone(), 3)
    ada = studio.do(customer, "Ada Nygård")
    studio.do(place_order, OrderIn("1201", studio.clock.now, "web", (Wanted("a skein", 1),), ada))
    desk.scan(mark_of(desk, skeins[0]))
    desk.press("F")
    card = desk.hand.page.why
    desk.scan(DONE)
    assert card.taken.text() == "Choose the fault first."
    desk.scan(plate(1), mark_of(desk, skeins[1]))
    desk.click(next(key for key in card.where if key.accessibleName() == "repeats"))
    desk.click(card.repeat.line)
    desk.type("150")
    desk.click(card.order.line)
    desk.type("1209")
    assert desk.bench.take_picture(a_photo())
    assert desk.bench.take_picture(BROKEN)
    desk.scan(DONE)
    assert "No order has this number" in card.order.wrong.text()
    desk.click(card.order.line)
    desk.press("Backspace")
    desk.type("1")
    desk.scan(DONE)
    (kept,) = studio.book.ask(reports)
    assert (kept.fault, kept.faulty, kept.repeat_mm, kept.photos, kept.customer) == (
        "streak", 2, 1500, 2, ada)
    desk.press("F1")
    page = desk.bench.back.faults.page
    assert page.table.model.index(0, 0).data() == "streak, every 150 cm"
    look_at_its_photos(desk, page.report)


def look_at_its_photos(desk, card):
    """Opened in full by a tap; one that is damaged says so; erased on request it is gone."""
    assert card.hint.text().startswith("It comes back once around the reel")
    whole, broken = card.thumbs
    desk.click(broken)
    assert card.large.text() == "This picture cannot be opened; it is kept as it came."
    desk.click(whole)
    assert card.large.pixmap().height() == 420
    desk.click(card.erase_key)
    desk.scan(plate(1))
    assert desk.said == "removed a picture of report 1"
    assert (len(card.thumbs), card.none.text()) == (1, "1 picture of it was removed on request.")
    assert not card.large.isVisible()


def test_a_lot_as_stated_is_told_but_not_reckoned_with(desk):
    studio = desk.studio
    lot, _ = studio.tagged(studio.cone(), 3)
    desk.scan(studio.code(lot))
    desk.press("F")
    desk.click(desk.hand.page.why.count.line)
    desk.type("2")
    desk.scan(plate(2), DONE)
    assert desk.said == "stain on a lot, as stated"
    desk.press("F1")
    assert suspects_of(desk).headline.text().startswith("Not decided: no skein that is known")
    assert desk.bench.back.faults.page.table.model.index(0, 1).data().endswith(
        "2 skeins, as stated")


def test_the_second_complaint_of_a_cone_says_where_to_look(desk):
    studio = desk.studio
    cone = studio.cone()
    _, first = studio.tagged(cone, 2)
    _, second = studio.tagged(cone, 2)
    studio.do(report_fault, FaultIn("streak", "customer"), first[:1])
    desk.scan(mark_of(desk, second[0]))
    report(desk, "streak")
    assert desk.found == [
        f"“streak” was told before of yarn that shares cone {shown(cone_code(desk, cone))} "
        "with this: look at the suspects on the Desk (Faults)."]


def test_without_a_fault_the_page_says_what_to_do(desk):
    desk.press("F1")
    assert "No fault was reported." in desk.words(desk.bench.back.faults.page)


def test_after_a_shared_wash_the_load_is_the_first_suspect_and_lists_the_others(desk):
    """Two pale lots met a red one in the wash; a third pale lot was washed alone and is good."""
    studio = desk.studio
    cords = [studio.wind(cone, 4) for cone in studio.cones(4)]
    for cord in cords:
        studio.dye(cord)
    load = studio.do(into_load, "wash", cords[:3])
    studio.do(into_load, "wash", cords[3:])
    pale, other, _red, alone = (studio.tag(studio.finish(cord, red=4)[0], 4) for cord in cords)
    studio.do(seen_good, alone, "inspection")
    studio.do(report_fault, FaultIn("stain", "customer", words="a pink cast"), other[:2])
    desk.scan(mark_of(desk, pale[0]))
    report(desk, "stain")
    assert "wash load" in desk.found[0]
    desk.press("F1")
    first, *_ = chances(desk)
    assert first.startswith(f"wash load {load} ")
    desk.click(suspects_of(desk).keys["list"])
    page = desk.bench.recalls.page
    assert page.title.text() == f"Who has something of {first}"
    assert page.sums[-1].count == 12


def test_a_fault_is_told_once_and_nothing_else_slips_in_while_it_is_told(desk):
    """Plates, letters and double presses while the card is open, or on another page."""
    studio = desk.studio
    lot, skeins = studio.tagged(studio.cone(), 3)
    studio.do(hold, "lot", lot, "moths")
    desk.scan(mark_of(desk, skeins[0]))
    desk.press("F")
    card = desk.hand.page.why
    desk.scan(plate(2), GOOD, FAULT, HOLD)
    desk.press("G")
    assert "A fault is being told here" in desk.trouble
    desk.click(desk.name.holds[0].clear_key)
    assert "A fault is being told here" in desk.trouble
    assert desk.hand.page.why is card
    desk.bench.take_picture(a_photo())
    card.does.click()
    card.does.click()
    desk.quiet()
    (kept,) = studio.book.ask(reports)
    assert (kept.fault, kept.faulty, kept.good, kept.photos) == ("stain", 1, 0, 1)
    desk.press("F1")
    desk.scan(plate(3))
    assert desk.trouble.startswith("Nothing is open here")
    assert desk.bench.at == "Faults"
    desk.scan(HOLD)
    assert desk.bench.at == "In hand"
    asked = desk.hand.page.why
    assert asked.isVisible()
    asked.field.line.setText("oil")
    asked.save()
    asked.save()
    desk.quiet()
    assert len(studio.book.ask(live_holds)) == 2


def test_two_faulty_skeins_are_called_nothing_and_it_is_said_why(desk):
    studio = desk.studio
    cone, other = studio.cones(2)
    _, skeins = studio.tagged(cone, 2)
    _, fellows = studio.tagged(other, 8)
    studio.do(seen_good, fellows, "inspection")
    desk.scan(mark_of(desk, skeins[0]))
    report(desk, "thin place", mark_of(desk, skeins[1]))
    desk.press("F1")
    first = suspects_of(desk).ranked[0]
    assert (str(first.suspect), first.word) == (f"cone {shown(cone_code(desk, cone))}", "possible")
    assert first.chance >= 0.8
    assert suspects_of(desk).stated.text() == (
        "Nothing is called likely on fewer than 3 faulty skeins: 2 may be chance.")


def test_a_fault_that_was_told_by_mistake_is_taken_out_with_its_reason(desk):
    _, skeins = desk.studio.tagged(desk.studio.cone(), 2)
    desk.scan(mark_of(desk, skeins[0]))
    report(desk, "streak")
    desk.press("F1")
    desk.press("Alt+M")
    page = desk.bench.back.faults.page
    assert "“streak” was told by mistake?" in desk.words(page)
    desk.scan(plate(1))
    assert desk.said == "streak: told by mistake, it counts no more"
    assert desk.studio.book.ask(reports) == ()
    assert not page.report.isVisible()
    desk.press("F2")
    assert len(desk.studio.book.ask(reports)) == 1


def test_the_open_reports_of_a_closed_case_are_named_and_closed_by_one_key(desk):
    studio = desk.studio
    cone = studio.cone()
    marks = [mark_of(desk, studio.tagged(cone, 2)[1][0]) for _ in range(3)]
    for mark in marks:
        desk.scan(mark)
        report(desk, "streak")
    desk.press("F1")
    card = desk.bench.back.faults.page.case
    assert not card.isVisible()
    desk.press("F10")
    desk.scan(plate(1))
    first, second, _ = (shown(mark) for mark in marks)
    assert card.title.text() == "2 reports of “streak” are still open"
    assert card.told.text() == ("Their yarn went, or may have gone, through the same: "
                                f"{first}, told 6 Apr; {second}, told 6 Apr.")
    assert card.key.accessibleName() == "Close these 2 too, with its cause"
    desk.bench.back.faults.page.table.view.setFocus()
    desk.press("Alt+A")
    assert desk.said == f"streak: 2 more reports closed, from cone {shown(cone_code(desk, cone))}"
    assert not card.isVisible()
    told = studio.book.ask(reports)
    assert len({one.cause for one in told}) == 1
    assert told[0].cause.endswith("seen on the thing itself")
    desk.press("F2")
    assert card.key.isVisible()


def test_escape_leaves_a_fault_only_when_it_was_said_what_is_lost(desk):
    """Typed words and a photo stay at the first Esc, and while something else is sought."""
    studio = desk.studio
    _, skeins = studio.tagged(studio.cone(), 2)
    desk.scan(mark_of(desk, skeins[0]))
    desk.press("F", "Escape")
    assert desk.hand.page.why is None
    desk.press("F")
    card = desk.hand.page.why
    desk.type("a pale stripe")
    desk.press("Escape")
    assert desk.hand.page.why is card
    assert card.taken.isVisible()
    assert card.taken.text().startswith("What stands here is not saved yet, and stays.")
    desk.bench.take_picture(a_photo())
    desk.press("Escape")  # more stands there now
    assert desk.hand.page.why is card
    desk.window.head.scan_line.setFocus()
    desk.type(mark_of(desk, skeins[1]))
    desk.press("Enter")
    assert "A fault is being told here" in desk.trouble
    assert (desk.hand.page.why, card.field.line.text()) == (card, "a pale stripe")
    card.setFocus()
    desk.press("Escape")
    assert desk.hand.page.why is None
    assert studio.book.ask(reports) == ()


def test_a_closed_report_says_its_cause_and_one_taken_back_leaves_the_page(desk):
    studio = desk.studio
    _, skeins = studio.tagged(studio.cone(), 3)
    desk.scan(mark_of(desk, skeins[0]))
    report(desk, "stain")
    desk.press("F1")
    page = desk.bench.back.faults.page
    chances_shown = [suspects_of(desk).table.model.index(row, 2).data()
                     for row in range(suspects_of(desk).table.model.rowCount())]
    assert sum(int(re.sub(r"\D", "", chance)) for chance in chances_shown) in range(97, 104)
    desk.press("F10")
    desk.scan(plate(1))
    assert page.report.told.text().endswith("seen on the thing itself.")
    desk.press("F2")
    assert "Closed" not in page.report.told.text()
    desk.scan(mark_of(desk, skeins[1]))
    report(desk, "hole")
    desk.press("F1")
    assert page.report.title.text() == "hole"
    desk.press("F2")
    assert page.report.title.text() == "stain"
