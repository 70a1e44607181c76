"""Makes ready a machine that has only Python, then starts the demo or the whole check."""

from __future__ import annotations

import contextlib
import hashlib
import os
import re
import shutil
import signal
import sys
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from shlex import quote
from subprocess import DEVNULL, PIPE, STDOUT, CompletedProcess, Popen, call, run
from typing import Any

if sys.version_info < (3, 11):  # noqa: UP036 - told in a sentence instead of a traceback
    raise SystemExit(f"Conetrail needs Python 3.11 or newer; this is {sys.version.split()[0]}.")
if os.name != "posix":
    raise SystemExit("This set-up is for Linux and macOS; elsewhere use `pip install .` by hand.")

USAGE = "Usage: python3 -m app.bootstrap demo [arguments] | test [pytest arguments]"
ROOT = Path(__file__).resolve().parent.parent
CI = ROOT / ".ci"
LOCAL = ROOT / ".venv"
LOCK, READY = "bootstrap.lock", "bootstrap.ready"
BASE_PYTHON = os.path.realpath(sys.executable)
CHECKS = {"ruff": ("check", "."), "mypy": (), "lint-imports": ("--no-cache", "--no-logo")}
CAUSES = {
    r"No space left|quota exceeded": "There is no room on the disk. Free about 1.5 GB",
    r"CERTIFICATE_VERIFY_FAILED|SSLError|TLS CA cert": "This machine does not know the package "
    "index's certificate. Install the system's certificates or set PIP_CERT",
    r"connection broken|ConnectTimeout|ProxyError|HTTP ?Error|Temporary failure|not known|nodename|"
    r"refused|unreachable|[Tt]imed out": "The package index cannot be reached. "
    "Connect to the network (behind a proxy set HTTPS_PROXY, for your own index PIP_INDEX_URL)",
}


def main(arguments: Sequence[str]) -> int:
    """Does one of the two words; what has to be set up is set up first."""
    if not arguments or arguments[0] not in ("demo", "test"):
        say(USAGE)
        return 2
    word, *rest = arguments
    try:
        home = ready_environment(word)
        environ = surroundings(word, home, os.environ, sys.platform)
        make_window_possible(home, environ)
        if word == "test":
            return whole_check(home, rest, environ)
        return hand_over([f"{home}/bin/python", "-m", "app", "demo", *rest], environ)
    except KeyboardInterrupt:
        say("Stopped. Start again when you like: what is half made will be made anew.")
        return 130


def say(sentence: str) -> None:
    """Tells the person something, apart from what the program itself prints."""
    print(sentence, file=sys.stderr, flush=True)


def requirements(project: Mapping[str, Any], word: str) -> list[str]:
    """What the project asks for: to run, and for `test` also to be checked."""
    extra = project["optional-dependencies"]["test"] if word == "test" else []
    return [*project["dependencies"], *extra]


def marks(project: Mapping[str, Any], word: str, *ground: str) -> list[str]:
    """A mark for each set of packages the word needs, the smaller set first.

    `ground` is whatever else makes an environment unfit when it changes: pins, Python, place.
    """
    sets = [requirements(project, each) for each in ("demo", "test")][: 2 if word == "test" else 1]
    return [hashlib.sha256("\0".join([*ground, *each]).encode()).hexdigest() for each in sets]


def lacks(home: Path, wanted: Sequence[str]) -> str:
    """What the environment lacks: "", "packages" or "everything", as when it was left half made."""
    ready = home / READY
    has = ready.read_text().split() if ready.is_file() and (home / "bin/python").exists() else []
    if wanted[-1] in has:
        return ""
    return "packages" if wanted[0] in has else "everything"


def personal_home(environ: Mapping[str, str]) -> Path:
    """Where the environment lies if the checkout cannot be written: one folder a checkout."""
    cache = environ.get("XDG_CACHE_HOME") or Path.home() / ".cache"
    return Path(cache, f"conetrail-{hashlib.sha256(bytes(ROOT)).hexdigest()[:8]}")


def may_use(home: Path) -> bool:
    """Whether the folder is free or was made here; a person's own environment is left alone."""
    if not home.exists():
        return os.access(home.parent, os.W_OK)
    made_here = home.is_dir() and ((home / LOCK).exists() or not any(home.iterdir()))
    return made_here and os.access(home, os.W_OK)


