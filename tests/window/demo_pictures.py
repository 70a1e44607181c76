"""Pictures every bench on the book of the demo studio: python -m tests.window.demo_pictures DIR"""

import shutil
import sys
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory

from PySide6.QtWidgets import QApplication

from app.calculations.codes import Kind, numbered
from app.demo.life import live
from tests.window.pictures import TEXTS, Hands, Pose, benches, cone, save, the_window


def scanned(*codes: str) -> Callable[[Hands], None]:
    """Scan these."""
    return lambda hands: hands.scan(*codes)


def plate(kind: Kind, number: int) -> str:
    """The code on a plate."""
    return numbered(kind, number).text


def half_an_order(hands: Hands) -> None:
    """An order by telephone is placed, and two of its three skeins are taken."""
    hands.press("F4")
    hands.fill("", "Dag Berg", "")
    hands.press("Return")
    hands.fill("Ferry Ledger, Tarnfield 4-ply", "3", "")
    hands.press("Return", "F5")
    hands.scan_tags("2614K14", 2)


POSES = (
    Pose("demo-receiving", "Receiving"),
    Pose("demo-winding", "Winding", scanned(cone(114))),
    Pose("demo-weighing", "Weighing"),
    Pose("demo-pots", "Pots & trays"),
    Pose("demo-washing", "Wash & dry"),
    Pose("demo-finishing", "Finishing"),
    Pose("demo-tagging", "Tagging"),
    Pose("demo-packing", "Packing", half_an_order),
    Pose("demo-counter", "Counter", scanned("2615R6F")),
    Pose("demo-counter-hold", "Counter", scanned("2614Y51")),
    Pose("demo-counter-name", "Counter", lambda hands: hands.ask("sluice")),
    Pose("demo-desk", "Desk", scanned(cone(114))),
    Pose("demo-overdye", "Desk", scanned("2617M9K")),
    Pose("demo-lot", "Desk", scanned("2610X4K")),
)


def pictures(folder: Path, book: Path, wanted: str = "") -> None:
    """Draw the poses whose name begins so, at both text sizes, on copies of this book."""
    folder.mkdir(parents=True, exist_ok=True)
    places, _ = benches()
    with TemporaryDirectory() as made:
        for text, tail in TEXTS.items():
            for pose in (one for one in POSES if one.name.startswith(wanted)):
                copy = Path(made) / f"{pose.name}{tail}.book"
                shutil.copy(book, copy)
                with the_window(copy, text, places, pose.bench) as window:
                    pose.done(Hands(window))
                    save(window, folder / f"{pose.name}{tail}.png")


if __name__ == "__main__":
    QApplication.instance() or QApplication([])
    with TemporaryDirectory() as lived:
        demo = Path(sys.argv[2]) if len(sys.argv) > 2 else Path(lived) / "demo.book"
        if not demo.exists():
            live(demo)
        pictures(Path(sys.argv[1] if len(sys.argv) > 1 else "pictures"), demo, *sys.argv[3:4])
