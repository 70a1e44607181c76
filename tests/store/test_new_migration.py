"""The developers' tool writes a next step that says what the records say."""

import shutil
from pathlib import Path

import pytest

from app import paths
from app.store.new_migration import new_migration
from tests.store.test_upgrade import HEAD


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of the migrations."""
    copied = tmp_path / "migrations"
    shutil.copytree(paths.MIGRATIONS, copied)
    monkeypatch.setattr(paths, "MIGRATIONS", copied)
    return copied


def test_what_the_records_say_more_becomes_the_next_step(folder: Path) -> None:
    first = next((folder / "versions").glob("0001_*.py"))
    swatch = '        sa.Column("swatch", sa.Text(), nullable=True),\n'
    first.write_text(first.read_text(encoding="utf-8").replace(swatch, ""), encoding="utf-8")
    number = new_migration("the swatch of a colourway")
    assert number == f"{int(HEAD or 0) + 1:04}"
    (script,) = (folder / "versions").glob(f"{number}_*.py")
    assert script.name == f"{number}_the_swatch_of_a_colourway.py"
    assert "batch_op.add_column(sa.Column('swatch', sa.Text(), nullable=True))" in (
        script.read_text(encoding="utf-8")
    )


def test_where_nothing_changed_the_step_is_empty(folder: Path) -> None:
    number = new_migration("nothing")
    (script,) = (folder / "versions").glob(f"{number}_*.py")
    assert "op." not in script.read_text(encoding="utf-8")
