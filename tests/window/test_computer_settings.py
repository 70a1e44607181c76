import inspect
from pathlib import Path

from PySide6.QtCore import QByteArray

from app.window.computer_settings import OPTIONS, ComputerSettings


def test_every_option_has_a_help_text_and_every_help_text_an_option():
    options = {name for name, kind in inspect.getmembers(ComputerSettings)
               if isinstance(kind, property)}  # fmt: skip
    assert options == set(OPTIONS)
    assert all(words.endswith(".") for words in OPTIONS.values())


def test_a_new_computer_has_its_defaults(tmp_path):
    fresh = ComputerSettings(tmp_path / "new.ini")
    assert (fresh.text, fresh.evening, fresh.station, fresh.person) == (1.0, False, "desk", "")
    assert (fresh.scanners, fresh.book, fresh.window) == ({}, None, QByteArray())


def test_what_was_set_is_there_at_the_next_start(tmp_path):
    path = tmp_path / "computer.ini"
    first = ComputerSettings(path)
    first.text, first.evening, first.station, first.person = 1.5, True, "pots", "DA"
    first.scanners = {"~": "pots", "%": "wash"}
    first.book, first.window = Path("/books/studio.book"), QByteArray(b"\x01\x02")
    first.store()
    again = ComputerSettings(path)
    assert (again.text, again.evening, again.station, again.person) == (1.5, True, "pots", "DA")
    assert again.scanners == {"~": "pots", "%": "wash"}
    assert (again.book, again.window) == (Path("/books/studio.book"), QByteArray(b"\x01\x02"))


def test_a_file_spoiled_by_hand_does_no_harm(tmp_path):
    path = tmp_path / "computer.ini"
    path.write_text("[General]\ntext=huge\nscanners=[1\nevening=maybe\n")
    spoiled = ComputerSettings(path)
    assert (spoiled.text, spoiled.scanners, spoiled.evening) == (1.0, {}, False)
    path.write_text("[General]\ntext=9\n")
    assert ComputerSettings(path).text == 2.0
