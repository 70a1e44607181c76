"""The set-up on a machine that has only Python: what it decides, without network or packages."""

import importlib.util
import os
import re
import shutil
import subprocess
import sys
import threading
import tomllib
from collections.abc import Sequence
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from app import bootstrap

PROJECT: dict[str, Any] = {
    "dependencies": ["thread>=2", "needle"],
    "optional-dependencies": {"test": ["thimble"]},
}
LOCK = bootstrap.LOCK


def step(name: str) -> ModuleType:
    """One of the set-up's own small scripts, as a module."""
    spec = importlib.util.spec_from_file_location(name, bootstrap.CI / f"{name}.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def an_environment(home: Path, ready: Sequence[str]) -> Path:
    """A folder that looks like a made environment with these marks."""
    (home / "bin").mkdir(parents=True)
    (home / "bin/python").touch()
    (home / LOCK).touch()
    (home / bootstrap.READY).write_text("\n".join(ready))
    return home


def test_the_demo_needs_only_what_the_program_runs_on() -> None:
    assert bootstrap.requirements(PROJECT, "demo") == ["thread>=2", "needle"]


def test_the_check_needs_the_test_packages_as_well() -> None:
    assert bootstrap.requirements(PROJECT, "test") == ["thread>=2", "needle", "thimble"]


def test_every_package_the_project_names_is_pinned_at_a_release_it_allows() -> None:
    project = tomllib.loads((bootstrap.ROOT / "pyproject.toml").read_text())["project"]
    lines = (bootstrap.CI / "constraints.txt").read_text().splitlines()
    pins = dict(line.split("==") for line in lines if not line.startswith("#"))
    for asked in map(Requirement, bootstrap.requirements(project, "test")):
        assert asked.specifier.contains(pins[canonicalize_name(asked.name)]), asked


def test_what_is_ready_for_the_check_is_ready_for_the_demo() -> None:
    assert bootstrap.marks(PROJECT, "demo") == bootstrap.marks(PROJECT, "test")[:1]


def test_another_test_package_leaves_the_demo_ready() -> None:
    changed = {**PROJECT, "optional-dependencies": {"test": ["thimble", "pins"]}}
    before, after = bootstrap.marks(PROJECT, "test"), bootstrap.marks(changed, "test")
    assert before[0] == after[0]
    assert before[1] != after[1]


@pytest.mark.parametrize("ground", [("pins 2", "3.11"), ("pins 1", "3.12"), ("pins 1", "3.1", "1")])
def test_other_pins_or_another_python_make_the_environment_unfit(ground: tuple[str, ...]) -> None:
    before = bootstrap.marks(PROJECT, "test", "pins 1", "3.11")
    assert not set(before) & set(bootstrap.marks(PROJECT, "test", *ground))


@pytest.mark.parametrize(
    ("ready", "lacking"),
    [
        (["demo", "test"], ""),
        (["demo"], "packages"),
        (["older"], "everything"),
        ([], "everything"),
    ],
)
def test_the_marks_say_what_an_environment_lacks(
    tmp_path: Path, ready: list[str], lacking: str
) -> None:
    home = an_environment(tmp_path / "env", ready)
    assert bootstrap.lacks(home, ["demo", "test"]) == lacking


def test_an_environment_without_marks_or_without_its_python_lacks_everything(
    tmp_path: Path,
) -> None:
    home = an_environment(tmp_path / "env", ["demo"])
    assert bootstrap.lacks(home, ["demo"]) == ""
    (home / "bin/python").unlink()
    assert bootstrap.lacks(home, ["demo"]) == "everything"
    assert bootstrap.lacks(tmp_path / "nowhere", ["demo"]) == "everything"


def test_a_free_folder_or_one_made_here_may_be_used(tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    for home in (tmp_path / "new", tmp_path / "empty", an_environment(tmp_path / "ours", [])):
        assert bootstrap.may_use(home)


def test_an_environment_that_a_person_made_is_left_alone(tmp_path: Path) -> None:
    home = an_environment(tmp_path / "theirs", [])
    (home / LOCK).unlink()
    assert not bootstrap.may_use(home)


def test_the_personal_folder_is_in_the_cache_that_is_set_or_in_the_usual_one() -> None:
    home = bootstrap.personal_home({"XDG_CACHE_HOME": "/yard/cache"})
    assert home.parent == Path("/yard/cache")
    assert bootstrap.personal_home({}) == Path.home() / ".cache" / home.name


def test_a_failed_addition_leaves_the_demo_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails(*_: object) -> None:
        raise SystemExit("no network")

    monkeypatch.setattr(bootstrap, "install", fails)
    home = an_environment(tmp_path / "env", ["demo"])
    with pytest.raises(SystemExit, match="no network"):
        bootstrap.make(home, ["demo", "test"], ["thimble"], 0)
    assert bootstrap.lacks(home, ["demo"]) == ""


def test_an_addition_that_is_cut_short_leaves_the_environment_half_made(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stopped(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(bootstrap, "install", stopped)
    home = an_environment(tmp_path / "env", ["demo"])
    with pytest.raises(KeyboardInterrupt):
        bootstrap.make(home, ["demo", "test"], ["thimble"], 0)
    assert bootstrap.lacks(home, ["demo"]) == "everything"


def test_a_second_start_waits_until_the_first_has_made_the_environment(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    waits, order = threading.Event(), []
    monkeypatch.setattr(bootstrap, "say", lambda _: waits.set())

    def second() -> None:
        with bootstrap.alone(tmp_path):
            order.append("second")

    start = threading.Thread(target=second)
    with bootstrap.alone(tmp_path):
        start.start()
        assert waits.wait(timeout=30)
        order.append("first")
    start.join()
    assert order == ["first", "second"]


@pytest.mark.parametrize(
    ("root", "terminal", "apt", "sudo", "may"),
    [
        (True, False, True, False, "install"),
        (True, True, True, False, "ask"),
        (False, True, True, True, "ask"),
        (False, True, True, False, "tell"),
        (False, False, True, True, "tell"),
        (True, False, False, True, "tell"),
    ],
)
def test_system_packages_come_unasked_only_where_nobody_can_be_asked(
    root: bool, terminal: bool, apt: bool, sudo: bool, may: str
) -> None:
    assert bootstrap.leave(root=root, terminal=terminal, apt=apt, sudo=sudo) == may


@pytest.mark.parametrize(
    ("tools", "said"),
    [
        (["apt-get"], r"once, then start again:\n    sudo apt-get install --yes libegl1 libgl1$"),
        (
            [],
            r"once, then start again:\n    Install what holds them with this system's own tool\.$",
        ),
    ],
)
def test_a_plain_user_is_told_the_one_command(
    tools: list[str], said: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(os, "geteuid", lambda: 1000)
    monkeypatch.setattr(sys, "stdin", None)
    monkeypatch.setattr(shutil, "which", lambda tool: tool if tool in tools else None)
    with pytest.raises(SystemExit, match=said):
        bootstrap.get_system_packages(["libegl1", "libgl1"], "The window needs libEGL.so.1.")
    assert capsys.readouterr().err == "The window needs libEGL.so.1.\n"


@pytest.mark.parametrize(
    ("words", "meaning"),
    [
        ("OSError: [Errno 28] No space left on device", "There is no room on the disk"),
        (
            "connection broken by 'SSLError(... [SSL: CERTIFICATE_VERIFY_FAILED] ...)'",
            "This machine does not know the package index's certificate",
        ),
        (
            "<urlopen error [Errno -3] Temporary failure in name resolution>",
            "The package index cannot be reached",
        ),
        (
            "connection broken by 'NewConnectionError(\"... [Errno 111] Connection refused\")'",
            "The package index cannot be reached",
        ),
    ],
)
def test_a_known_failure_is_told_with_what_to_do(words: str, meaning: str) -> None:
    told = bootstrap.cause(words)
    assert told is not None
    assert told.startswith(meaning)
    assert told.endswith(", then start again.")


def test_a_pin_that_does_not_exist_is_no_trouble_with_the_network() -> None:
    no_such = "ERROR: No matching distribution found for needle==99"
    conflict = "ERROR: ResolutionImpossible: for help visit .../dependency-resolution/#conflicts"
    assert bootstrap.cause(no_such) is None
    assert bootstrap.cause(conflict) is None


@pytest.mark.parametrize(
    ("word", "environ", "system", "shown"),
    [
        ("demo", {}, "linux", "offscreen"),
        ("demo", {"DISPLAY": ":0"}, "linux", None),
        ("demo", {"WAYLAND_DISPLAY": "wayland-0"}, "linux", None),
        ("demo", {}, "darwin", None),
        ("demo", {"QT_QPA_PLATFORM": "vnc"}, "linux", "vnc"),
        ("test", {"DISPLAY": ":0"}, "linux", "offscreen"),
        ("test", {"DISPLAY": ":0", "QT_QPA_PLATFORM": "xcb"}, "linux", "xcb"),
    ],
)
def test_windows_are_unseen_without_a_screen_and_in_tests(
    word: str, environ: dict[str, str], system: str, shown: str | None, tmp_path: Path
) -> None:
    variables = bootstrap.surroundings(word, tmp_path, environ, system)
    assert variables.get("QT_QPA_PLATFORM") == shown


@pytest.mark.parametrize("arguments", [[], ["fly"], ["--help"]])
def test_an_unknown_word_gets_one_sentence_and_code_2(
    arguments: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert bootstrap.main(arguments) == 2
    assert capsys.readouterr().err == f"{bootstrap.USAGE}\n"


@pytest.mark.parametrize(
    ("does", "code"),
    [("pass", 1), ("raise SystemExit(3)", 3), ("import os; os.kill(os.getpid(), 15)", 143)],
)
def test_a_failed_check_is_not_lost_behind_passing_tests(does: str, code: int) -> None:
    command = [sys.executable, "-c", does]
    start = f"from app.bootstrap import *; sys.exit(hand_over({command}, os.environ, 1))"
    done = subprocess.run([sys.executable, "-c", start], cwd=bootstrap.ROOT, check=False)
    assert done.returncode == code


def test_it_starts_on_a_python_without_any_package() -> None:
    bare = [sys.executable, "-S", "-m", "app.bootstrap"]
    done = subprocess.run(bare, cwd=bootstrap.ROOT, capture_output=True, text=True, check=False)
    assert done.stderr == f"{bootstrap.USAGE}\n"


def test_a_missing_system_library_is_named_with_its_package() -> None:
    asked = {"libno-such-yarn.so.9": "libno-such-yarn9"}
    assert list(step("try_window").missing(asked)) == [("libno-such-yarn.so.9", "libno-such-yarn9")]


def test_what_it_names_is_understood_by_the_set_up(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    python = tmp_path / "bin/python"
    python.parent.mkdir()
    python.write_text("#!/bin/sh\necho libEGL.so.1 libegl1\necho ImportError: no Qt >&2\nexit 1\n")
    python.chmod(0o755)
    asked: list[tuple[list[str], str]] = []
    monkeypatch.setattr(bootstrap, "get_system_packages", lambda *told: asked.append(told))
    with pytest.raises(SystemExit):
        bootstrap.make_window_possible(tmp_path, os.environ)
    assert asked == [(["libegl1"], "The window needs libEGL.so.1.")]


def test_pip_is_looked_for_where_its_variable_or_its_nearest_file_says(tmp_path: Path) -> None:
    setting = step("bring_pip").setting
    far, near = tmp_path / "far.conf", tmp_path / "near.conf"
    far.write_text("[global]\nindex-url = https://far.example/simple\ncert = /far.pem\n")
    near.write_text("[global]\nindex-url = https://near.example/%7Esimple\n")
    files = [str(far), str(near), str(tmp_path / "missing.conf")]
    variable = {"PIP_INDEX_URL": "https://set.example/simple"}
    assert setting("index-url", {}, files) == "https://near.example/%7Esimple"
    assert setting("cert", {}, files) == "/far.pem"
    assert setting("index-url", variable, files) == variable["PIP_INDEX_URL"]
    assert setting("proxy", {}, files) is None


def test_pips_wheel_is_found_on_the_index_page() -> None:
    bring_pip = step("bring_pip")
    wheel = bring_pip.WHEEL
    page = f'<a href="../../files/a%2Bb/{wheel}#sha256=0&amp;x">{wheel}</a>'
    found = bring_pip.address(page, "https://index.example/simple/pip/")
    assert re.fullmatch(rf"https://index\.example/files/a%2Bb/{wheel}#sha256=0&x", found)
    beside = bring_pip.address("", "https://index.example/simple/pip/")
    assert beside == f"https://index.example/simple/pip/{wheel}"
