import subprocess
import sys
import threading

import pytest
from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QFontMetricsF
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QLabel, QLineEdit

from app.problems import BookUnusable
from app.window.first_start import FirstStart
from app.window.look.look import TARGET
from app.window.main_window import MainWindow
from app.window.parts.words import CodeWords, OneLine
from tests.window.conftest import quiet
from tests.window.example_benches import LotBench, ReelBench
from tests.window.fakes import FakeBook, a_place, a_session
from tests.window.hands import scan

PLACES = (a_place(LotBench),)


def strike(window, key, modifier=Qt.KeyboardModifier.NoModifier):
    QTest.keyClick(window.windowHandle(), key, modifier)


@pytest.fixture
def opened(qtbot, settings):
    """A way to open windows that are closed in the end."""
    windows = []

    def open_window(open_book):
        window = MainWindow(settings, PLACES, open_book)
        qtbot.addWidget(window)
        windows.append(window)
        window.show()
        return window

    yield open_window
    for window in windows:
        window.close()


def test_the_window_is_there_before_the_book(qtbot, opened):
    gate = threading.Event()

    def open_book():
        gate.wait()
        return a_session()

    window = opened(open_book)
    words = lambda: [label.text() for label in window.floor.findChildren(QLabel)]  # noqa: E731
    qtbot.waitUntil(lambda: "opening the book …" in words())
    assert window.floor.bench() is None
    gate.set()
    qtbot.waitUntil(lambda: isinstance(window.floor.bench(), LotBench))
    quiet(qtbot, window)
    assert window.foot.copy.text() == "copy checked 09:58 today"


def test_nothing_heavy_is_brought_in_before_the_first_paint(tmp_path):
    """In a process of its own, because other tests have brought everything in already."""
    program = """
import sys
from pathlib import Path
from PySide6.QtWidgets import QApplication
app = QApplication([])
from app.window.computer_settings import ComputerSettings
from app.window.main_window import MainWindow
from app.window.places import PLACES
heavy = ('sqlalchemy', 'alembic', 'reportlab', 'openpyxl', 'PIL', 'qrcode')
def opening():
    print(sorted(set(heavy) & set(sys.modules)))
    QApplication.exit()
    raise SystemExit
window = MainWindow(ComputerSettings(Path(sys.argv[1])), PLACES, opening)
window.open_the_book = opening
window.show()
app.exec()
"""
    done = subprocess.run(
        [sys.executable, "-c", program, str(tmp_path / "computer.ini")],
        capture_output=True, text=True, check=False, timeout=60,
    )  # fmt: skip
    assert done.stdout.strip() == "[]", done.stderr


def test_a_book_that_cannot_be_opened_says_so_and_can_be_tried_again(qtbot, opened):
    tries = []

    def open_book():
        tries.append(1)
        if len(tries) == 1:
            raise BookUnusable("The book is damaged.", "Go on from the last good copy.")
        return a_session()

    window = opened(open_book)
    qtbot.waitUntil(lambda: window.floor.problem.isVisible())
    assert "last good copy" in window.floor.problem.accessibleName()
    window.floor.problem._way.click()
    qtbot.waitUntil(lambda: window.floor.bench() is not None)


def test_a_new_book_asks_two_questions_and_lets_one_in(qtbot, opened, settings):
    window = opened(lambda: a_session(people=()))
    qtbot.waitUntil(lambda: bool(window.findChildren(FirstStart)))
    (first,) = window.findChildren(FirstStart)
    first.answered.emit("Quernlow Dyeyard", "OW", "")
    qtbot.waitUntil(lambda: window.floor.bench() is not None)
    assert settings.person == "OW"
    assert window.head.who.accessibleName().startswith("OW at the till")


def test_who_is_not_known_signs_on_before_anything_else(qtbot, opened, settings):
    settings.person = "XX"
    window = opened(a_session)
    qtbot.waitUntil(lambda: window.floor.sign_on.isVisible())
    window.floor.sign_on.signed.emit("nobody", "till")
    qtbot.waitUntil(lambda: window.floor.sign_on.initials.wrong.isVisible())
    window.floor.sign_on.signed.emit("da", "pots")
    qtbot.waitUntil(lambda: not window.floor.sign_on.isVisible())
    assert (settings.person, settings.station) == ("DA", "pots")
    assert window.head.who.accessibleName().startswith("DA at the pots")


def test_a_deed_is_told_in_the_foot_and_taken_back_with_f2(qtbot, shell, fake_book):
    strike(shell, Qt.Key.Key_9, Qt.KeyboardModifier.AltModifier)
    quiet(qtbot, shell)
    strike(shell, Qt.Key.Key_F5)
    qtbot.waitUntil(lambda: shell.foot.undo.isVisible())
    assert shell.foot.said.text() == "put by 1 skein of 26·15·R6F for R. Osk, 10:42"
    strike(shell, Qt.Key.Key_F2)
    qtbot.waitUntil(lambda: fake_book.undone == [1])
    qtbot.waitUntil(lambda: shell.foot.said.text().startswith("taken back: put by"))


