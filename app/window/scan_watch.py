"""Watches the keys of whichever window has the focus, and keeps what a scanner types out of it."""

from collections.abc import Callable
from time import monotonic

from PySide6.QtCore import QCoreApplication, QEvent, QObject, Qt, QTimer, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence, QWindow
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from app.scanning.keystrokes import ENDS, Heard, Keystrokes, Typed

_ENDING = {
    Qt.Key.Key_Return: "\r",
    Qt.Key.Key_Enter: "\r",
    Qt.Key.Key_Tab: "\t",
}
_SHIFTING = (Qt.Key.Key_Shift, Qt.Key.Key_CapsLock, Qt.Key.Key_AltGr)
_CONTROL = Qt.KeyboardModifier.ControlModifier
_ALT = Qt.KeyboardModifier.AltModifier
_META = Qt.KeyboardModifier.MetaModifier
_LATE_MS = 15  # a timer this much late: the window was busy, and keys may still be waiting


class ScanWatch(QObject):
    """Holds keys back for an eye-blink; `heard` tells of scans, and the rest is given back.

    It sees every key before the widget that has the focus does, and before the shortcuts: the Enter
    of a scan presses nothing.
    """

    heard = Signal(object)  # Scanned, Again or Garbled

    def __init__(
        self, keystrokes: Keystrokes, parent: QObject, pastes: Callable[[], bool] = lambda: False
    ) -> None:
        """`pastes` answers whether what is to be pasted is no words, and was taken."""
        super().__init__(parent)
        self.keystrokes, self._pastes = keystrokes, pastes
        self._held: list[tuple[QWindow, QKeyEvent]] = []
        self._giving_back = False
        self._armed = 0.0
        self._timer = QTimer(self)
        self._timer.setTimerType(Qt.TimerType.PreciseTimer)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._silence)
        app = QGuiApplication.instance()
        assert isinstance(app, QGuiApplication)
        app.focusWindowChanged.connect(self._watch)
        self._watch(QGuiApplication.focusWindow())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if self._giving_back or not isinstance(watched, QWindow) or not self._awake():
            return False
        kind = event.type()
        if kind is QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            return self._pressed(watched, event)
        if kind is QEvent.Type.KeyRelease and isinstance(event, QKeyEvent):
            return bool(self._held) and self._hold(watched, event)
        if kind is QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            return self._claims(event)
        return False

    def _awake(self) -> bool:
        """A scan line that is gone from the screen takes no keys of another window."""
        line = self.parent()
        return not isinstance(line, QWidget) or line.isVisible()

    def _watch(self, window: QWindow | None) -> None:
        if window is not None:
            window.installEventFilter(self)

    def _claims(self, event: QKeyEvent) -> bool:
        """The Enter that ends a scan must not be taken for a shortcut."""
        if self._held and _character(event) in ENDS:
            event.accept()
            return True
        return False

    def _pressed(self, window: QWindow, event: QKeyEvent) -> bool:
        if event.matches(QKeySequence.StandardKey.Paste) and self._pastes():
            return True
        if event.key() in _SHIFTING:
            return bool(self._held) and self._hold(window, event)
        character = _character(event)
        if not character or event.isAutoRepeat():
            self._answer(self.keystrokes.give_back())
            return False
        at_ms = event.timestamp() or round(monotonic() * 1000)
        self._answer(self.keystrokes.silence(at_ms))
        if character in ENDS and not self.keystrokes.holds():
            return False
        self._hold(window, event)
        self._answer(self.keystrokes.press(character, at_ms))
        if self.keystrokes.holds():
            self._arm(self.keystrokes.patience_ms())
        return True

    def _hold(self, window: QWindow, event: QKeyEvent) -> bool:
        self._held.append((window, event.clone()))
        return True

    def _arm(self, wait_ms: int) -> None:
        self._armed = monotonic() + wait_ms / 1000
        self._timer.start(wait_ms)

    def _silence(self) -> None:
        if (monotonic() - self._armed) * 1000 > _LATE_MS:
            self._arm(_LATE_MS)
        else:
            self._answer(self.keystrokes.give_back())

    def _answer(self, heard: tuple[Heard, ...]) -> None:
        """What is held goes back to where it was meant for, or is a scan and goes nowhere."""
        if not heard:
            return
        self._timer.stop()
        held, self._held = self._held, []
        for one in heard:
            if not isinstance(one, Typed):
                self.heard.emit(one)
        if isinstance(heard[0], Typed):
            self._give_back(held)

    def _give_back(self, held: list[tuple[QWindow, QKeyEvent]]) -> None:
        self._giving_back = True
        try:
            for window, event in held:
                if isValid(window):
                    QCoreApplication.sendEvent(window, event)
        finally:
            self._giving_back = False


def _character(event: QKeyEvent) -> str:
    """The character of a key that a scanner could have sent; none for commands."""
    modifiers = event.modifiers()
    if modifiers & _META or bool(modifiers & _CONTROL) != bool(modifiers & _ALT):
        return ""
    key = event.key()
    if key in _ENDING:
        return "" if modifiers & Qt.KeyboardModifier.ShiftModifier else _ENDING[Qt.Key(key)]
    text = event.text()
    return text if len(text) == 1 and text.isprintable() else ""
