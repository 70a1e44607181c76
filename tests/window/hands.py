"""Hands on the keyboard, and a scanner's: keys sent to a window as the system sends them."""

from PySide6.QtCore import QCoreApplication, QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtTest import QTest

KEYS = {"\r": Qt.Key.Key_Return, "\t": Qt.Key.Key_Tab, " ": Qt.Key.Key_Space}
_clock = [1_000]


def send(widget, text, gap_ms):
    """Send keys whose moments lie so far apart; no real time passes."""
    window = widget.window().windowHandle()
    for character in text:
        _clock[0] += gap_ms
        key = KEYS.get(character, Qt.Key(ord(character.upper())))
        for kind in (QEvent.Type.ShortcutOverride, QEvent.Type.KeyPress, QEvent.Type.KeyRelease):
            event = QKeyEvent(kind, key, Qt.KeyboardModifier.NoModifier, character)
            event.setTimestamp(_clock[0])
            QCoreApplication.sendEvent(window, event)


def pause():
    """A second goes by before the next key."""
    _clock[0] += 1_000


def scan(widget, text, end="\r"):
    """Send keys as fast as a scanner, by the whole way that shortcuts take too."""
    window = widget.window().windowHandle()
    for character in text + end:
        QTest.keyClick(window, KEYS.get(character, character))
