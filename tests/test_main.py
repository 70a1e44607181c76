"""Start-up: words answered, ends that scripts can trust, and a window or a sentence."""

import json
import os
import shutil
import signal
import subprocess
import sys
import time
from contextlib import ExitStack
from pathlib import Path

import pytest

from app.__main__ import main, open_window, opener
from app.problems import BookUnusable, Refused
from app.store.opening import Claim
from tests.small import live_small

ROOT = Path(__file__).parent.parent
NO_SCREEN = {name: value for name, value in os.environ.items()
             if name not in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")}
on_linux = pytest.mark.skipif(sys.platform != "linux", reason="screens are told so on Linux")


@pytest.fixture(scope="module")
def lived(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The studio's book, to be read only."""
    path = tmp_path_factory.mktemp("lived") / "studio.book"
    live_small(path)
    return path


def run(*words: object, env: dict[str, str] = NO_SCREEN) -> subprocess.CompletedProcess[str]:
    return subprocess.run([sys.executable, "-m", "app", *map(str, words)], cwd=ROOT, env=env,
                          capture_output=True, text=True, encoding="utf-8", timeout=120)


def test_a_real_process_answers_on_stdout_alone(lived: Path) -> None:
    done = run("find", "C0114F", "--book", lived)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith("C·0114·F is a cone: Tarnfield 4-ply.\n")
    assert json.loads(run("verify", "--json", "--book", lived).stdout)["entries"] == 128


@pytest.mark.parametrize(("words", "code"), [
    (["find", "2699K44", "--book", "{book}"], 1), (["frob"], 2), (["find"], 2),
    (["verify", "--book", "{book}.not"], 3), (["verify", "--book", __file__], 3), (["--help"], 0),
])
def test_a_real_process_ends_as_its_help_says(lived: Path, words: list[str], code: int) -> None:
    done = run(*(word.format(book=lived) for word in words))
    assert done.returncode == code
    assert bool(done.stderr) == (code != 0)
    assert bool(done.stdout) == (code == 0)
    assert "Traceback" not in done.stderr


@on_linux
def test_without_a_screen_there_is_a_sentence_instead_of_a_window(tmp_path: Path) -> None:
    done = run("--book", tmp_path / "a.book")
    assert (done.returncode, done.stdout) == (1, "")
    assert "There is no screen here" in done.stderr
    assert list(tmp_path.iterdir()) == []


@on_linux
@pytest.mark.parametrize("platform", [{"DISPLAY": ":987"}, {"QT_QPA_PLATFORM": "no-such-thing"}])
def test_a_screen_that_does_not_answer_is_a_sentence_and_no_crash(
    tmp_path: Path, platform: dict[str, str]
) -> None:
    done = run("--book", tmp_path / "a.book", env={**NO_SCREEN, **platform})
    assert (done.returncode, done.stdout) == (1, "")
    assert "The window cannot be opened" in done.stderr
    assert "Abort" not in done.stderr
    assert list(tmp_path.iterdir()) == []


@on_linux
@pytest.mark.parametrize("screen", [{"DISPLAY": ":987"}, {"QT_QPA_PLATFORM": "offscreen"}])
def test_in_a_terminal_the_demo_is_done_also_where_its_window_cannot_be_shown(
    tmp_path: Path, demo_folder: Path, screen: dict[str, str]
) -> None:
    folder = tmp_path / "demo"
    shutil.copytree(demo_folder, folder)
    try:
        terminal, inside = os.openpty()
    except OSError as error:
        pytest.skip(f"this machine lends no pseudo-terminal: {error.strerror}")
    try:
        done = subprocess.run(
            [sys.executable, "-m", "app", "demo", "--out", str(folder)], cwd=ROOT,
            env={**NO_SCREEN, **screen}, stdout=inside, stderr=subprocess.PIPE, text=True,
            timeout=120)
        assert done.returncode == 0, done.stderr
        said = os.read(terminal, 100_000).decode()
    finally:
        os.close(terminal)
        os.close(inside)
    assert said.startswith("Quernlow Dyeyard is invented")
    assert done.stderr.startswith("The window cannot be opened") == ("DISPLAY" in screen)


@on_linux
def test_qt_that_is_not_there_is_a_sentence(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("QT_QPA_PLATFORM", "offscreen")
    monkeypatch.setitem(sys.modules, "PySide6.QtWidgets", None)
    with pytest.raises(Refused, match="Qt does not start"):
        open_window(Path("a.book"))


@on_linux
def test_the_window_opens_on_the_book_and_commands_still_answer(
    tmp_path: Path, lived: Path
) -> None:
    book = tmp_path / "studio.book"
    shutil.copy(lived, book)
    env = {**NO_SCREEN, "QT_QPA_PLATFORM": "offscreen", "XDG_CONFIG_HOME": str(tmp_path / "own")}
    words = [sys.executable, "-m", "app", "--book", str(book)]
    with subprocess.Popen(words, cwd=ROOT, env=env, stderr=subprocess.DEVNULL) as window:
        claim = tmp_path / "studio.book.claim"
        until = time.monotonic() + 60
        while not claim.exists() and window.poll() is None and time.monotonic() < until:
            os.sched_yield()
        assert claim.exists()
        assert window.poll() is None
        assert run("find", "C0114F", "--book", book).returncode == 0
        window.send_signal(signal.SIGINT)
        assert window.wait(timeout=30) == -signal.SIGINT


def test_a_book_that_another_window_has_is_not_opened_again(tmp_path: Path, lived: Path) -> None:
    book = tmp_path / "studio.book"
    shutil.copy(lived, book)
    with ExitStack() as until_closed:
        opened = opener(book, until_closed)
        with Claim(book), pytest.raises(BookUnusable, match="open in another window"):
            opened()
        for _ in range(2):  # and after a second try, in the same window
            opened().book.close()
        with pytest.raises(BookUnusable), Claim(book):
            pass
    with Claim(book):
        pass


@pytest.mark.skipif(os.name != "posix", reason="pipes break so on POSIX")
def test_a_reader_that_has_enough_breaks_nothing(lived: Path) -> None:
    words = [sys.executable, "-m", "app", "trace", "C0114F", "--json", "--book", str(lived)]
    with subprocess.Popen(words, cwd=ROOT, env=NO_SCREEN, stdout=subprocess.PIPE,
                          stderr=subprocess.PIPE) as asked:
        assert asked.stdout is not None
        assert asked.stderr is not None
        asked.stdout.close()
        err = asked.stderr.read()
        assert asked.wait(timeout=60) == 0
    assert err == b""


def test_ctrl_c_is_quiet(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], lived: Path
) -> None:
    def stopped(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("app.store.book.Book.ask", stopped)
    assert main(["verify", "--book", str(lived)]) == 130
    assert capsys.readouterr() == ("", "")


def test_a_terminal_of_another_alphabet_gets_what_it_can_show(lived: Path) -> None:
    env = {**NO_SCREEN, "PYTHONIOENCODING": "ascii"}
    done = run("find", "C0114F", "--book", lived, env=env)
    assert done.returncode == 0
    assert done.stdout.startswith("C\\xb70114\\xb7F is a cone")
    assert json.loads(run("find", "C0114F", "--json", "--book", lived, env=env).stdout)


def test_a_fault_of_the_program_is_never_taken_for_a_refusal(
    monkeypatch: pytest.MonkeyPatch, lived: Path
) -> None:
    def broken(*_: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr("app.store.book.Book.ask", broken)
    with pytest.raises(ZeroDivisionError):
        main(["verify", "--book", str(lived)])


def test_finding_a_code_needs_neither_paper_nor_window_nor_upgrade(lived: Path) -> None:
    """What a process brings in decides how long a person waits for it."""
    watch = ("import sys; from app.__main__ import main; main(sys.argv[1:]); "
             "print(*sorted({name.partition('.')[0] for name in sys.modules}), file=sys.stderr)")
    done = subprocess.run([sys.executable, "-c", watch, "find", "C0114F", "--book", str(lived)],
                          cwd=ROOT, capture_output=True, text=True, check=True, timeout=60)
    heavy = {"PySide6", "reportlab", "alembic", "openpyxl", "zxingcpp", "PIL", "pypdfium2"}
    assert heavy.isdisjoint(done.stderr.split())


@on_linux
@pytest.mark.parametrize("words", [["verify"], ["--json", "verify"]])
def test_an_answer_that_cannot_be_written_is_a_sentence(lived: Path, words: list[str]) -> None:
    with Path("/dev/full").open("w") as full:
        done = subprocess.run([sys.executable, "-m", "app", *words, "--book", str(lived)],
                              cwd=ROOT, env=NO_SCREEN, stdout=full, stderr=subprocess.PIPE,
                              text=True, encoding="utf-8", timeout=120, check=False)
    assert done.returncode == 1
    assert done.stderr.startswith("The answer cannot be written: No space left on device.")
    assert "Traceback" not in done.stderr
