"""The inspecting bench as the lead dyer works at it: scan, read, look, decide."""

import pytest
from PySide6.QtWidgets import QScrollArea

from app.calculations.codes import shown
from app.calculations.shade import Colour
from app.lookups.lot_shade import lot_shade, verdict_of
from app.work.dyeing import lift
from app.work.inspecting import ShadeIn, read_shades
from tests.calculations.shades import SHOP, TEAL
from tests.lookups.cards import read_lot, read_standard
from tests.window.benches.at_work import HOLD, SECONDS, disc, plate
from tests.window.benches.inspecting_hands import open_inspecting
from tests.window.overlaps import overlaps

GLOVE = (48.3, -36.6, 3.3)


@pytest.fixture
def at(qtbot, settings, studio):
    """Two lots out of the pot, the second on disc 32; the standard is read."""
    read_standard(studio, GLOVE)
    studio.lots = [studio.dye(studio.wind(studio.cone(), 2, disc=studio.discs[n]))
                   for n in range(2)]
    for bath in (1, 2):
        studio.do(lift, bath)
    studio.codes = [studio.code(lot) for lot in studio.lots]
    read_lot(studio, studio.lots[0], TEAL["Q"].lab)
    yield from open_inspecting(qtbot, settings, studio.book, studio)


def looked(at, lot=1):
    return at.studio.book.ask(lot_shade, at.studio.lots[lot])


def test_a_reading_is_typed_and_told_with_the_keyboard_alone(at):
    at.ask(at.studio.codes[1])
    assert at.number == ("– not held against the standard: Not held against the standard. Its card "
                         "was not read: type a reading, or hold it against the grey scale.")
    at.read("48,9", "-35.9", "4.4")
    assert at.number == ("1.0 ± 0.5 from the standard: Alternate two rows for 6–8 cm.")
    assert f"0.5 ± 0.5 from the last lot, {shown(at.studio.codes[0])}: looks the same" in at.words()
    assert [one.name for one in at.card.beside.shown] == [
        "the standard", shown(at.studio.codes[1]), f"last: {shown(at.studio.codes[0])}"]
    at.press("F1")
    assert looked(at).verdict.verdict == "standard"
    assert at.card.verdicts[0].isChecked()
    assert "Decided: standard (OW, " in at.words()


def test_the_step_of_the_grey_scale_is_reckoned_in_daylight_and_not_under_the_shop_s_lamp(at):
    """The pair whose step is 3.846, so 4, in the worked values of ISO 105-A05."""
    for looked_at in (SHOP, TEAL["P"].viewing):
        read_standard(at.studio, (60, 40, 20), at=looked_at)
    at.studio.do(read_shades, [ShadeIn(Colour(61, 38, 21, SHOP, 4), at.studio.lots[1])])
    at.scan(at.studio.codes[1])
    assert "From the standard: CIEDE2000 " in at.words()
    assert "ISO 105-A05" not in at.words()
    at.read("61", "38", "21")
    assert "; 4 on the grey scale for change, by the formula of ISO 105-A05." in at.words()


def test_a_wet_card_is_kept_and_not_held_against_a_dry_one(at):
    at.scan(at.studio.codes[1])
    at.read("41.0", "-33", "3.0", "F3")
    assert at.number.startswith("– not held against the standard")
    assert "One was read wet and one dry; wet yarn is 5 to 10 L* darker" in at.words()
    assert looked(at).cards[0].colour.viewing.wet
    assert looked(at).from_standard is None


def test_what_cannot_be_read_says_so_in_its_field_and_keeps_what_was_typed(at):
    at.scan(at.studio.codes[1])
    at.read("148", "-33", "green")
    card = at.card.question
    assert card.l_star.wrong.text() == "It must be between 0 and 100."
    assert card.b_star.wrong.text() == "“green” is no number."
    assert card.a_star.line.text() == "-33"
    assert looked(at).cards == ()
    at.press("F8")
    assert at.question == ""


def test_by_eye_and_a_verdict_with_the_scanner_alone(at):
    at.scan(disc(32), plate(7))
    assert at.question == "Which step of the grey scale?"
    at.scan(plate(2))
    assert at.number == "4-5 by eye, against the standard: Not measured."
    at.scan(SECONDS)
    assert at.question == "Why seconds?"
    at.scan(plate(3))
    assert (looked(at).verdict.verdict, looked(at).verdict.why) == ("seconds", "stained")
    at.scan(plate(2))
    assert looked(at).verdict.verdict == "sister group"
    at.scan(HOLD, plate(4))
    assert at.studio.book.ask(verdict_of, at.studio.lots[1]).verdict == "hold"
    assert at.said.startswith(f"{shown(at.studio.codes[1])}: hold, off shade")


def test_a_one_off_has_a_name_and_the_eye_may_take_the_last_lot(at):
    at.scan(disc(32))
    at.press("Alt+E", "Alt+L", "F4")
    (eye,) = looked(at).by_eye
    assert (str(eye.step), eye.against) == ("4", shown(at.studio.codes[0]))
    at.press("F4", "Enter")
    assert at.card.question.field.wrong.text().startswith("Its name is missing")
    at.type("Harbour Fog")
    at.press("Enter")
    assert (looked(at).verdict.verdict, looked(at).verdict.name) == ("one-off", "Harbour Fog")


