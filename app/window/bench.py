"""A bench: one work place of the window, and what it may ask of the window around it."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Concatenate, ParamSpec, Protocol, TypeVar

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.problems import Problem
from app.window.background import Background
from app.window.look.look import Gap
from app.window.parts.findings import Finding
from app.window.parts.key_button import KeyButton
from app.window.parts.station_tag import Stop
from app.window.printers import Printers
from app.window.scanners import Scanners
from app.window.session import Done, Session
from app.window.wired_balance import WiredBalance

P = ParamSpec("P")
T = TypeVar("T")


class Doing(Protocol):
    """Does a deed away from the screen, for its owner, and shows the outcome."""

    def __call__(
        self,
        owner: QObject,
        deed: Callable[..., T],
        args: Sequence[Any],
        then: Callable[[Done[T]], None] | None,
        terms: dict[str, Any],
    ) -> None: ...


class Running(Protocol):
    """Runs what ends in one deed away from the screen, for its owner, and shows the outcome."""

    def __call__(
        self,
        owner: QObject,
        job: Callable[[Session], Done[T]],
        then: Callable[[Done[T]], None] | None,
    ) -> None: ...


@dataclass(frozen=True, slots=True)
class Around:
    """The window as a bench sees it.

    `say` tells in the foot; `trouble` says in its place what could not be done; `found` shows
    above the bench what looks wrong and gets the answers; `show_trail` hangs the stations of the
    thing in hand on the yarn; `go` opens what a code or a link of the trail stands for; `scanners`,
    `balance` and `printers` are those of this computer.
    """

    background: Background
    session: Session
    do: Doing
    run: Running
    say: Callable[[str], None]
    trouble: Callable[[Problem], None]
    found: Callable[[Sequence[Finding], Callable[[Finding, str], None]], None]
    show_trail: Callable[[Sequence[Stop]], None]
    go: Callable[[str], None]
    printers: Printers
    scanners: Scanners | None = None
    balance: WiredBalance | None = None


class InFront(Protocol):
    """What stands in front of a bench for a while, or acts at any bench: it is asked first."""

    def takes(self, code: str) -> bool:
        """Whether a scan is for it."""

    def takes_picture(self, picture: bytes) -> bool:
        """Whether a photo is for it."""


class Bench(QWidget):
    """Base of the benches; put widgets into `body`, from top to bottom.

    A bench answers three questions at a glance: what is in hand, what comes next, what looks wrong.
    """

    in_front: InFront | None = None
    """Scans and photos go to it before the bench has them."""

    def __init__(self, around: Around) -> None:
        super().__init__()
        self.setProperty("ground", "surround")
        self.around = around
        self.body = QVBoxLayout(self)
        self.body.setContentsMargins(0, 0, 0, 0)
        self.body.setSpacing(Gap.PART)
        self._asked: dict[Callable[[Any], None], int] = {}

    def entered(self) -> None:
        """The bench comes to the front: look up what it shows."""

    def look_again(self, kinds: frozenset[str]) -> None:
        """A deed wrote these tables: look again at what concerns this bench."""

    def take(self, code: str) -> bool:
        """A scanned or typed code of the studio; True if this bench has a use for it."""
        return False

    def take_other(self, text: str) -> bool:
        """A scan that is no code of ours, such as an order's number; True if it is of use here."""
        return False

    def take_again(self, code: str) -> bool:
        """The same code within two seconds; True if twice is meant. Most often it is a bounce."""
        return False

    def press(self, key: str) -> bool:
        """A letter or digit that nothing else wanted; True if a key of the bench has it."""
        keys = [one for one in self.findChildren(KeyButton) if one.isVisible()]
        pressed = next((one for one in keys if one.key == key.upper()), None)
        if pressed is not None:
            pressed.click()
        return pressed is not None

    def seek(self, words: str) -> bool:
        """Words typed into the scan line; True if this bench can search for them."""
        return False

    def take_list(self, codes: Sequence[str]) -> bool:
        """A pasted list of codes; True if this bench has a use for it."""
        return False

    def take_picture(self, picture: bytes) -> bool:
        """A photo dropped or pasted anywhere; True if this bench has a use for it."""
        return False

    def take_file(self, path: Path) -> bool:
        """A file dropped anywhere that is no picture; True if this bench has a use for it."""
        return False

    def say(self, sentence: str) -> None:
        """Tell in the foot what was just done or seen."""
        self.around.say(sentence)

    def do(
        self,
        deed: Callable[..., T],
        *args: Any,
        then: Callable[[Done[T]], None] | None = None,
        **terms: Any,
    ) -> None:
        """Do a deed of app.work; the foot says what was done, with Undo, and `then` gets it.

        What is refused is said in its place. Terms: `happened`, `reason`, `token`, and whatever
        the deed itself takes by name.
        """
        self.around.do(self, deed, args, then, terms)

    def run(
        self, job: Callable[[Session], Done[T]], then: Callable[[Done[T]], None] | None = None
    ) -> None:
        """Run what ends in one deed, such as printing; told and taken back like a deed."""
        self.around.run(self, job, then)

    def ask(
        self,
        show: Callable[[T], None],
        question: Callable[Concatenate[Any, P], T],
        *args: P.args,
        **more: P.kwargs,
    ) -> None:
        """Ask a question of app.lookups away from the screen; `show` gets the answer.

        When the same `show` was asked for again meanwhile, only the newest answer is shown.
        """
        number = self._asked[show] = self._asked.get(show, 0) + 1

        def newest(answer: T) -> None:
            if self._asked[show] == number:
                show(answer)

        session = self.around.session
        self.around.background.read(self, lambda: session.ask(question, *args, **more), newest)
