"""Draws the window and its parts to pictures: python -m tests.window.gallery FOLDER"""

import os
import sys
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QCoreApplication, QEvent  # noqa: E402
from PySide6.QtTest import QTest  # noqa: E402
from PySide6.QtWidgets import QApplication, QVBoxLayout, QWidget  # noqa: E402

from app.problems import NotFound  # noqa: E402
from app.window.computer_settings import ComputerSettings  # noqa: E402
from app.window.look.icons import Icon  # noqa: E402
from app.window.look.look import Gap, Look, Size  # noqa: E402
from app.window.look.stylesheet import wear  # noqa: E402
from app.window.main_window import MainWindow  # noqa: E402
from app.window.parts.card import Actions, Card, SideBySide  # noqa: E402
from app.window.parts.count_pad import CountPad  # noqa: E402
from app.window.parts.fields import CountField, GramsField  # noqa: E402
from app.window.parts.findings import Finding, Findings  # noqa: E402
from app.window.parts.hold_plate import HoldLine, HoldPlate  # noqa: E402
from app.window.parts.key_button import KeyButton  # noqa: E402
from app.window.parts.swatch import Swatch, Zone  # noqa: E402
from app.window.parts.tie_patch import TiePatch  # noqa: E402
from app.window.parts.words import BigNumber, CodeWords, FactLine  # noqa: E402
from app.window.parts.yarn_trail import YarnTrail  # noqa: E402
from tests.window.example_benches import LotBench, ReelBench  # noqa: E402
from tests.window.fakes import a_place, a_session  # noqa: E402
from tests.window.stops import Station  # noqa: E402

CERTAIN = (
    Station("delivery", "14 Mar", "24 cones"),
    Station("cone", "C·0121·4", "13 of 13"),
    Station("bundle", "disc 044", "6 + 6", "one of a pool", "one of two, 6 + 6"),
    Station("dye lot", "26·15·R6F", "12 skeins", held="here", here=True),
    Station("wash", "W-231", "with 1 lot", "partly", "62 % / 38 %", held="below"),
    Station("pile", "16 Apr", "12 counted", held="below"),
    Station("tags", "12 of 12", "tied on", "not known", "before our time"),
    Station("customers", "7 sold", "to 4"),
)

RAIL = (
    ("Receiving", Icon.CONE),
    ("Winding", Icon.REEL),
    ("Weighing", Icon.BALANCE),
    ("Pots & trays", Icon.POT),
    ("Wash & dry", Icon.RAIL),
    ("Finishing", Icon.SCISSORS),
    ("Tagging", Icon.TAG),
    ("Packing", Icon.PARCEL),
    ("Counter", Icon.COUNTER),
    ("Desk", Icon.DESK),
)


def parts() -> QWidget:
    """One of every part on a bench."""
    page = QWidget()
    page.setProperty("ground", "surround")
    column = QVBoxLayout(page)
    column.setContentsMargins(Gap.PART, Gap.PART, Gap.PART, Gap.PART)
    column.setSpacing(Gap.PART)
    trail = YarnTrail()
    trail.show_stations(CERTAIN)
    findings = Findings()
    findings.show_findings(
        [
            Finding("The load mixes a pale lot with a bleeding red.", ("Leave it out", "Go on")),
            Finding("97 g is under the tolerance of 3 %.", ("Sell as 97 g", "Seconds")),
        ]
    )
    colours = Card("Colours")
    half_tide = [
        Zone("#B3D0CE", 45),
        Zone("#1B856E", 35),
        Zone("#E5DDCB", 12),
        Zone("#1D1816", 0.08, speckle=True),
    ]
    colours.add_row(Swatch([Zone("#1B856E")]), Swatch(half_tide), Swatch(), None)
    colours.add_row(
        TiePatch("red", "#C2272D", Size.LARGE),
        TiePatch("yellow", "#E8B500", Size.LARGE),
        TiePatch("white", "#F4F2EC", Size.LARGE),
        None,
    )
    colours.add_row(HoldPlate(), HoldPlate(here=False), HoldPlate(size=Size.TITLE), None)
    colours.add(HoldLine("Oil stain on cone C·0114·F; ask OW before anything is sold."))
    words = Card("Words", in_hand=True)
    words.add(FactLine("colourway", "Plum Stone in a Pocket"), FactLine("base", "Tarnfield 4-ply"))
    words.add(CodeWords("26·15·R6F", Size.TITLE))
    words.add(BigNumber("2.408", "g wanted", "2.36 to 2.46 is good"))
    words.add(BigNumber("12", "skeins left to sell"))
    fields = Card("Fields")
    grams, count = GramsField("Gross weight"), CountField("Skeins")
    grams.line.setText("1,462")
    grams.value()
    count.line.setText("12")
    fields.add(grams, count)
    keys = Card("Keys")
    keys.add(Actions(KeyButton("Put by", "F5", strong=True), KeyButton("Sell", "F6")))
    refused = KeyButton("Print one more tag", "F7")
    refused.refuse("12 of 12 are printed: say first which one is spoiled.")
    keys.add(Actions(refused))
    pad = CountPad("red ties", columns=10)
    pad._keys.button(8).setChecked(True)
    keys.add(pad)
    for widget in (trail, findings, SideBySide(colours, words), SideBySide(fields, keys)):
        column.addWidget(widget)
    column.addStretch(1)
    return page


