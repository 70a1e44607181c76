"""One station that sells, takes back and sells again: run as a program of its own, beside another.

It prints what it was told as done, and every sentence it was refused with.
"""

import json
import random
import sys
from collections import Counter
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path
from time import perf_counter

from sqlalchemy import select

from app.problems import Problem
from app.records import Whereabouts
from app.store.book import Book
from app.store.deed import By
from app.work.moving import To, move
from app.work.returning import came_back
from app.work.selling import sell

BEGAN = datetime(2026, 5, 1, 8, tzinfo=UTC)


def clock() -> datetime:
    """Later than the book that both were given."""
    return BEGAN + timedelta(seconds=perf_counter())


def shop(path: Path, name: str, seconds: float, shelf: int) -> dict[str, object]:
    """What one station did in so many seconds."""
    dice, sold, said, refused = random.Random(name), list[list[int]](), Counter[str](), set[str]()
    by, until = By("OW", name), perf_counter() + seconds
    with closing(Book(path, clock)) as book:
        with book.reading() as view:
            skeins = view.execute(select(Whereabouts.yarn).distinct()
                                  .order_by(Whereabouts.yarn)).scalars().all()
        while perf_counter() < until:
            skein = dice.choice(skeins)
            try:
                if dice.random() < 0.5:
                    done = book.do(sell, [skein], by=by)
                    sold.append([skein, done.seq])
                    said["sold"] += 1
                else:
                    book.do(came_back, [skein], by=by)
                    book.do(move, [skein], To("shelf", place=shelf), by=by)
                    said["brought back"] += 1
            except Problem as problem:
                said["refused"] += 1
                refused.add(problem.what)
    return {"sold": sold, "said": dict(said), "refused": sorted(refused)}


if __name__ == "__main__":
    print(json.dumps(shop(Path(sys.argv[1]), sys.argv[2], float(sys.argv[3]),  # noqa: T201
                          int(sys.argv[4]))))