def test_a_bench_looks_again_when_a_deed_wrote_something(qtbot, shell, fake_book, monkeypatch):
    seen = []
    monkeypatch.setattr(ReelBench, "look_again", lambda self, kinds: seen.append(kinds))
    fake_book.on_saved(frozenset({"yarn"}))
    qtbot.waitUntil(lambda: seen == [frozenset({"yarn"})])


def test_a_scan_is_taken_whatever_has_the_focus(qtbot, shell):
    shell.floor.open_place(shell.floor.places[1])
    quiet(qtbot, shell)
    bench = shell.floor.bench()
    bench.put_by.setFocus()
    scan(shell, "2606H3W")
    qtbot.waitUntil(lambda: bench.lot == "2606H3W")
    assert bench.put_by.hasFocus()


def test_typing_begins_in_the_scan_line_wherever_one_is(qtbot, shell):
    shell.floor.bench().pad._keys.button(3).setFocus()
    strike(shell, Qt.Key.Key_O)
    qtbot.waitUntil(lambda: shell.head.scan_line.text() == "o")
    assert shell.head.scan_line.hasFocus()


def test_escape_puts_away_what_was_said_and_comes_back_to_the_scan_line(qtbot, shell):
    shell.floor.trouble(BookUnusable("No."))
    shell.floor.bench().pad._keys.button(3).setFocus()
    strike(shell, Qt.Key.Key_Escape)
    assert not shell.floor.problem.isVisible()
    assert shell.head.scan_line.hasFocus()


def test_text_grows_and_shrinks_by_keys_and_is_remembered(shell, settings):
    control = Qt.KeyboardModifier.ControlModifier
    for _ in range(6):
        strike(shell, Qt.Key.Key_Plus, control)
    assert settings.text == 2.0
    strike(shell, Qt.Key.Key_Minus, control)
    assert settings.text == 1.75
    strike(shell, Qt.Key.Key_0, control)
    assert settings.text == 1.0


def test_the_window_is_where_it_was_left(qtbot, opened, settings):
    first = opened(a_session)
    qtbot.waitUntil(lambda: first.floor.bench() is not None)
    first.resize(first.minimumSizeHint() + QSize(12, 16))
    first.close()
    assert opened(a_session).size() == first.size()


def test_closing_lets_go_of_the_book(qtbot, opened):
    book = FakeBook()
    window = opened(lambda: a_session(book))
    qtbot.waitUntil(lambda: window.floor.bench() is not None)
    window.close()
    assert book.closed


def test_tab_alone_reaches_everything(qtbot, shell):
    shell.floor.open_place(shell.floor.places[1])
    quiet(qtbot, shell)
    shell.head.scan_line.setFocus()
    reached = set()
    for _ in range(40):
        strike(shell, Qt.Key.Key_Tab)
        QTest.qWait(40)
        reached.add(QApplication.focusWidget())
    bench = shell.floor.bench()
    wanted = {shell.head.scan_line, shell.head.who, bench.put_by, bench.buyers.view}
    assert wanted <= reached
    assert shell.floor.rail.keys[1] in reached
    assert any(tag in reached for tag in shell.floor.trail.tags)


def test_whatever_can_be_pressed_or_written_in_has_a_name(qtbot, shell):
    for place in shell.floor.places:
        shell.floor.open_place(place)
        quiet(qtbot, shell)
        for widget in (*seen(shell, QAbstractButton), *seen(shell, QLineEdit)):
            assert widget.accessibleName(), widget


@pytest.mark.parametrize("steps", [0, 2, 4])
@pytest.mark.parametrize("place", [0, 1])
def test_no_words_are_clipped_at_any_size_of_text(qtbot, shell, steps, place):
    shell.change_text(steps)
    shell.floor.open_place(shell.floor.places[place])
    quiet(qtbot, shell)
    for _ in range(3):
        QApplication.processEvents()
    clipped = [label.text() for label in seen(shell, QLabel) if not room_for(label)]
    clipped += [code.accessibleName() for code in seen(shell, CodeWords) if not whole(code)]
    clipped += [line.text() for line in seen(shell, OneLine) if not as_high_as_its_type(line)]
    assert clipped == []
    small = [b.accessibleName() for b in seen(shell.floor, QAbstractButton)
             if min(b.width(), b.height()) < TARGET]  # fmt: skip
    assert small == []


def seen(window, kind):
    return [widget for widget in window.findChildren(kind)
            if widget.isVisible() and not widget.objectName().startswith("qt_")]  # fmt: skip


def room_for(label):
    metrics = QFontMetricsF(label.font())
    flags = int(Qt.TextFlag.TextWordWrap) if label.wordWrap() else 0
    needs = metrics.boundingRect(label.contentsRect(), flags, label.text())
    return needs.width() <= label.width() + 1 and needs.height() <= label.height() + 1


def whole(code):
    return code.width() >= code.sizeHint().width()


def as_high_as_its_type(line):
    return line.height() >= line.sizeHint().height()
