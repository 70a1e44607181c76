"""Cones at the door, weighed one after the other: little is typed, nothing typed is lost."""

import pytest

from app.calculations.codes import Kind, numbered
from app.lookups.cones import cone_facts
from app.work.receiving import ConeIn, DeliveryIn, receive
from tests.window.benches.at_work import DONE, UNDO
from tests.window.benches.door_hands import at_the_door


@pytest.fixture
def door(qtbot, settings, studio):
    """At the door of a studio with one base and no cones."""
    yield from at_the_door(qtbot, settings, studio)


def cone_card(number):
    return numbered(Kind.CONE, number).text


def test_a_cone_of_1462_g_with_a_centre_of_64_g_holds_1398_g(door):
    door.begin()
    door.write(gross="1462", centre="64", batch="A-203")
    assert door.cards.weighing.asks.text() == "Cone 1 holds 1,398 g net."
    door.press("Enter", "F10")
    assert door.in_book == [(cone_card(1), 1_398, "A-203")]
    assert door.said == "took in 1 cone of Tarnfield 4-ply, note 2263"
    assert door.found == []


def test_by_keyboard_alone_from_supplier_to_codes(door):
    door.type("Aske Mill")
    door.press("Tab")
    door.type("2263")
    door.press("Tab", "Down", "Enter")
    door.type("1462")
    door.press("Tab")
    door.type("64")
    door.press("Tab")
    door.type("A-203")
    door.press("Enter")
    door.type("1480")
    door.press("Enter", "F10")
    assert door.in_book == [(cone_card(1), 1_398, "A-203"), (cone_card(2), 1_416, "A-203")]
    assert [cone.code for cone in door.cards.codes.cones] == [cone_card(1), cone_card(2)]
    door.press("Enter")
    assert door.bench.hand is door.cards.start


def test_centre_and_batch_are_kept_and_the_list_grows(door):
    door.begin()
    door.weigh(1462, centre="64", batch="A-203")
    door.weigh("1.471,5")
    door.weigh("1,480 g", batch="A-207")
    assert door.rows == [
        ["3", "A-207", "1,480 g", "64 g", "1,416 g"],
        ["2", "A-203", "1,471.5 g", "64 g", "1,407.5 g"],
        ["1", "A-203", "1,462 g", "64 g", "1,398 g"],
    ]
    assert door.cards.weighing.so_far.accessibleName() == "3 cones 4,221.5 g net"
    assert door.cards.weighing.off.text() == "2 batches in one delivery: wind and dye them apart."


def test_a_delivery_of_24_cones_is_24_codes_to_write(door):
    door.begin()
    door.write(centre="64", batch="A-203")
    for place in range(24):
        door.form.gross.line.setText(str(1_440 + place))
        door.cards.weighing.add_cone()
    door.scan(DONE)
    assert len(door.in_book) == 24
    assert [cone.code for cone in door.cards.codes.cones] == [cone_card(n) for n in range(1, 25)]
    assert door.cards.codes.number.accessibleName().startswith("24 cones of Tarnfield 4-ply 33.")
    assert door.trail == []


def test_one_cone_alone_hangs_on_the_trail(door):
    door.begin()
    door.weigh(1462, centre="64", batch="A-203")
    door.press("F10")
    assert door.trail[-1] == ("cone", "C·0001·7")


@pytest.mark.parametrize(("gross", "net"), [("700", "636 g"), ("2,400", "2,336 g")])
def test_a_net_weight_out_of_the_rule_is_said_and_kept(door, gross, net):
    door.begin()
    door.weigh(gross, centre="64", batch="A-203")
    assert door.cards.weighing.off.text() == (
        f"Cone 1 holds {net}: a cone has 700 to 2,200 g as a rule. Weigh it again.")
    assert door.rows[0][-1] == "look again"
    door.press("F10")
    assert len(door.in_book) == 1
    assert door.found == [
        f"C·0001·7 holds {net}: a cone has 700 to 2,200 g as a rule. Weigh it again."]


def test_100_m_of_25_8_g_are_over_the_count_of_250_tex(door):
    door.begin()
    door.weigh(1462, centre="64", batch="A-203", wrap="25.7")
    assert door.cards.weighing.off.isHidden()
    door.weigh(1462, wrap="25.8")
    assert door.cards.weighing.off.text() == (
        "Cone 2: 100 m weigh 25.8 g, 3.2 % over the base's count. Wrap a second cone.")
    door.press("F10")
    assert door.found == [
        "C·0002·K: 100 m weigh 25.8 g, 3.2 % over the base's count. Wrap a second cone."]
    assert door.studio.book.ask(cone_facts, 2).checked


