"""Pictures every bench on the book of the demo studio: python -m tests.window.demo_pictures DIR"""

import shutil
import sys
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory

from PySide6.QtWidgets import QApplication

from app.calculations.codes import Kind, numbered
from app.demo.life import live
from app.lookups.things import by_name
from tests.window.pictures import TEXTS, Hands, Pose, benches, cone, count, save, the_window


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


def drifting(hands: Hands) -> None:
    """The newest lot of the colourway that is held against the last lot only."""
    hands.ask(hands.window.session.ask(by_name, "Brickyard Cat", 1)[0].code)


def kits_of(asked: int) -> Callable[[Hands], None]:
    """The kit in hand, so many of it asked for."""
    return lambda hands: (hands.press("F5", "Return"), hands.fill(str(asked)),
                          hands.press("Return"))


def a_bag(hands: Hands) -> None:
    """A bag is half filled."""
    hands.press("F5", "Return")
    hands.scan_tags("2614K14", 2)
    hands.scan_tags("2609M2M", 1)


POSES = (
    Pose("demo-receiving", "Receiving"),
    Pose("demo-winding", "Winding", scanned(cone(114))),
    Pose("demo-weighing", "Weighing"),
    Pose("demo-pots", "Pots & trays"),
    Pose("demo-washing", "Wash & dry"),
    Pose("demo-inspecting", "Inspecting", scanned("2612F5F")),
    Pose("demo-inspecting-drift", "Inspecting", drifting),
    Pose("demo-shades", "Inspecting", lambda hands: (
        hands.scan("2612F5F"), hands.press("F10"), hands.scan(count(1)))),
    Pose("demo-shades-two-pots", "Inspecting", lambda hands: (
        hands.scan("2614K14"), hands.press("F10"), hands.press("W"))),
    Pose("demo-finishing", "Finishing"),
    Pose("demo-tagging", "Tagging"),
    Pose("demo-packing", "Packing", half_an_order),
    Pose("demo-kits", "Packing", lambda hands: hands.press("F5")),
    Pose("demo-kit", "Packing", kits_of(12)),
    Pose("demo-kit-bag", "Packing", a_bag),
    Pose("demo-kit-scanned", "Packing", scanned(plate(Kind.KIT, 5))),
    Pose("demo-kit-written", "Packing", lambda hands: hands.press("F5", "Return", "F4")),
    Pose("demo-counter", "Counter", scanned("2615R6F")),
    Pose("demo-counter-hold", "Counter", scanned("2614Y51")),
    Pose("demo-counter-name", "Counter", lambda hands: hands.ask("sluice")),
    Pose("demo-counter-ways", "Counter", scanned("2615R6F", count(2))),
    Pose("demo-desk", "Desk", scanned(cone(114))),
    Pose("demo-desk-shades", "Desk", lambda hands: (hands.scan("2614M32"), hands.press("S"))),
    Pose("demo-trail", "Desk", lambda hands: (hands.scan(cone(114)), hands.press("T"))),
    Pose("demo-trail-jar", "Desk", lambda hands: (hands.scan(plate(Kind.JAR, 7)),
                                                  hands.press("T", "0"))),
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
