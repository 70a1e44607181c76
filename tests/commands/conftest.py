"""The small studio's book, lived once a run, and a way to say words as the command line does."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from app.__main__ import main
from app.demo import Lived
from tests.commands.said import Said
from tests.small import live_small


@pytest.fixture(scope="session")
def lived(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Lived]:
    """The week of the small studio, once a run."""
    path = tmp_path_factory.mktemp("lived") / "studio.book"
    return path, live_small(path)


@pytest.fixture
def studio_book(lived: tuple[Path, Lived], tmp_path: Path,
                monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of the studio's book, which the environment names."""
    path = tmp_path / "studio.book"
    shutil.copy(lived[0], path)
    monkeypatch.setenv("CONETRAIL_BOOK", str(path))
    return path


@pytest.fixture
def say(capsys: pytest.CaptureFixture[str]) -> Callable[..., Said]:
    """Say words; what came of it."""
    def said(*words: object) -> Said:
        code = main([str(word) for word in words])
        return Said(code, *capsys.readouterr())
    return said