def test_a_number_that_is_taken_is_refused_with_the_way_out(door):
    door.studio.cones(1, number=114)
    door.bench.look_again(frozenset({"cone"}))
    door.quiet()
    door.begin()
    door.weigh(1462, centre="64", batch="A-203", number="114")
    assert door.form.number.wrong.text() == (
        "C·0114·F is another cone in the book. Read its card again, or leave this empty for the "
        "next free number.")
    assert (door.form.gross.line.text(), door.rows) == ("1462", [])
    door.write(number="")
    door.press("Enter")
    door.weigh(1480, number="120")
    door.weigh(1490, number="C-120")
    assert door.form.number.wrong.text().startswith("C·0120·M stands in this delivery already.")


def test_a_number_taken_at_another_station_meanwhile_loses_nothing(door):
    door.begin()
    door.weigh(1462, centre="64", batch="A-203", number="114")
    door.studio.cones(1, number=114)
    door.press("F10")
    assert door.trouble == ("C·0114·F is another cone; nothing was taken in. "
                            "Take the next free number: leave the field empty.")
    assert len(door.rows) == 1
    door.press("F7")
    door.write(number="")
    door.press("Enter", "F10")
    assert [code for code, _, _ in door.in_book] == [cone_card(114), cone_card(115)]


def test_a_card_that_is_scanned_gives_its_number(door):
    door.begin()
    door.write(gross="1462", centre="64", batch="A-203")
    door.scan(cone_card(114))
    assert door.form.gross.line.text() == "1462"
    door.press("Enter", "F10")
    assert door.in_book[0][0] == cone_card(114)


def test_a_cone_card_that_is_scanned_before_a_delivery_is_not_for_the_door(door):
    door.studio.cones(1)
    door.scan(cone_card(1))
    assert "this bench has no use for it" in door.trouble


def test_no_batch_is_a_question_and_not_stated_an_answer(door):
    door.begin()
    door.weigh(1462, centre="64")
    assert door.form.batch.wrong.text() == (
        "Write the spinner's batch, or say that it is not stated: F4.")
    door.press("F4", "Enter")
    assert door.rows[0][1] == "not stated"
    door.press("F10")
    assert door.in_book == [(cone_card(1), 1_398, None)]


@pytest.mark.parametrize(("field", "text", "sentence"), [
    ("gross", "", "Weigh it with its centre."),
    ("gross", "12x", "“12x”: “x” is no unit for the weight of a cone with its centre."),
    ("gross", "14", "“14”: 14 g cannot be the weight of a cone with its centre."),
    ("centre", "", "Weigh three empty centres."),
    ("centre", "=64", "“=64”: it is no number."),
    ("centre", "950", None),
    ("number", "x1y", "“x1y” is no cone's number. Write it as on its card, like 114."),
    ("wrap", "9 kg", "“9 kg”: 9,000 g cannot be the weight of 100 m."),
    ("moisture", "99", "“99”: 99 % cannot be the moisture of yarn."),
])
def test_what_cannot_be_is_said_beside_its_field(door, field, text, sentence):
    door.begin()
    door.write(**{"gross": "900", "centre": "64", "batch": "A-203", field: text})
    door.press("Enter")
    wrong = getattr(door.form, field).wrong
    if sentence is None:
        sentence = "The empty centre cannot weigh as much as the whole cone."
    assert wrong.isVisible()
    assert wrong.text() == sentence
    assert getattr(door.form, field).line.text() == text
    assert door.rows == []


def test_done_takes_what_is_on_the_scales_too(door):
    door.begin()
    door.weigh(1462, centre="64", batch="A-203")
    door.write(gross="1480")
    door.scan(DONE)
    assert [net for _, net, _ in door.in_book] == [1_398, 1_416]


def test_done_with_nothing_weighed_says_so(door):
    door.begin()
    door.scan(DONE)
    assert door.form.gross.wrong.text() == "No cone is weighed yet."
    assert door.in_book == []


def test_done_said_twice_is_one_delivery(door):
    door.begin()
    door.weigh(1462, centre="64", batch="A-203")
    before = door.deeds
    hand = door.cards.weighing.hand
    door.bench._take_in()
    door.bench._take_in()
    door.quiet()
    assert (len(door.in_book), door.deeds) == (1, before + 1)
    assert hand.cones


def test_a_cone_comes_back_on_the_scales_to_be_put_right(door):
    door.begin()
    for gross in (1462, 1740, 1480):
        door.weigh(gross, centre="64", batch="A-203")
    door.cards.weighing.reopen(1)
    assert door.form.gross.line.text() == "1740"
    assert door.cards.weighing.asks.text() == "Cone 2 holds 1,676 g net."
    assert [row[0] for row in door.rows] == ["3", "1"]
    door.weigh(1470)
    assert [row[2] for row in door.rows] == ["1,480 g", "1,470 g", "1,462 g"]
    door.press("F7", "F7")
    assert [row[2] for row in door.rows] == ["1,470 g", "1,462 g"]


