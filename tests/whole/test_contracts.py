"""Each rule of who may import whom is broken once on purpose, and is seen to go red."""

import os
import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
CONTRACTS = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["tool"][
    "importlinter"]["contracts"]

BROKEN = {
    "Layers: each folder imports only from folders below it":
        ("app/scanning/keystrokes.py", "import app.work.studio"),
    "Only app.window and app.__main__ know Qt":
        ("app/lookups/walks.py", "import PySide6.QtCore"),
    "Calculations know neither database, Qt nor paper":
        ("app/calculations/units.py", "import sqlalchemy"),
    "Window and documents never speak SQL themselves":
        ("app/documents/signs.py", "import sqlite3"),
    "Only documents draw on paper":
        ("app/work/winding.py", "import reportlab.pdfgen"),
    "Benches do not import one another":
        ("app/window/benches/zz_one/__init__.py", "import app.window.benches.zz_other"),
    "The bootstrap stands on the standard library alone":
        ("app/bootstrap.py", "import sqlalchemy"),
    "No import cycles between neighbours":
        ("app/records/base.py", "import app.records.yarn"),
}
NEW_FOLDERS = ("app/window/benches/zz_one", "app/window/benches/zz_other")


def broken_contracts(root: Path) -> set[str]:
    """Names of the contracts that the checker reports as broken."""
    done = subprocess.run(
        [sys.executable, "-c", "from importlinter.cli import lint_imports_command as c; c()",
         "--no-cache"], cwd=root, capture_output=True, text=True, check=False, timeout=120,
        env={**os.environ, "PYTHONPATH": str(root), "PYTHONIOENCODING": "utf-8", "COLUMNS": "400",
             "PYTHONDONTWRITEBYTECODE": "1"})
    told = done.stdout + done.stderr
    assert "KEPT" in told or "BROKEN" in told, told
    return {line.removesuffix("BROKEN").strip() for line in told.splitlines()
            if line.strip().endswith("BROKEN")}


@pytest.fixture(scope="module")
def copy(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the program, where rules may be broken."""
    root = tmp_path_factory.mktemp("broken")
    shutil.copytree(ROOT / "app", root / "app", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(ROOT / "pyproject.toml", root / "pyproject.toml")
    for folder in NEW_FOLDERS:
        (root / folder).mkdir(parents=True)
        (root / folder / "__init__.py").write_text('"""A bench of the test."""\n')
    return root


def test_every_contract_is_broken_once_here() -> None:
    assert {contract["name"] for contract in CONTRACTS} == set(BROKEN)


def test_the_program_keeps_them_all() -> None:
    assert broken_contracts(ROOT) == set()


def test_a_new_folder_must_be_given_its_place(copy: Path) -> None:
    (copy / "app" / "somewhere").mkdir()
    (copy / "app" / "somewhere" / "__init__.py").write_text('"""Nowhere."""\n')
    try:
        assert "Layers: each folder imports only from folders below it" in broken_contracts(copy)
    finally:
        shutil.rmtree(copy / "app" / "somewhere")


@pytest.mark.parametrize("name", BROKEN)
def test_one_line_that_breaks_a_rule_is_seen(copy: Path, name: str) -> None:
    path, line = BROKEN[name]
    before = (copy / path).read_text(encoding="utf-8")
    (copy / path).write_text(f"{before}\n{line}\n", encoding="utf-8")
    try:
        assert broken_contracts(copy) == {name}
    finally:
        (copy / path).write_text(before, encoding="utf-8")
