"""Two stations sell from one book at once: nothing is sold twice, lost, or refused without a word.

Fifteen seconds are enough: in that time each station meets the other some hundred times.
"""

import json
import shutil
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest
from sqlalchemy import select

from app.records import DeedRow, Whereabouts
from app.store.book import Book
from app.store.journal import verify
from tests.lookups.shop import shelved
from tests.makers import Clock, Studio
from tests.sums import adds_up

ROOT = Path(__file__).resolve().parents[2]
SECONDS, SKEINS = 60, 8


@pytest.mark.long
def test_two_stations_never_sell_one_skein_twice(studio_file: Path, tmp_path: Path) -> None:
    path = tmp_path / "shared.book"
    shutil.copy(studio_file, path)
    with closing(Book(path, Clock())) as book:
        studio = Studio(book, furnished=True)
        shelved(studio, SKEINS)
        shelf = book.ask(lambda c: c.execute(select(Whereabouts.place).where(
            Whereabouts.place.is_not(None))).scalars().first())
    stations = [
        subprocess.Popen([sys.executable, "-m", "tests.whole.selling_together", str(path), name,
                          str(SECONDS), str(shelf)], cwd=ROOT, stdout=subprocess.PIPE,
                         stderr=subprocess.PIPE, text=True)
        for name in ("counter", "packing")]
    told = []
    for station in stations:
        out, error = station.communicate(timeout=240)
        assert station.returncode == 0, error
        told.append(json.loads(out))
    print([one["said"] for one in told])  # noqa: T201
    _each_sale_is_there_once(path, [tuple(sale) for one in told for sale in one["sold"]])
    for one in told:
        assert one["said"]["sold"] > 2, "each must get on, however busy the machine is"
        assert one["said"]["refused"] > 0, "the two must meet"
        assert all(words.endswith(".") and " saved" in words for words in one["refused"])


def _each_sale_is_there_once(path: Path, sold: list[tuple[int, int]]) -> None:
    """What the stations were told is what the book holds, no more and no less."""
    with closing(Book(path, Clock())) as book, book.reading() as view:
        rows = view.execute(
            select(Whereabouts.yarn, Whereabouts.deed, Whereabouts.state, Whereabouts.since,
                   Whereabouts.until).where(Whereabouts.struck.is_(None))
            .order_by(Whereabouts.yarn, Whereabouts.deed)).all()
        assert sorted((row.yarn, row.deed) for row in rows if row.state == "sent") == sorted(sold)
        for skein in {row.yarn for row in rows}:
            stays = [row for row in rows if row.yarn == skein]
            assert [stay.until for stay in stays[:-1]] == [stay.since for stay in stays[1:]]
            assert stays[-1].until is None
            states = [stay.state for stay in stays]
            assert ("sent", "sent") not in set(zip(states, states[1:], strict=False))
        seqs = view.execute(select(DeedRow.seq).order_by(DeedRow.seq)).scalars().all()
        assert list(seqs) == list(range(1, len(seqs) + 1))
        verify(view)
        adds_up(view)
