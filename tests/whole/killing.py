"""Deeds killed in the middle, again and again: run as a program of its own, so that it may fork.

The parent opens nothing in SQLite. Every child looks at what the one before left, goes on with
deeds, and is killed at a random moment of one of them.
"""

import json
import os
import random
import signal
import sys
import time
from collections import Counter
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

from sqlalchemy import select

from app.records import DeedRow, Draw, Yarn
from app.store.book import Book
from app.store.deed import By
from app.store.journal import verify
from app.store.opening import open_book
from app.work.winding import Drawn, Wound, wind

BY = By("WN", "winding")
REEL = [Wound((Drawn(1, 1_237_500),), 3, "skein", tie) for tie in ("red", "blue")]
ROWS = 4  # two groups and two draws


def live(path: Path, name: str, tell: int) -> None:
    """A child's life: look, then wind and wind, and tell when each deed begins and is saved."""
    with closing(open_book(path)) as book:
        os.write(tell, f"looked {json.dumps(look(book))}\n".encode())
        for number in range(1000):
            token = f"{name}-{number}"
            os.write(tell, f"begun {token}\n".encode())
            book.do(wind, REEL, by=BY, token=token)
            os.write(tell, f"saved {token}\n".encode())


def look(book: Book) -> dict[str, int]:
    """The deeds that are there, each with the number of its rows; all fits the journal."""
    book.ask(verify)
    with book.reading() as view:
        tokens = dict(view.execute(select(DeedRow.seq, DeedRow.token)).all())
        rows = Counter[int](view.execute(select(Yarn.deed)).scalars().all())
        rows.update(view.execute(select(Draw.deed)).scalars().all())
    return {token: rows.pop(seq, 0) for seq, token in tokens.items() if token[0] == "k"} | {
        f"no deed {seq}": count for seq, count in rows.items()}


def told(hear: int) -> Iterator[list[str]]:
    """What a child tells, line by line, until it ends."""
    rest = b""
    while part := os.read(hear, 65536):
        *lines, rest = (rest + part).split(b"\n")
        yield from (line.decode().split(maxsplit=1) for line in lines)
    os.close(hear)


class Story:
    """What the children told, and what of it is not so."""

    def __init__(self, path: Path, seed: int) -> None:
        self.path, self.dice = path, random.Random(seed)
        self.begun, self.saved, self.there = set[str](), set[str](), dict[str, int]()
        self.faults, self.took_s = list[str](), 0.02

    def one_more(self, name: str) -> None:
        """A child lives until the middle of its first, second or third deed."""
        hear, tell = os.pipe()
        pid = os.fork()
        if pid == 0:
            os.close(hear)
            try:
                live(self.path, name, tell)
            finally:
                os._exit(1)
        os.close(tell)
        self.hear(pid, told(hear), deeds=self.dice.randint(0, 2))
        os.waitpid(pid, 0)

    def hear(self, pid: int, lines: Iterator[list[str]], deeds: int) -> None:
        """Listen until so many deeds were saved, wait a little, and kill."""
        since = time.perf_counter()
        for word, rest in lines:
            if word == "looked":
                self.compare(json.loads(rest))
            elif word == "begun":
                self.begun.add(rest)
                since = time.perf_counter()
                if rest.endswith(f"-{deeds}"):
                    time.sleep(self.dice.uniform(0, 1.3 * self.took_s))
                    os.kill(pid, signal.SIGKILL)
            else:
                self.saved.add(rest)
                self.took_s += 0.1 * (time.perf_counter() - since - self.took_s)

    def compare(self, there: dict[str, int]) -> None:
        """Whole deeds are there, all that were told as saved, and nothing else."""
        self.there = there
        self.faults += [f"{token}: told as saved, and gone" for token in self.saved - set(there)]
        self.faults += [f"{token}: there, and never begun" for token in set(there) - self.begun]
        self.faults += [f"{token}: {rows} rows" for token, rows in there.items() if rows != ROWS]


def main(path: Path, kills: int, seed: int) -> None:
    """Kill so many children; print the counts, and what was not as it must be."""
    story = Story(path, seed)
    for kill in range(kills + 1):  # the last one looks at what the last kill left
        story.one_more(f"k{kill}")
    before = {token for token in story.begun if not token.startswith(f"k{kills}-")}
    print(json.dumps({  # noqa: T201
        "kills": kills, "begun": len(before), "saved": len(story.there),
        "saved, but killed before it could tell": len(set(story.there) - story.saved),
        "gone whole": len(before - set(story.there)), "faults": story.faults[:5]}))


if __name__ == "__main__":
    main(Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3]))
