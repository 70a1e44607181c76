"""The power fails in the middle of a deed, two hundred times: it is there wholly or not at all."""

import json
import os
import shutil
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest

from app.store.book import Book
from tests.makers import Clock, Studio

ROOT = Path(__file__).resolve().parents[2]
KILLS = 200


@pytest.mark.long
@pytest.mark.skipif(not hasattr(os, "fork"), reason="this system has no fork")
def test_a_deed_that_is_killed_is_there_wholly_or_not_at_all(
    studio_file: Path, tmp_path: Path
) -> None:
    path = tmp_path / "killed.book"
    shutil.copy(studio_file, path)
    with closing(Book(path, Clock())) as book:
        Studio(book, furnished=True).cone()
    done = subprocess.run(
        [sys.executable, "-m", "tests.whole.killing", str(path), str(KILLS), "7"], cwd=ROOT,
        capture_output=True, text=True, check=False, timeout=300)
    assert done.returncode == 0, done.stderr
    told = json.loads(done.stdout)
    print(told)  # noqa: T201
    assert told.pop("faults") == []
    assert told["kills"] == KILLS
    assert told["begun"] == told["saved"] + told["gone whole"]
    assert told["gone whole"] > KILLS / 10, "the kills must fall into the deeds"
    assert told["saved"] > KILLS / 10
