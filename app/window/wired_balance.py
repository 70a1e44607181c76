"""The balance on this computer's wire: listened to off the screen's thread, told at a calm pace."""

from collections.abc import Callable
from dataclasses import replace
from threading import Event, Thread
from time import monotonic
from typing import Protocol

from PySide6.QtCore import QObject, Qt, Signal, Slot

from app.scanning.balance_ear import BalanceEar, Heard, Sends, Wiring
from app.window.balance_settings import BalanceSettings

TOLD_EVERY = 0.08  # seconds: more often nobody can read
_ASKED_EVERY, _TRIED_EVERY, _PATIENCE = 0.25, 2.0, 0.05
_AT_ONCE = 4096  # bytes


class Port(Protocol):
    """As much of a serial port as is used."""

    def read(self, size: int) -> bytes: ...
    def write(self, what: bytes, /) -> int | None: ...
    def close(self) -> None: ...


def open_port(wiring: Wiring) -> Port:
    """Open it; raises OSError (pyserial's own errors are such) or ValueError."""
    from serial import Serial  # here, because the window is there before it

    frame = wiring.frame
    port: Port = Serial(wiring.port, wiring.speed, bytesize=int(frame[0]), parity=frame[1],
                        stopbits=int(frame[2]), timeout=_PATIENCE, write_timeout=1)
    return port


def ports_here() -> list[str]:
    """The ports that this computer has now; slow, so ask away from the screen."""
    from serial.tools.list_ports import comports

    return sorted(port.device for port in comports())


class WiredBalance(QObject):
    """`heard` tells what the balance says, on the screen's thread; it is opened when first wanted.

    Unplugged, it says so and tries again by itself; nothing else waits for it.
    """

    heard = Signal(object)  # Heard
    _told = Signal(object)

    def __init__(
        self, settings: BalanceSettings, opens: Callable[[Wiring], Port] = open_port
    ) -> None:
        super().__init__()
        self._settings, self._opens = settings, opens
        self._thread: Thread | None = None
        self._stop = Event()
        self.now = Heard()
        self._told.connect(self._arrived, Qt.ConnectionType.QueuedConnection)

    @property
    def wiring(self) -> Wiring:
        """As this computer's settings say."""
        return self._settings.wiring

    @property
    def plate(self) -> int:
        """The number of the balance that is used here; 0 for none."""
        return self._settings.used

    @plate.setter
    def plate(self, number: int) -> None:
        self._settings.used = number

    @property
    def is_wired(self) -> bool:
        """Whether a port was named here."""
        return bool(self.wiring.port)

    def wire(self, wiring: Wiring) -> None:
        """The balance talks like this from here on: kept, and heard at once."""
        self.close()
        self._settings.wiring = wiring
        self.now = Heard()
        self.heard.emit(self.now)
        self.listen()

    def listen(self) -> None:
        """Begin to listen, where a port was named and nobody listens yet."""
        if self._thread is None and self.is_wired:
            self._stop = Event()
            self._thread = Thread(target=self._run, args=(self.wiring, self._stop), daemon=True,
                                  name="balance")
            self._thread.start()

    def close(self) -> None:
        """Listen no longer."""
        self._stop.set()
        if self._thread is not None:
            self._thread.join(2)
            self._thread = None

    @Slot(object)
    def _arrived(self, told: tuple[Event, Heard]) -> None:
        stop, heard = told
        if stop is self._stop and not stop.is_set():
            self.now = replace(heard, printed=None)
            self.heard.emit(heard)

    def _run(self, wiring: Wiring, stop: Event) -> None:
        while not stop.is_set():
            try:
                port = self._opens(wiring)
            except (OSError, ValueError, ImportError):
                self._told.emit((stop, Heard(sentence=_not_open(wiring.port))))
            else:
                self._listen(wiring, port, stop)
            stop.wait(_TRIED_EVERY)

    def _listen(self, wiring: Wiring, port: Port, stop: Event) -> None:
        ear, told = BalanceEar(wiring), Heard()
        told_at = asked_at = 0.0
        try:
            while not stop.is_set():
                now = monotonic()
                if (wiring.sends is Sends.ASKED and wiring.question
                        and now - asked_at >= _ASKED_EVERY):
                    port.write(wiring.question)
                    asked_at = now
                ear.hear(port.read(_AT_ONCE), monotonic())
                calm = monotonic() - told_at >= TOLD_EVERY
                if ear.heard.printed or (calm and ear.heard != told):
                    told, told_at = ear.heard, monotonic()
                    self._told.emit((stop, told))
        except OSError:
            self._told.emit((stop, Heard(sentence=_unplugged(wiring.port))))
        finally:
            port.close()


def _not_open(port: str) -> str:
    return (f"No balance answers at {port}: look at the plug, or name another port. Until then "
            "type the weight.")


def _unplugged(port: str) -> str:
    return (f"The balance at {port} is unplugged. What was weighed is kept; type the weight, or "
            "plug it in again.")