def test_a_delivery_that_is_left_can_be_taken_up_again(door):
    door.begin()
    door.weigh(1462, centre="64", batch="A-203")
    door.write(gross="1480")
    door.press("F8")
    assert door.cards.start.again.accessibleName() == "Go on with 2 cones of Tarnfield 4-ply"
    assert door.in_book == []
    door.press("F7")
    assert [row[2] for row in door.rows] == ["1,480 g", "1,462 g"]
    door.weigh(1490, centre="64", batch="A-203")
    door.press("F10")
    assert len(door.in_book) == 3


def test_taking_back_brings_the_weighed_cones_back_in_hand(door):
    door.begin()
    door.weigh(1462, centre="64", batch="A-203")
    door.press("F10")
    door.scan(UNDO)
    assert door.said.startswith("taken back: took in 1 cone")
    assert door.in_book == []
    assert [row[2] for row in door.rows] == ["1,462 g"]
    door.press("F10")
    assert [net for _, net, _ in door.in_book] == [1_398]
    door.studio.check()


def test_the_same_note_again_is_said_before_anything_is_weighed(door):
    door.studio.cones(3)
    door.begin(note="2241")
    assert door.cards.weighing.before.text()== (
        "Note 2241 of Aske Mill came in on 6 Apr 2026 with 3 cones of it. What is weighed now "
        "comes on top.")


def test_opening_stock_is_a_part_cone_without_a_warning(door):
    door.press("F4")
    door.begin(note="", supplier="")
    door.weigh(382, centre="64", batch="not stated")
    assert door.cards.weighing.told.text() == "supplier not stated, opening stock"
    assert door.cards.weighing.off.isHidden()
    door.press("F10")
    assert door.found == []
    facts = door.studio.book.ask(cone_facts, 1)
    assert (facts.opening_stock, facts.net_mg, facts.supplier) == (True, 318_000, "not stated")
    assert door.cards.side.last.entries[0][1] == "6 Apr, not stated, opening stock"


def test_a_part_of_its_name_is_enough_for_a_base(door):
    door.begin(base="tarn")
    assert door.cards.weighing.hand.heading.base.name == "Tarnfield 4-ply"


def test_a_base_nobody_described_is_said_with_those_that_are(door):
    door.begin(base="Gossamer")
    assert door.cards.start.base.wrong.text() == (
        "No base is called “Gossamer”. Choose one of: Tarnfield 4-ply; or describe a new one.")
    door.press("F6")
    assert door.cards.base.name.line.text() == "Gossamer"
    door.press("F8")
    assert door.cards.start.supplier.line.text() == "Aske Mill"


def test_a_note_without_its_number_is_asked_for(door):
    door.begin(note="")
    assert door.cards.start.note_no.wrong.text() == "Write the number that stands on the note."


def test_a_figure_begins_the_next_weight_wherever_one_is(door):
    door.begin()
    door.bench.setFocus()
    door.type("1462")
    assert door.form.gross.line.text() == "1462"


def test_what_is_on_hand_and_came_in_last_stands_at_the_side(door):
    cones = door.studio.cones(3)
    door.studio.wind(cones[0], 4)
    door.bench.look_again(frozenset({"cone"}))
    door.quiet()
    assert door.cards.side.on_hand.entries == [
        ("Tarnfield 4-ply", "3 cones, 1 begun: 35 skeins")]
    assert door.cards.side.last.entries == [
        ("3 cones of Tarnfield 4-ply", "6 Apr, Aske Mill, note 2241")]


def test_suppliers_and_batches_are_offered_by_a_tap(door):
    door.studio.cones(1)
    door.bench.look_again(frozenset({"cone"}))
    door.quiet()
    start = door.cards.start
    door.click(start.supplier.keys[0])
    start.note_no.line.setText("2242")
    door.click(start.base.keys[0])
    door.press("Enter")
    assert [key.accessibleName() for key in door.form.batch.keys] == ["A-203"]
    door.click(door.form.batch.keys[0])
    door.weigh(1462, centre="64")
    assert door.rows[0][1] == "A-203"


def test_a_supplier_is_kept_as_it_is_written_elsewhere(door):
    cone = ConeIn(1_462_000, 64_000, "B-1")
    door.studio.do(receive, DeliveryIn("Withybank", "9", "Tarnfield 4-ply",
                                       door.studio.clock.now, (cone,)))
    door.quiet()
    assert "Withybank" in [key.accessibleName() for key in door.cards.start.supplier.keys]
