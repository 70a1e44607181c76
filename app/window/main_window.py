"""The window: head, work floor and foot, and what holds them together."""

from collections.abc import Callable, Sequence
from datetime import datetime

from PySide6.QtCore import QObject, Qt, QTimer
from PySide6.QtGui import (
    QCloseEvent,
    QDragEnterEvent,
    QDropEvent,
    QKeyEvent,
    QKeySequence,
    QPaintEvent,
    QShortcut,
)
from PySide6.QtWidgets import QApplication, QLineEdit, QMainWindow, QVBoxLayout, QWidget

from app.problems import Problem
from app.window.background import Background
from app.window.bench import Around
from app.window.computer_settings import ComputerSettings
from app.window.deeds import Deeds
from app.window.first_start import FirstStart
from app.window.floor import Floor
from app.window.head_and_foot import Foot, Head
from app.window.look.icons import Icon, picture
from app.window.look.look import LEAST_TEXT, MOST_TEXT, Look
from app.window.look.palette import DAY, EVENING
from app.window.look.stylesheet import wear
from app.window.parts.findings import Finding
from app.window.places import Place
from app.window.printers import Printers
from app.window.problem_box import show_failure
from app.window.reception import Reception
from app.window.scanners import Scanners
from app.window.session import Session
from app.window.wired_balance import WiredBalance
from app.window.written_late import WrittenLate, why_not

TEXT_STEP = 0.25
_COMMANDS = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier


class MainWindow(QMainWindow):
    """There at once; the book is opened after the first paint, away from the screen."""

    def __init__(
        self,
        settings: ComputerSettings,
        places: Sequence[Place],
        open_book: Callable[[], Session],
    ) -> None:
        super().__init__()
        self.setWindowTitle("Conetrail")
        self.setWindowIcon(picture(Icon.CONE, 64, DAY.ink))
        self.setAcceptDrops(True)
        self._settings, self._places, self._open_book = settings, places, open_book
        self._painted = False
        self._wear()
        self.background = Background(self._show_failure)
        self.deeds = Deeds(self.background, self)
        self.balance, self.printers = WiredBalance(settings.balances), Printers(settings.printers)
        self.late = WrittenLate()
        self.head, self.floor = Head(settings.scanners), Floor(places)
        self.foot = Foot(self.background)
        self.reception = Reception(self.head, self.floor, self.foot, self.deeds)
        self.session: Session | None = None
        self._lay_out()
        self._join()

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if not self._painted:
            self._painted = True
            QTimer.singleShot(0, self, self.open_the_book)

    def open_the_book(self) -> None:
        """Open the book away from the screen; until then the window says so."""
        self.floor.show_sentence("opening the book …")

        def opened() -> tuple[Session, bool]:
            session = self._open_book()
            for place in self._places:
                place.bench_class()
            people = session.people()
            session.person = self._settings.person if self._settings.person in people else ""
            session.station = self._settings.station
            return session, bool(people)

        self.background.write(self, opened, self._opened, self._not_opened)

    def change_text(self, steps: int) -> None:
        """Larger or smaller text; 0 is the size it came with."""
        wanted = self._settings.text + steps * TEXT_STEP if steps else 1.0
        self._settings.text = min(max(wanted, LEAST_TEXT), MOST_TEXT)
        self._wear()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self._escape()
        elif event.matches(QKeySequence.StandardKey.Paste):
            self.head.scan_line.take_pasted()
        elif (event.text().isprintable() and event.text().strip()
                and not event.modifiers() & _COMMANDS):
            bench = self.floor.bench()
            if bench is None or not bench.press(event.text()):
                self.head.scan_line.begin(event.text())
        else:
            super().keyPressEvent(event)

    def enter_late(self) -> None:
        """Ask when it happened, what is entered from here on."""
        if self.session is not None:
            self.late.ask(self.session.book.clock())

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        if self.head.scan_line.take(event.mimeData()):
            event.acceptProposedAction()

    def closeEvent(self, event: QCloseEvent) -> None:
        self._settings.window = self.saveGeometry()
        self._settings.store()
        self.balance.close()
        self.background.close()
        if self.session is not None:
            self.session.book.close()
        super().closeEvent(event)

    def _opened(self, answer: tuple[Session, bool]) -> None:
        self.session, begun = answer
        self.deeds.session = self.session
        self.session.book.on_saved = self.background.saved.emit
        if begun:
            self._let_in()
        else:
            self._ask_first_questions(self.session)

    def _not_opened(self, error: BaseException) -> None:
        self.floor.show_sentence("The book is not open.")
        if isinstance(error, Problem):
            self.floor.trouble(error, "Try again", self.open_the_book)
        else:
            show_failure(self, error)

    def _ask_first_questions(self, session: Session) -> None:
        first = FirstStart()

        def begin(studio: str, initials: str, name: str) -> None:
            session.person = self._settings.person = initials
            station = session.station
            self.background.write(
                self, lambda: session.begin(studio, initials, name, station),
                lambda _: self._let_in())

        first.answered.connect(begin)
        self.floor.show_page(first)
        first.setFocus()

    def _let_in(self) -> None:
        session = self.session
        assert session is not None
        self.floor.let_in(
            Around(
                background=self.background,
                session=session,
                do=self.deeds.do,
                run=self.deeds.run,
                say=self.foot.show_note,
                trouble=self.floor.trouble,
                found=self.floor.found,
                show_trail=self.floor.show_trail,
                go=self.reception.show,
                scanners=Scanners(self._settings, self.head.scan_line.watch.keystrokes),
                balance=self.balance, printers=self.printers,
            )
        )
        self.floor.open_place(self._places[0])
        self._show_who(session)
        if not session.person:
            self.floor.sign_on.open(session.station)
        self.background.read(self, session.last_copy, self.foot.copy.say)

    def _escape(self) -> None:
        """One thing at a time: what was said, what was begun to be typed, what is written late."""
        open_before = self.floor.asks() or self.late.asking or self._writing()
        self.floor.put_away()
        self.late.put_away()
        if self.late.on is not None and not open_before:
            self._back_to_now()
        self.head.scan_line.setFocus()
        self.head.scan_line.selectAll()

    def _writing(self) -> bool:
        line = self.focusWidget()
        return isinstance(line, QLineEdit) and line is not self.head.scan_line

    def _happened(self, moment: datetime) -> None:
        """What is entered from here on happened then, if it can have."""
        session = self.session
        if session is None:
            return
        now = session.book.clock()

        def asked(began: datetime | None) -> None:
            wrong = why_not(moment, now, began or now)
            if wrong:
                self.late.complain(wrong)
                return
            session.late = moment
            self.late.begin(moment)
            self._look_at_that_moment()

        from app.lookups.recent import book_began  # here, because the window is there before it

        self.background.read(self, lambda: session.ask(book_began), asked)

    def _back_to_now(self) -> None:
        assert self.session is not None
        self.session.late = None
        self.late.end()
        self.foot.show_note("back to now: what is entered from here on happens now")
        self._look_at_that_moment()

    def _look_at_that_moment(self) -> None:
        bench = self.floor.bench()
        if bench is not None:
            bench.entered()

    def _sign_on(self, initials: str, station: str) -> None:
        session = self.session
        if session is None:
            return

        def signed(found: str) -> None:
            session.person, session.station = found, station
            self._settings.person, self._settings.station = found, station
            self.floor.sign_on.hide()
            self._show_who(session)

        def failed(error: BaseException) -> None:
            self.floor.sign_on.initials.complain(str(error))

        self.background.read(self, lambda: session.sign_on(initials), signed, failed)

    def _show_who(self, session: Session) -> None:
        self.head.who.show_who(session.person, session.station)

    def _join(self) -> None:
        """Who hears whom."""
        floor, foot, deeds = self.floor, self.foot, self.deeds
        foot.undo_wanted.connect(deeds.undo_last)
        self.head.late.clicked.connect(self.enter_late)
        self.late.chosen.connect(self._happened)
        self.late.ended.connect(self._back_to_now)
        deeds.said.connect(lambda sentence, undo: foot.show_said(sentence, undo=undo))
        deeds.said.connect(lambda *_: floor.put_away())
        deeds.found.connect(lambda found: floor.found([Finding(one) for one in found]))
        deeds.failed.connect(floor.trouble)
        floor.trail.followed.connect(self.reception.show)
        floor.sign_on.signed.connect(self._sign_on)
        floor.moved.connect(lambda place: self.setWindowTitle(f"{place.title} · Conetrail"))
        self.head.who.clicked.connect(lambda: floor.sign_on.open(self._settings.station))
        self.background.saved.connect(self._look_again)
        for keys, steps in (("Ctrl++", 1), ("Ctrl+=", 1), ("Ctrl+-", -1), ("Ctrl+0", 0)):
            QShortcut(QKeySequence(keys), self, lambda steps=steps: self.change_text(steps))

    def _look_again(self, kinds: frozenset[str]) -> None:
        bench = self.floor.bench()
        if bench is not None:
            bench.look_again(kinds)

    def _wear(self) -> None:
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        colours = EVENING if self._settings.evening else DAY
        wear(app, Look(colours, self._settings.text))

    def _lay_out(self) -> None:
        middle = QWidget()
        middle.setProperty("ground", "surround")
        column = QVBoxLayout(middle)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.head)
        column.addWidget(self.late)
        column.addWidget(self.floor, 1)
        column.addWidget(self.foot)
        self.setCentralWidget(middle)
        if not self.restoreGeometry(self._settings.window):
            self.resize(1280, 800)
        self.head.scan_line.setFocus()

    def _show_failure(self, owner: QObject, error: BaseException) -> None:
        if isinstance(error, Problem):
            self.floor.trouble(error)
        else:
            show_failure(owner, error)
