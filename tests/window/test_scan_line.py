import pytest
from PySide6.QtCore import QMimeData, Qt, QUrl
from PySide6.QtGui import QColor, QGuiApplication, QImage, QKeySequence, QShortcut
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.window.parts.fields import TextField
from app.window.scan_line import ScanLine
from tests.window.hands import pause, send

LOT, OTHER = "2615R6F", "2619K44"


@pytest.fixture
def line(qtbot):
    window = QWidget()
    line = ScanLine()
    column = QVBoxLayout(window)
    column.addWidget(line)
    window.note = TextField("Note")
    column.addWidget(window.note)
    qtbot.addWidget(window)
    window.show()
    QTest.qWaitForWindowActive(window)
    line.setFocus()
    pause()
    yield line
    window.close()


def test_a_scan_is_heard_while_a_note_is_being_written(qtbot, line):
    note = line.window().note
    note.setFocus()
    with qtbot.waitSignal(line.scanned) as heard:
        send(line, LOT + "\r", 5)
    assert heard.args == [LOT]
    assert note.line.text() == ""
    assert note.line.hasFocus()
    assert line.text() == LOT


def test_a_bounce_is_told_apart(qtbot, line):
    with qtbot.waitSignal(line.scanned):
        send(line, LOT + "\r", 5)
    with qtbot.assertNotEmitted(line.scanned), qtbot.waitSignal(line.scanned_again) as heard:
        send(line, LOT + "\r", 5)
        pause()
    assert heard.args == [LOT]


def test_typing_asks_with_enter(qtbot, line):
    with qtbot.waitSignal(line.asked) as heard:
        send(line, "Ferry  Ledger\r", 80)
    assert heard.args == ["Ferry Ledger"]


def test_an_empty_line_asks_nothing(qtbot, line):
    with qtbot.assertNotEmitted(line.asked, wait=60):
        send(line, "\r", 80)


def test_a_scan_leaves_a_half_typed_question_alone(qtbot, line):
    send(line, "Osk", 80)
    pause()
    with qtbot.waitSignal(line.scanned):
        send(line, LOT + "\r", 5)
    assert line.text() == "Osk"


def test_the_next_words_replace_the_last_scan(qtbot, line):
    with qtbot.waitSignal(line.scanned):
        send(line, LOT + "\r", 5)
    pause()
    send(line, "Osk", 80)
    qtbot.waitUntil(lambda: line.text() == "Osk")


def test_what_is_half_typed_goes_on_where_it_was(qtbot, line):
    line.begin("O")
    line.window().note.setFocus()
    line.begin("s")
    assert line.text() == "Os"
    assert line.hasFocus()


def test_enter_asks_and_is_no_key_of_the_bench_while_one_types(qtbot, line):
    taken = []
    QShortcut(QKeySequence("Return"), line.window(), lambda: taken.append(1))
    line.begin("Osk")
    with qtbot.waitSignal(line.asked):
        QTest.keyClick(line.window().windowHandle(), Qt.Key.Key_Return)
    assert taken == []
    QTest.keyClick(line.window().windowHandle(), Qt.Key.Key_Return)
    assert taken == [1]


@pytest.mark.parametrize("between", ["\n", "\r\n"])
def test_pasted_codes_are_a_list_at_once(qtbot, line, between):
    QGuiApplication.clipboard().setText(f"{LOT}{between}{OTHER}{between}")
    with qtbot.waitSignal(line.pasted) as heard:
        line.paste()
    assert heard.args == [[LOT, OTHER]]


def test_codes_on_one_line_are_a_list_with_enter(qtbot, line):
    line.setText(f"{LOT}, {OTHER}")
    with qtbot.waitSignal(line.pasted) as heard:
        QTest.keyClick(line, Qt.Key.Key_Return)
    assert heard.args == [[LOT, OTHER]]


def test_one_pasted_code_is_asked_for(qtbot, line):
    line.setText("26·15·R6F")
    with qtbot.waitSignal(line.asked) as heard:
        QTest.keyClick(line, Qt.Key.Key_Return)
    assert heard.args == ["26·15·R6F"]


def picture():
    image = QImage(8, 8, QImage.Format.Format_RGB32)
    image.fill(QColor("#1B856E"))
    return image


def test_a_pasted_picture_is_taken_as_the_bytes_of_its_file(qtbot, line):
    QGuiApplication.clipboard().setImage(picture())
    with qtbot.waitSignal(line.pictured) as heard:
        QTest.keySequence(line, QKeySequence(QKeySequence.StandardKey.Paste))
    assert QImage.fromData(heard.args[0]).size() == picture().size()


def test_a_dropped_photo_is_read_from_its_file(qtbot, line, tmp_path):
    photo = tmp_path / "tag.png"
    picture().save(str(photo))
    dropped = QMimeData()
    dropped.setUrls([QUrl.fromLocalFile(str(photo))])
    with qtbot.waitSignal(line.pictured) as heard:
        assert line.take(dropped)
    assert heard.args == [photo.read_bytes()]


def test_what_is_no_picture_is_not_taken(line, tmp_path):
    dropped = QMimeData()
    dropped.setText("Osk")
    dropped.setUrls([QUrl.fromLocalFile(str(tmp_path / "missing.png"))])
    assert not line.take(dropped)


def test_dropped_files_that_are_no_pictures_are_told_of(qtbot, line, tmp_path):
    orders = tmp_path / "orders.csv"
    dropped = QMimeData()
    dropped.setUrls([QUrl.fromLocalFile(str(orders))])
    with qtbot.waitSignal(line.filed) as heard:
        assert line.take(dropped)
    assert heard.args == [[orders]]