def test_small_steps_that_add_up_are_told_as_drift(at):
    for name in "RST":
        lot = at.studio.dye(at.studio.wind(at.studio.cone(), 1))
        read_lot(at.studio, lot, TEAL[name].lab)
    at.scan(at.studio.code(lot))
    assert at.number.startswith("2.4 ± 0.5 from the standard: Alternate throughout; as the "
                                "readings may err, only as a second colour")
    assert "It drifts: only 0.7 ± 0.5 from the last lot" in at.card.findings.text()


def test_a_lot_that_matches_by_day_and_not_under_the_shop_s_lamp_is_named(at):
    read_standard(at.studio, GLOVE, at=SHOP)
    at.studio.do(read_shades, [
        ShadeIn(Colour(*GLOVE, TEAL["P"].viewing, 4), at.studio.lots[1]),
        ShadeIn(Colour(49.9, -35.1, 5.7, SHOP, 4), at.studio.lots[1])])
    at.scan(at.studio.codes[1])
    assert "It differs by lamp" in at.card.findings.text()
    assert "From the standard under each lamp: A 2.3 ± 0.5, D65 0.0 ± 0.5." in at.words()


def test_without_an_instrument_a_swatch_is_chosen_and_said_to_be_by_eye(at):
    at.scan(at.studio.codes[1])
    at.press("Alt+S", "Right", "Enter")
    assert looked(at).swatch is not None
    assert at.card.beside.shown[1].words == ("in hand", "chosen by eye")
    assert at.number.startswith("–")


def test_a_file_of_readings_is_looked_at_and_taken_in(at, tmp_path):
    path = tmp_path / "readings.csv"
    path.write_text("lot,L*,a*,b*,observer\n" + "".join(
        f"{at.studio.codes[1]},{49.0 + n / 10},-35.9,4.4,2\n" for n in range(4))
        + "2699XXX,50,0,0,2\n")
    at.scan(at.studio.codes[1])
    assert at.bench.take_file(path)
    at.quiet()
    assert at.bench.list.take_in.accessibleName() == "Look again"
    at.bench.list.columns.fields["lamp"].setText("D65")
    at.press("Enter")
    assert "no lot of the book has this code" in "\n".join(at.bench.list.troubles.lines)
    assert not at.bench.list.take_in.isEnabled()
    at.press("F7")
    assert looked(at).cards[0].colour.readings == 4
    assert at.number.startswith("1.1 ± 0.5 from the standard")


def test_the_empty_bench_says_what_to_do_and_which_lots_wait(at):
    waiting = [row.accessibleName() for row in at.bench.nothing.rows]
    assert [name[:9] for name in waiting] == [shown(code) for code in at.studio.codes]
    at.click(at.bench.nothing.rows[1])
    assert at.card.code.accessibleName() == shown(at.studio.codes[1])
    at.press("F1", "F8")
    assert len(at.bench.nothing.rows) == 1
    at.scan(disc(35))
    assert at.trouble.startswith("Disc D·035·")
    at.scan(plate(1))
    assert at.trouble.startswith("COUNT 1 means nothing here")
    assert looked(at, 0).verdict is None


def test_the_pictures_open_from_the_lot_and_a_lot_from_the_pictures(at):
    read_lot(at.studio, at.studio.lots[1], TEAL["R"].lab)
    at.scan(at.studio.codes[1])
    at.press("F10")
    assert "2 lots in 1 group of which every two are within 0.8." in at.page.said.text()
    at.scan(plate(1))
    assert "0.6 ± 0.5 apart" in at.page.pair_words.text()
    at.press("O")
    assert at.card.code.accessibleName() == shown(at.studio.codes[0])


def test_nothing_lies_on_anything_else_in_any_question_in_large_text(at, dressed):
    dressed(2.0)
    at.scan(at.studio.codes[0])
    for key in ("F7", "Alt+E", "F5", "Alt+S"):
        at.press(key)
        assert overlaps(at.bench) == [], key
        at.press("F8")


def test_a_standard_that_was_not_read_is_read_here_too(at):
    from app.work.dyeing import name_colourway

    recipe = at.studio.do(name_colourway, "Ferry Ledger", "#2B2F55")
    at.studio.recipe = recipe
    lot = at.studio.dye(at.studio.wind(at.studio.cone(), 1))
    at.scan(at.studio.code(lot))
    at.read("25.8", "7.7", "-20.0")
    assert at.number.endswith("The standard of this colourway and base was not read: read its "
                              "card too.")
    at.read("25,1", "8", "-20,5", "F4")
    assert at.number.startswith("0.6 ± 0.5 from the standard: Looks the same")


def test_a_key_pressed_twice_asks_and_answers_nothing(at):
    at.scan(at.studio.codes[1])
    before = looked(at).verdict
    for key in ("F4", "F5", "F6", "F7", "Alt+E"):
        at.press(key, key)
        assert at.question
        at.press("F8")
    assert (looked(at).verdict, looked(at).by_eye) == (before, ())


def test_in_large_text_the_verdicts_are_in_sight_at_once(at, dressed):
    dressed(2.0)
    at.scan(at.studio.codes[0])
    port = next(one for one in at.bench.window().findChildren(QScrollArea)
                if one.isAncestorOf(at.bench)).viewport()
    for key in at.card.verdicts:
        bottom = key.mapTo(port, key.rect().bottomLeft()).y()
        assert bottom < port.height(), key.accessibleName()
