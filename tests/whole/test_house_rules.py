"""The house rules, held: small modules that say what they are, each with its test."""

import ast
import re
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
MODULES = sorted(path for path in (ROOT / "app").rglob("*.py") if "_installed" not in path.parts)
TESTS = sorted((ROOT / "tests").rglob("*.py"))

LONGEST_FILE, LONGEST_TEST, LONGEST_FUNCTION = 300, 400, 40
MOST_METHODS, MOST_PARAMETERS = 15, 6

WITHOUT_A_TEST = {
    "app/problems.py": "only words; every test that is refused reads them",
    "app/__main__.py": "starts the program; tested whole, in a process of its own",
    "app/bootstrap.py": "makes the environment before any test can run; CI runs it",
}
"""Modules without a test of the same name, each with its reason."""

MAY_ASK_THE_TIME = ("app/window/", "app/store/book.py", "app/store/opening.py",
                    "app/store/new_migration.py", "app/__main__.py", "app/commands/",
                    "app/bootstrap.py")

OTHERS_WORDS = re.compile(
    r"/work/|/tmp/|trade\.md|design\.md|style\.md|check-values|issue \d|scenario \d|"
    r"\b(?:session|helper|subagent|chatgpt|claude|copilot|openai|anthropic)\b", re.IGNORECASE)
MEANT_OTHERWISE = re.compile(r"scope=.session.|session-scoped|sqlalchemy\.orm.*Session|\bSession\b|"
                             r"\bsession\.py\b|app\.window\.session|window/session")


def name_of(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


def tree_of(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"))


def functions(tree: ast.AST) -> Iterator[ast.FunctionDef | ast.AsyncFunctionDef]:
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            yield node


each_module = pytest.mark.parametrize("path", MODULES, ids=name_of)


@each_module
def test_a_module_says_in_one_line_what_it_is(path: Path) -> None:
    words = ast.get_docstring(tree_of(path))
    assert words
    assert words.splitlines()[0].endswith((".", ":", "`"))


@each_module
def test_a_module_is_read_at_one_sitting(path: Path) -> None:
    assert len(path.read_text(encoding="utf-8").splitlines()) <= LONGEST_FILE


@each_module
def test_a_function_fits_on_one_page(path: Path) -> None:
    long = {node.name: length for node in functions(tree_of(path))
            if (length := (node.end_lineno or 0) - node.lineno + 1) > LONGEST_FUNCTION}
    assert long == {}


@each_module
def test_a_class_does_not_do_everything(path: Path) -> None:
    for node in ast.walk(tree_of(path)):
        if isinstance(node, ast.ClassDef):
            public = [one.name for one in node.body if isinstance(one, ast.FunctionDef)
                      and not one.name.startswith("_")]
            assert len(public) <= MOST_METHODS, node.name


@each_module
def test_what_others_call_says_what_it_does(path: Path) -> None:
    silent = []
    for node in tree_of(path).body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef) and not node.name.startswith("_"):
            inside = node.body if isinstance(node, ast.ClassDef) else []
            silent += [one.name for one in (node, *inside)
                       if isinstance(one, ast.FunctionDef | ast.ClassDef)
                       and not one.name.startswith("_") and not ast.get_docstring(one)
                       and not _overrides(one)]
    assert silent == []


def _overrides(node: ast.FunctionDef | ast.ClassDef) -> bool:
    """Qt's own names (camelCase), properties' setters and overloads need no words of ours."""
    return node.name != node.name.lower() and isinstance(node, ast.FunctionDef) or any(
        "setter" in ast.unparse(one) or "overload" in ast.unparse(one) or "override" in
        ast.unparse(one) for one in node.decorator_list)


@pytest.mark.parametrize("path", [path for path in MODULES if path.name != "__init__.py"],
                         ids=name_of)
def test_a_module_has_its_test(path: Path) -> None:
    inside = path.relative_to(ROOT / "app")
    test = ROOT / "tests" / inside.parent / f"test_{path.name}"
    assert test.exists() is (name_of(path) not in WITHOUT_A_TEST)


@each_module
def test_time_is_handed_in(path: Path) -> None:
    if not name_of(path).startswith(MAY_ASK_THE_TIME):
        asked = [ast.unparse(node) for node in ast.walk(tree_of(path))
                 if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute)
                 and node.func.attr in ("now", "today", "utcnow", "time")
                 and ast.unparse(node.func.value) in ("datetime", "date", "time")]
        assert asked == []


PROBLEMS = ("Refused", "NotFound", "BadInput", "BookBusy", "BookUnusable")


@pytest.mark.parametrize("path", [path for path in MODULES if path.parts[-2] in ("work", "store")],
                         ids=name_of)
def test_whoever_says_no_says_what_to_do(path: Path) -> None:
    mute = [ast.unparse(node) for node in ast.walk(tree_of(path))
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
            and node.func.id in PROBLEMS and len(node.args) < 2
            and not any(isinstance(one, ast.Starred) for one in node.args)]
    assert mute == []


@pytest.mark.parametrize("path", TESTS, ids=name_of)
def test_a_test_is_short_and_its_names_are_sentences(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert len(text.splitlines()) <= LONGEST_TEST
    for node in functions(ast.parse(text)):
        if node.name.startswith("test_"):
            assert node.name.count("_") >= 3, node.name


@pytest.mark.parametrize("path", TESTS, ids=name_of)
def test_no_test_sleeps_or_mocks(path: Path) -> None:
    if path.name != "killing.py":  # the delay before the kill is what it is about
        text = path.read_text(encoding="utf-8")
        assert not re.search(r"^(?:import|from) unittest\.mock|\bMagicMock\(|\btime\.sleep\(", text,
                             re.MULTILINE)


def written_files() -> list[Path]:
    """All text of the tree that is, or will be, kept."""
    told = subprocess.run(["git", "ls-files", "--cached", "--others", "--exclude-standard"],
                          cwd=ROOT, capture_output=True, text=True, check=True).stdout
    kept = (ROOT / line for line in told.splitlines())
    return [path for path in kept if path.is_file() and path.suffix in
            {".py", ".md", ".toml", ".csv", ".yml", ".yaml", ".txt", ".mako", ".cfg", ".ini"}
            and path != Path(__file__)]


def test_the_tree_speaks_of_the_studio_alone() -> None:
    strange = []
    for path in written_files():
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            if OTHERS_WORDS.search(MEANT_OTHERWISE.sub("", line)):
                strange.append(f"{name_of(path)}:{number}: {line.strip()[:80]}")
    assert strange == []
