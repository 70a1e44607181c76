"""The batch record set out: parts in the order of the work, answers, who did what."""

from app.calculations.codes import Kind
from app.documents.batch_record import Said, journal_code
from app.documents.proof import read_back
from app.exchange.batch_records import answers, batch_paper, batch_pdf, done_by
from app.exchange.batch_words import bath
from app.exchange.bath_cards import at_the_pot, card_pdf
from app.exchange.weigh_sheets import to_weigh, weigh_pdf, weigh_sheet
from app.lookups.batch_record import BatchRecord, batch_record
from app.lookups.recipes import recipe_then
from app.work.bundling import make_plates
from app.work.dyeing import BathIn, into_bath, name_colourway
from app.work.opening_stock import OldLot, open_lot
from app.work.painting import into_steamer, lay_on_board
from app.work.recipes import ComponentIn, RecipeIn, ZoneIn, write_recipe
from app.work.stocks import fill_bottles
from app.work.weigh_lines import LineIn, begin_line, take_weight
from app.work.weighing import WeighingIn, begin_weighing
from tests.documents.samples import text_of
from tests.full_lot import FullLot
from tests.makers import EACH_MG, Studio


def record_of(studio: Studio, lot: int) -> BatchRecord:
    return studio.book.ask(batch_record, lot, studio.clock.now)


def test_the_parts_follow_the_work_and_the_shade_has_its_card(studio: Studio) -> None:
    paper = batch_paper(record_of(studio, FullLot(studio).lot), "OW")
    assert [part.title for part in paper.parts] == [
        "Yarn in", "Recipe as it was", "Weighed", "Bath", "Washed, dried", "Yield",
        "Count by tie", "Shade", "Tags", "Holds", "Where now", "Marked"]
    assert [part.title for part in paper.parts if part.card] == ["Shade"]


def test_the_answers_come_first_and_off_the_recipe_is_said(studio: Studio) -> None:
    said = dict(answers(record_of(studio, FullLot(studio).lot)))
    assert said["Made"] == "12 in the bath, 11 tagged."
    assert said["Recipe"] == "OFF RECIPE: dye was added at the pot."
    assert said["Open"] == "No hold stands."


def test_who_did_it_stands_where_it_is_signed(studio: Studio) -> None:
    assert done_by(record_of(studio, FullLot(studio).lot)) == ("DA", "DA, WS", "WS", "TW", "LP")


def test_the_paper_wears_its_lot_and_the_journals_head_and_names_no_buyer(studio: Studio) -> None:
    full = FullLot(studio)
    one = record_of(studio, full.lot)
    pdf = batch_pdf(one, "OW")
    pages = read_back(pdf, 203)
    assert {code.code for page in pages for code in page} == {
        full.code, journal_code(one.entry, one.journal_head)}
    words = " ".join(text_of(pdf))
    assert "customer 1" in words
    assert "Treddle" not in words
    assert batch_pdf(one, "OW") == pdf


def test_an_old_lot_has_its_record_that_says_what_is_not_known(studio: Studio) -> None:
    studio.do(open_lot, OldLot("OLD77", studio.version, 1, 4), EACH_MG)
    one = record_of(studio, 1)
    paper = batch_paper(one, "OW")
    assert paper.head.code == ""
    assert paper.parts[1].blocks == (Said("Not known: the lot is older than the book."),)
    assert dict(paper.answers)["Recipe"] == "not known."
    assert batch_pdf(one, "OW").startswith(b"%PDF")


def test_thirty_dyes_and_forty_cords_of_a_long_name_are_all_on_the_papers(studio: Studio) -> None:
    named = "The Lamp Room Receipt That Nobody Could Read After The Flood Of Spring"
    studio.do(name_colourway, named)
    dyes = tuple(ComponentIn(f"Dye {n} of a maker with a very long name indeed", "owf", 1_000)
                 for n in range(30))
    recipe = studio.do(write_recipe, RecipeIn(2, dyes, liquor_tenths=200))
    cones = studio.cones(4)
    rows = [studio.wind(cones[n // 10], 1, f"tie {n}") for n in range(40)]
    weighing = studio.do(begin_weighing, WeighingIn("bath", recipe, tuple(rows)))
    for number in range(30):
        component = studio.book.ask(recipe_then, recipe).components[number].id
        line = studio.do(begin_line, LineIn(weighing, component=component, target_mg=4_125))
        studio.do(take_weight, line, 4_130)
    bathed = studio.do(into_bath, BathIn(tuple(rows), recipe, studio.pot, weighing), studio.random)
    record = " ".join(text_of(batch_pdf(record_of(studio, bathed["lots"][0]), "OW")))
    at = studio.clock.now
    sheet = " ".join(text_of(weigh_pdf(studio.book.ask(
        lambda c: to_weigh(c, at, weighing=weighing)), "OW")))
    card = " ".join(text_of(card_pdf(studio.book.ask(at_the_pot, bathed["bath"], at), "OW")))
    for paper in (record, sheet):
        assert all(f"Dye {n} of" in paper for n in range(30))
    assert all(f"tie {n} ties" in record for n in range(40))
    assert card.count("no disc") == 40


def test_a_painted_lot_has_its_record_and_its_bottles_a_weigh_sheet(studio: Studio) -> None:
    (board,) = studio.do(make_plates, Kind.BOARD, [3])
    version = studio.do(write_recipe, RecipeIn(
        1, (ComponentIn("blue", "bottle", 10_000, zone="A"),), look="zones",
        zones=(ZoneIn("A", 1000, 60),)))
    bottles = studio.do(fill_bottles, version)
    studio.do(lay_on_board, board, [studio.wind(studio.cone(), 2)], bottles)
    done = studio.do(into_steamer, [board], None, studio.random)
    record = record_of(studio, done["lots"][0])
    words = [one.words for one in bath(record.bath) if isinstance(one, Said)]
    assert words[:2] == ["Steamed, volume not written. The code was given here.",
                         "Board 3, painted from bottle set 1."]
    sheet = weigh_sheet(studio.book.ask(lambda c: to_weigh(
        c, studio.clock.now, version=version, dry_mg=200_000)), "OW")
    assert (sheet.rows[0].what, sheet.rows[0].wanted) == ("blue, bottle A", "1.32")
    assert batch_pdf(record, "OW").startswith(b"%PDF")
