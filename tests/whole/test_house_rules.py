"""The house rules, held: small modules that say what they are, each with its test."""

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
MODULES = sorted(path for path in (ROOT / "app").rglob("*.py") if "_installed" not in path.parts)
TESTS = sorted((ROOT / "tests").rglob("*.py"))

LONGEST_FILE, LONGEST_TEST, LONGEST_FUNCTION, MOST_METHODS = 300, 400, 40, 15

WITHOUT_A_TEST = {
    "app/problems.py": "only words; every test that is refused reads them",
    "app/paths.py": "three paths; every test that makes a book or a page goes by them",
}
"""Modules without a test of the same name, each with its reason."""

BENCH = re.compile(r"app/window/benches/(\w+)/\w+\.py")
"""The parts of a bench are tested together, as a person works at it."""

MAY_ASK_THE_TIME = ("app/window/", "app/store/book.py", "app/store/opening.py",
                    "app/store/new_migration.py", "app/__main__.py", "app/commands/",
                    "app/bootstrap.py")
CLOCKS = {("datetime", "now"), ("datetime", "utcnow"), ("datetime", "today"), ("date", "today"),
          ("time", "time")}
PROBLEMS = {"Refused", "NotFound", "BadInput", "BookBusy", "BookUnusable"}

STRANGE = re.compile(
    r"(?<!\w)/(?:work|tmp)/|\b(?:trade|design|style|check-values|record-model)\.md|"
    r"\bissue #?\d|\bscenario \d|\b(?:subagent|chatgpt|claude|copilot|openai|anthropic)\b",
    re.IGNORECASE)


def name_of(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


@cache
def text_of(path: Path) -> str:
    return path.read_text(encoding="utf-8")


@cache
def tree_of(path: Path) -> ast.Module:
    return ast.parse(text_of(path))


def functions(path: Path) -> Iterator[ast.FunctionDef | ast.AsyncFunctionDef]:
    for node in ast.walk(tree_of(path)):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            yield node


def calls(path: Path) -> Iterator[ast.Call]:
    return (node for node in ast.walk(tree_of(path)) if isinstance(node, ast.Call))


def test_every_module_says_in_its_first_line_what_it_is() -> None:
    assert [name_of(path) for path in MODULES
            if not (ast.get_docstring(tree_of(path)) or "").split("\n")[0].endswith((".", "?"))
            ] == []


def test_every_module_is_read_at_one_sitting() -> None:
    assert {name_of(path): length for path in MODULES
            if (length := len(text_of(path).splitlines())) > LONGEST_FILE} == {}


def test_every_function_fits_on_one_page() -> None:
    assert {f"{name_of(path)} {node.name}": length for path in MODULES for node in functions(path)
            if (length := (node.end_lineno or 0) - node.lineno + 1) > LONGEST_FUNCTION} == {}


def test_no_class_does_everything() -> None:
    assert {f"{name_of(path)} {node.name}": len(public)
            for path in MODULES for node in ast.walk(tree_of(path))
            if isinstance(node, ast.ClassDef) and len(public := [
                one for one in node.body if isinstance(one, ast.FunctionDef)
                and not one.name.startswith("_")]) > MOST_METHODS} == {}


def test_whatever_another_module_may_use_says_what_it_does() -> None:
    assert [f"{name_of(path)} {node.name}" for path in MODULES for node in tree_of(path).body
            if isinstance(node, ast.FunctionDef | ast.ClassDef)
            and not node.name.startswith("_") and not ast.get_docstring(node)] == []


def test_every_module_has_its_test() -> None:
    assert [name_of(path) for path in MODULES
            if path.name != "__init__.py" and not _tests_of(path)] == sorted(WITHOUT_A_TEST)


def _tests_of(path: Path) -> list[Path]:
    inside = path.relative_to(ROOT / "app")
    named = sorted((ROOT / "tests" / inside.parent).glob(f"test_{path.stem.strip('_')}.py"))
    if bench := BENCH.fullmatch(name_of(path)):
        named += sorted((ROOT / "tests/window/benches").glob(f"test_{bench[1]}*.py"))
    return named


def test_time_is_handed_in() -> None:
    assert [f"{name_of(path)}:{node.lineno}" for path in MODULES for node in calls(path)
            if not name_of(path).startswith(MAY_ASK_THE_TIME)
            and isinstance(node.func, ast.Attribute) and isinstance(node.func.value, ast.Name)
            and (node.func.value.id, node.func.attr) in CLOCKS] == []


def test_whoever_says_no_at_the_desk_says_what_to_do() -> None:
    desk = [path for path in MODULES if path.parent.name in ("work", "store")]
    assert [f"{name_of(path)}:{node.lineno}" for path in desk for node in calls(path)
            if isinstance(node.func, ast.Name) and node.func.id in PROBLEMS
            and len(node.args) + len(node.keywords) < 2
            and not any(isinstance(one, ast.Starred) for one in node.args)] == []


def test_every_step_of_the_books_shape_is_tried_by_an_old_book() -> None:
    steps = sorted(path.name[:4] for path in (ROOT / "migrations" / "versions").glob("0*.py"))
    books = {path.stem for path in (ROOT / "tests" / "old_books").glob("*.book")}
    assert set(steps) <= books


def test_tests_are_short_and_their_names_are_sentences() -> None:
    assert {name_of(path): length for path in TESTS
            if (length := len(text_of(path).splitlines())) > LONGEST_TEST} == {}
    assert [f"{name_of(path)} {node.name}" for path in TESTS for node in functions(path)
            if node.name.startswith("test_") and node.name.count("_") < 3] == []


def test_no_test_sleeps_or_mocks() -> None:
    forbidden = re.compile(r"^(?:import|from) unittest|\bMagicMock\(|\btime\.sleep\(", re.MULTILINE)
    assert [name_of(path) for path in TESTS if path.name != "killing.py"  # it must wait to kill
            and forbidden.search(text_of(path))] == []


MADE = {".git", ".venv", "__pycache__", ".hypothesis", ".pytest_cache", ".mypy_cache",
        ".ruff_cache", ".import_linter_cache", "build", "dist", "conetrail-demo"}
"""What tools leave in the folder; it is not part of the project."""


def test_the_tree_speaks_of_the_studio_alone() -> None:
    kept = [path for path in sorted(ROOT.rglob("*")) if path.is_file()
            and not any(part in MADE or part.endswith(".egg-info")
                        for part in path.relative_to(ROOT).parts)
            and path.suffix in {".py", ".md", ".toml", ".csv", ".yml", ".yaml", ".txt", ".mako"}]
    assert len(kept) > len(MODULES)
    assert [f"{name_of(path)}:{number}: {line.strip()[:80]}" for path in kept
            for number, line in enumerate(text_of(path).splitlines(), 1)
            if path != Path(__file__) and STRANGE.search(line)] == []