def window(folder: Path, bench, **settings) -> MainWindow:
    """The whole window with one bench open."""
    path = folder / "settings.ini"
    path.unlink(missing_ok=True)
    kept = ComputerSettings(path)
    kept.person, kept.station = "SK", "till"
    for name, value in settings.items():
        setattr(kept, name, value)
    places = [
        a_place(bench, title, icon=icon, number=number, apart=number > 8, finds=number == 9)
        for number, (title, icon) in enumerate(RAIL, 1)
    ]
    shown = MainWindow(kept, places, a_session)
    shown.show()
    while shown.session is None or shown.background.jobs():
        QTest.qWait(10)
    return shown


def settle() -> None:
    """Let all layouts come to rest."""
    for _ in range(5):
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
        QApplication.processEvents()


def main(folder: Path) -> None:
    """Draw all pictures into the folder."""
    folder.mkdir(parents=True, exist_ok=True)
    app = QApplication.instance() or QApplication([])
    for text, tail in ((1.0, ""), (2.0, "-200")):
        wear(app, Look(text=text))
        page = parts()
        page.resize(1280, 800)
        page.show()
        settle()
        page.resize(1280, page.heightForWidth(1280))
        settle()
        page.grab().save(str(folder / f"parts{tail}.png"))
        page.close()
        for name, bench, number in (("lot", LotBench, 8), ("reel", ReelBench, 1)):
            shown = window(folder, bench, text=text)
            shown.floor.open_place(shown.floor.places[number])
            QTest.qWait(50)
            if name == "lot":
                shown.floor.bench().put_by.click()
                while shown.background.jobs():
                    QTest.qWait(10)
                shown.head.scan_line.setText("2615R6F")
            settle()
            shown.grab().save(str(folder / f"{name}{tail}.png"))
            if name == "reel":
                shown.floor.trouble(
                    NotFound("26·15·R6F is a lot, and this bench has no use for it."), "Show it"
                )
                shown.floor.sign_on.open("till")
                settle()
                shown.grab().save(str(folder / f"strips{tail}.png"))
            shown.close()
    shown = window(folder, LotBench, evening=True)
    shown.floor.open_place(shown.floor.places[8])
    QTest.qWait(50)
    settle()
    shown.grab().save(str(folder / "evening.png"))
    shown.close()
    (folder / "first.ini").unlink(missing_ok=True)
    kept = ComputerSettings(folder / "first.ini")
    shown = MainWindow(kept, [a_place(LotBench, icon=Icon.CONE)], lambda: a_session(people=()))
    shown.show()
    while shown.session is None:
        QTest.qWait(10)
    settle()
    shown.grab().save(str(folder / "first.png"))
    shown.close()
    (folder / "settings.ini").unlink(missing_ok=True)


if __name__ == "__main__":
    main(Path(sys.argv[1] if len(sys.argv) > 1 else "gallery"))
