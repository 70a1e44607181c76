"""The printers of this computer, kept in its own file."""

import pytest
from PySide6.QtCore import QSettings

from app.documents import stocks
from app.problems import BadInput
from app.window import printer_settings
from app.window.printer_settings import PrinterSettings

LASER, SMALL = "laser in the office", "small-63x38"


def at(path):
    return PrinterSettings(QSettings(str(path), QSettings.Format.IniFormat))


def test_printers_and_their_two_numbers_are_kept_for_each_stock(qapp, tmp_path):
    kept = at(tmp_path / "computer.ini")
    assert (kept.names, kept.printer_for(SMALL), kept.correction("", SMALL)) == ((), "", (0, 0))
    kept.name(LASER)
    kept.name(LASER)
    kept.choose(SMALL, LASER)
    kept.correct(LASER, SMALL, (-2.1, -1.4))
    kept.correct("", SMALL, (0.5, 0))
    again = at(tmp_path / "computer.ini")
    assert (again.names, again.printer_for(SMALL)) == ((LASER,), LASER)
    assert again.correction(LASER, SMALL) == (-2.1, -1.4)
    assert again.correction("", SMALL) == (0.5, 0)
    assert again.correction(LASER, "roll-62x40") == (0, 0)


def test_a_printer_that_is_gone_prints_nothing_and_comes_back_as_it_was(qapp, tmp_path):
    kept = at(tmp_path / "computer.ini")
    kept.name(LASER)
    kept.choose(SMALL, LASER)
    kept.correct(LASER, SMALL, (1, 1))
    kept.forget(LASER)
    assert kept.printer_for(SMALL) == ""
    kept.name(LASER)
    assert (kept.printer_for(SMALL), kept.correction(LASER, SMALL)) == (LASER, (1, 1))


def test_no_printer_is_off_by_more_than_the_limit(qapp, tmp_path):
    kept = at(tmp_path / "computer.ini")
    with pytest.raises(BadInput, match="more than 5 mm"):
        kept.correct("", SMALL, (0, 5.1))
    assert kept.correction("", SMALL) == (0, 0)


def test_the_screen_is_put_right_but_not_by_nonsense(qapp, tmp_path):
    kept = at(tmp_path / "computer.ini")
    assert kept.screen == 1
    kept.screen = 50 / 48
    assert at(tmp_path / "computer.ini").screen == pytest.approx(50 / 48, abs=1e-4)
    with pytest.raises(BadInput):
        kept.screen = 9


def test_nonsense_in_the_file_is_no_printer_and_no_correction(qapp, tmp_path):
    file = QSettings(str(tmp_path / "computer.ini"), QSettings.Format.IniFormat)
    for nonsense in ("{", "3", '{"": 4}', '{"": {"small-63x38": "x"}}',
                     '{"": {"small-63x38": [99, 0]}}', '{"": {"small-63x38": [1]}}'):
        for key in ("printers", "printer for", "corrections"):
            file.setValue(key, nonsense)
        file.setValue("screen", "wide")
        kept = PrinterSettings(file)
        assert (kept.printer_for(SMALL), kept.correction("", SMALL), kept.screen) == (
            "", (0, 0), 1)


def test_the_limit_is_that_of_the_stocks():
    assert printer_settings.LARGEST_CORRECTION_MM == stocks.LARGEST_CORRECTION_MM