def ready_environment(word: str) -> Path:
    """The environment that holds what the word needs; made or completed if it has to be."""
    import tomllib  # younger than the oldest Python that must be told to step aside

    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    ground = ((CI / "constraints.txt").read_text("utf-8"), str(sys.version_info[:2]), BASE_PYTHON)
    personal = personal_home(os.environ)
    wanted = {home: marks(project, word, *ground, str(home)) for home in (LOCAL, personal)}
    for home in wanted:
        if not lacks(home, wanted[home]):
            return home
    home = LOCAL if may_use(LOCAL) else personal
    try:
        home.mkdir(parents=True, exist_ok=True)
        with alone(home) as lock:
            if lacks(home, wanted[home]):
                make(home, wanted[home], requirements(project, word), lock)
    except OSError as error:
        unknown = f"The environment cannot be made ({error}): set XDG_CACHE_HOME to a free folder."
        raise SystemExit(cause(str(error)) or unknown) from error
    return home


@contextlib.contextmanager
def alone(home: Path) -> Iterator[int]:
    """Lets one start at a time change the environment.

    pip inherits the lock: if it outlives a killed start, the next start still waits for it.
    """
    import fcntl

    with open(home / LOCK, "a") as lock:
        try:
            fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            say("Another start is making the environment: waiting for it.")
            fcntl.flock(lock, fcntl.LOCK_EX)
        yield lock.fileno()


def make(home: Path, wanted: Sequence[str], packages: Sequence[str], lock: int) -> None:
    """Makes the environment anew, or adds to it; until it has its marks again it is half made."""
    shown = home.relative_to(ROOT) if home.is_relative_to(ROOT) else home
    ready = home / READY
    had = ready.read_text() if lacks(home, wanted) == "packages" else ""
    ready.unlink(missing_ok=True)
    doing = "Adding what the tests need to" if had else "Making the environment in"
    say(f"{doing} {shown}: about a minute, once.")
    try:
        if not had:
            create(home, lock)
        install(home, packages, lock)
    except SystemExit:
        ready.write_text(had)
        raise
    ready.write_text("\n".join(wanted))


def create(home: Path, lock: int) -> None:
    """A new environment with pip in it."""
    import venv

    for old in home.iterdir():
        if old.name != LOCK:
            shutil.rmtree(old) if old.is_dir() and not old.is_symlink() else old.unlink()
    venv.create(home, symlinks=True)
    bring = [f"{home}/bin/python", f"{CI}/bring_pip.py", BASE_PYTHON]
    done = quietly(bring, inherit=[lock])
    if done.returncode:
        why = cause(done.stdout)
        if why and "certificate" not in why:
            raise SystemExit(why)
        get_system_packages([f"python3.{sys.version_info[1]}-venv"], "Python has no pip here.")
        quietly(bring, inherit=[lock])


def quietly(
    command: list[str], environ: Mapping[str, str] = os.environ, inherit: Sequence[int] = ()
) -> CompletedProcess[str]:
    """Does a step of the set-up and keeps what it says."""
    return run(
        command,
        env={**environ, "PIP_USER": "0", "PIP_DISABLE_PIP_VERSION_CHECK": "1"},
        stdin=DEVNULL,
        stdout=PIPE,
        stderr=STDOUT,
        errors="replace",
        pass_fds=inherit,
    )


def install(home: Path, packages: Sequence[str], lock: int) -> None:
    """Installs the packages at the pinned releases, or at the newest that fit another Python."""
    pip = [f"{home}/bin/python", "-m", "pip", "install", "--quiet", *packages]
    done = quietly([*pip, "-c", f"{CI}/constraints.txt"], inherit=[lock])
    if done.returncode and not cause(done.stdout):
        say("The pinned releases do not all fit this Python: taking the newest that do.")
        done = quietly(pip, inherit=[lock])
    if done.returncode:
        say(done.stdout)
        raise SystemExit(cause(done.stdout) or "pip could not install what is needed: see above.")


def cause(words: str) -> str | None:
    """Why a step failed and what to do, if its words are known."""
    known = (meaning for pattern, meaning in CAUSES.items() if re.search(pattern, words))
    return next((f"{meaning}, then start again." for meaning in known), None)


