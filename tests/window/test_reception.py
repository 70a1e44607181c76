import pytest

from app.calculations.codes import Kind, numbered
from app.problems import NotFound
from app.window.parts.action_plates import UNDO
from tests.window.conftest import quiet
from tests.window.example_benches import LotBench, ReelBench, put_by

LOT, CONE = "2615R6F", numbered(Kind.CONE, 114).text


@pytest.fixture
def at_the_counter(qtbot, shell):
    shell.floor.open_place(shell.floor.places[1])
    quiet(qtbot, shell)
    return shell


def test_a_bench_is_entered_by_scanning_its_plate(shell):
    assert isinstance(shell.floor.bench(), ReelBench)
    shell.head.scan_line.scanned.emit(shell.floor.places[1].plate)
    assert isinstance(shell.floor.bench(), LotBench)


def test_a_code_goes_to_the_bench_that_is_open(qtbot, at_the_counter):
    at_the_counter.head.scan_line.scanned.emit("26·06·h3w")
    assert at_the_counter.floor.bench().lot == "2606H3W"
    assert not at_the_counter.floor.problem.isVisible()


def test_undo_is_one_plate(qtbot, at_the_counter, fake_book):
    at_the_counter.floor.bench().do(put_by, LOT)
    qtbot.waitUntil(lambda: at_the_counter.foot.undo.isVisible())
    at_the_counter.head.scan_line.scanned.emit(UNDO)
    qtbot.waitUntil(lambda: fake_book.undone == [1])


def test_what_a_bench_has_no_use_for_opens_nothing_by_itself(shell):
    shell.head.scan_line.scanned.emit(LOT)
    assert isinstance(shell.floor.bench(), ReelBench)
    assert "is a dye lot, and this bench has no use for it" in shell.floor.problem.accessibleName()
    shell.floor.problem._way.click()
    assert isinstance(shell.floor.bench(), LotBench)
    assert shell.floor.bench().lot == LOT


def test_an_action_plate_that_does_nothing_here_is_no_thing_to_be_shown(shell):
    shell.head.scan_line.scanned.emit(numbered(Kind.ACTION, 4).text)
    assert shell.floor.problem.accessibleName().startswith(
        "HOLD does nothing here; nothing was saved.")
    assert not shell.floor.problem._way.isVisible()
    assert isinstance(shell.floor.bench(), ReelBench)
    shell.head.scan_line.scanned.emit(numbered(Kind.ACTION, 13).text)
    assert shell.floor.problem.accessibleName().startswith("COUNT 3 does nothing here")


@pytest.mark.parametrize(
    ("scan", "sentence"),
    [
        ("2615R6X", "check character"),
        ("4006381333931", "shop's bar code"),
        ("https://example.invalid", "not one of the studio's codes"),
    ],
)
def test_a_scan_that_is_no_code_is_told_and_never_guessed(qtbot, shell, scan, sentence):
    shell.head.scan_line.scanned.emit(scan)
    quiet(qtbot, shell)
    assert sentence in shell.floor.problem.accessibleName()


def test_a_bounce_is_told_softly_and_taken_once(at_the_counter):
    at_the_counter.head.scan_line.scanned_again.emit(LOT)
    assert at_the_counter.foot.note.text() == "2615R6F was scanned twice and taken once"
    assert not at_the_counter.floor.problem.isVisible()


def test_a_typed_code_is_a_code_and_typed_words_are_sought(shell):
    shell.head.scan_line.asked.emit("26·15·R6F")
    assert "is a dye lot" in shell.floor.problem.accessibleName()
    shell.head.scan_line.asked.emit("Ferry Ledger")
    assert isinstance(shell.floor.bench(), LotBench)
    assert "“Ferry Ledger” was not found." in shell.floor.problem.accessibleName()


def test_lists_and_pictures_go_to_whoever_takes_them(shell, monkeypatch):
    taken = []
    monkeypatch.setattr(LotBench, "take_list", lambda self, codes: taken.append(codes) or True)
    monkeypatch.setattr(LotBench, "take_picture", lambda self, photo: taken.append(photo) or True)
    shell.head.scan_line.pasted.emit([LOT, "2619K44"])
    shell.head.scan_line.pictured.emit(b"photo")
    assert taken == [[LOT, "2619K44"], b"photo"]
    assert not shell.floor.problem.isVisible()


def test_a_garble_is_told(shell):
    shell.head.scan_line.garbled.emit("Two scanners typed at once.")
    assert shell.floor.problem.accessibleName() == "Two scanners typed at once."


def test_a_station_of_the_trail_opens_what_it_is(at_the_counter):
    bench = at_the_counter.floor.bench()
    bench.lot = ""
    at_the_counter.floor.trail.followed.emit(LOT)
    assert bench.lot == LOT
    at_the_counter.floor.trail.followed.emit(CONE)
    assert "was not found" in at_the_counter.floor.problem.accessibleName()


def test_what_was_said_of_a_scan_is_out_of_the_way_at_the_next(at_the_counter):
    at_the_counter.floor.trouble(NotFound("Disc 040 hangs on nothing."))
    at_the_counter.reception.scanned("2615R6F")
    assert not at_the_counter.floor.problem.isVisible()


def test_a_dropped_file_is_for_the_bench_that_is_open(qtbot, shell, monkeypatch, tmp_path):
    orders, more = tmp_path / "orders.csv", tmp_path / "more.csv"
    shell.head.scan_line.filed.emit([orders])
    assert isinstance(shell.floor.bench(), ReelBench)
    assert "no use for orders.csv; nothing was read" in shell.floor.problem.accessibleName()
    taken = []
    monkeypatch.setattr(shell.floor.bench(), "take_file", lambda path: taken.append(path) or True)
    shell.floor.put_away()
    shell.head.scan_line.filed.emit([orders, more])
    assert taken == [orders]
    assert shell.foot.note.text() == "one file at a time: orders.csv was opened"
    assert not shell.floor.problem.isVisible()


def test_a_scan_that_is_no_code_of_ours_is_first_for_the_bench_that_is_open(shell, monkeypatch):
    taken = []
    monkeypatch.setattr(shell.floor.bench(), "take_other", lambda text: taken.append(text) or True)
    shell.reception.scanned("#1042")
    assert taken == ["#1042"]
    shell.reception.scanned("C0114F")
    assert taken == ["#1042"]


def test_a_note_is_about_the_scan_before_and_goes_with_the_next(shell):
    shell.foot.show_note("26·15·R6F is a dye lot")
    shell.head.scan_line.scanned.emit(LOT)
    assert shell.foot.note.text() == ""
    shell.foot.show_note("26·15·R6F is a dye lot")
    shell.floor.open_place(shell.floor.places[1])
    assert shell.foot.note.text() == ""
