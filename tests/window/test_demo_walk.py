"""The ten planted cases of the demo are found by doing what the screen says."""

import shutil
from pathlib import Path

from tests.window.demo_walk import CASES, walk


def test_every_planted_case_is_found_by_following_what_the_program_says(
    demo_folder: Path, tmp_path: Path, qapp: object
) -> None:
    book = tmp_path / "walk.book"
    shutil.copy(demo_folder / "quernlow-dyeyard.book", book)
    assert len(CASES) == 10
    walk(book)