def surroundings(word: str, home: Path, environ: Mapping[str, str], system: str) -> dict[str, str]:
    """The program's variables: windows unseen without a screen, caches where it can write."""
    screen = word == "demo" and (environ.get("DISPLAY") or environ.get("WAYLAND_DISPLAY"))
    unseen = {} if screen or system != "linux" else {"QT_QPA_PLATFORM": "offscreen"}
    caches = home if os.access(home, os.W_OK) else personal_home(environ)
    pytest_cache = "-o " + quote(f"cache_dir={caches}/pytest")
    return {
        **unseen,
        **environ,
        "PYTHONUNBUFFERED": "1",
        "RUFF_CACHE_DIR": str(caches / "ruff"),
        "MYPY_CACHE_DIR": str(caches / "mypy"),
        "HYPOTHESIS_STORAGE_DIRECTORY": str(caches / "hypothesis"),
        "PYTEST_ADDOPTS": f"{pytest_cache} {environ.get('PYTEST_ADDOPTS', '')}",
    }


def make_window_possible(home: Path, environ: Mapping[str, str]) -> None:
    """Opens Qt once in the environment, and gets the system libraries that it lacks."""
    proved = home / f"bootstrap.{environ.get('QT_QPA_PLATFORM', 'screen').partition(':')[0]}"
    if proved.exists():
        return
    attempt = [f"{home}/bin/python", f"{CI}/try_window.py"]
    done = quietly(attempt, environ)
    missing = re.findall(r"^(lib\S+) (\S+)$", done.stdout, re.MULTILINE)
    if done.returncode and missing:
        names = ", ".join(library for library, _ in missing)
        get_system_packages([package for _, package in missing], f"The window needs {names}.")
        done = quietly(attempt, environ)
    if done.returncode:
        say(done.stdout)
        raise SystemExit("Qt cannot open a window: see above. Try QT_QPA_PLATFORM=offscreen.")
    with contextlib.suppress(OSError):
        proved.touch()


def leave(*, root: bool, terminal: bool, apt: bool, sudo: bool) -> str:
    """Whether to "install" system packages (unasked if nobody is there), "ask" first, or "tell"."""
    if not apt or not (root or (terminal and sudo)):
        return "tell"
    return "ask" if terminal else "install"


def get_system_packages(packages: Sequence[str], reason: str) -> None:
    """Installs Debian packages where that may be done here; otherwise stops with the command."""
    root = os.geteuid() == 0
    terminal = sys.stdin is not None and sys.stdin.isatty()
    apt, sudo = bool(shutil.which("apt-get")), bool(shutil.which("sudo"))
    command = [*([] if root else ["sudo"]), "apt-get", "install", "--yes", *packages]
    todo = " ".join(command) if apt else "Install what holds them with this system's own tool."
    say(reason)
    may = leave(root=root, terminal=terminal, apt=apt, sudo=sudo)
    if may == "ask":
        say(f"Shall this be done now?  {todo}  [y/N]")
        may = "install" if sys.stdin.readline().strip().lower() in ("y", "yes") else "tell"
    if may == "tell":
        raise SystemExit(f"Do this once, then start again:\n    {todo}")
    say(f"Installing {' '.join(packages)}.")
    quietly([*command[: command.index("install")], "update"])
    done = quietly(command)
    if done.returncode:
        say(done.stdout)
        raise SystemExit(cause(done.stdout) or f"Try it by hand, then start again:\n    {todo}")


def whole_check(home: Path, rest: Sequence[str], environ: Mapping[str, str]) -> int:
    """Ruff, mypy, the import rules and all tests; only pytest if it is told what to test."""
    commands = {tool: [f"{home}/bin/{tool}", *how] for tool, how in CHECKS.items() if not rest}
    failed = [tool for tool in commands if call(commands[tool], cwd=ROOT, env=environ)]
    for tool in failed:
        say(f"{tool} found something to put right: see above.")
    tests = rest or ["-n", str(min(4, (os.cpu_count() or 1) + 1))]  # tests of the window wait
    return hand_over([f"{home}/bin/python", "-m", "pytest", *tests], environ, int(bool(failed)))


def hand_over(command: list[str], environ: Mapping[str, str], at_least: int = 0) -> int:
    """Becomes the command, so that its signals and its exit code are the person's own.

    With an exit code that must not be lost it stays beside it and passes both on.
    """
    if not at_least:
        os.execve(command[0], command, environ)
    with Popen(command, env=environ) as child:
        signal.signal(signal.SIGINT, lambda *_: None)  # the terminal sends it to both
        signal.signal(signal.SIGTERM, lambda *_: child.terminate())
        status = child.wait()
    return 128 - status if status < 0 else status or at_least


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
