"""The plate that is scanned at set-up: it shows whether a scanner types what it reads.

A scanner types like a keyboard. With another country's layout, Caps Lock or a prefix of its own it
types other letters than it read, and every later scan would be wrong.
"""

from dataclasses import dataclass
from difflib import SequenceMatcher

from app.documents.paper import Paper
from app.documents.proof import Due, prove
from app.documents.sheet import LEFT, RIGHT
from app.documents.square_codes import Symbol
from app.documents.typesetting import Face, Type

SCANNER_TEST_TEXTS = ("ABCDEFGHI-012", "JKLMNOPQR-345", "STUVWXYZ-6789", "YZ-07")
"""What the four codes hold: together every letter, digit and the dash of the studio's codes."""

_DPI = 300
_SYMBOLS = (Symbol.QR, Symbol.QR, Symbol.QR, Symbol.DATA_MATRIX)
_HOW_TO = (
    "Open the scanner check in Conetrail, scan the four codes in any order, and compare.",
    "If the screen says that all is right, hang this page by the station and go on.",
)
_CURES = (
    (
        "Nothing appears",
        "The scanner is not paired, or reads bar codes only: it must read QR and "
        "Data Matrix, and be set to type as a keyboard.",
    ),
    (
        "Other letters",
        "Y for Z, A for Q, or another sign for the dash: scanner and computer have "
        "different keyboard layouts. Set the scanner to the computer’s, by its own booklet.",
    ),
    ("Small letters", "Caps Lock is on, or the scanner changes the case: switch it off."),
    (
        "More at the ends",
        "The scanner adds a prefix or suffix. One prefix a scanner is welcome if "
        "it is entered in the scanner check; everything else is switched off.",
    ),
    ("Letters missing", "The scanner types too fast: set a pause of 5 to 10 ms between keys."),
)


@dataclass(frozen=True, slots=True)
class ScannerVerdict:
    """Whether a scan of the test plate came through, and what to say about it."""

    right: bool
    expected: str
    says: str


def judge_scan(typed: str) -> ScannerVerdict:
    """What came from the scanner, compared with the test text it is most likely to be."""
    expected = max(SCANNER_TEST_TEXTS, key=lambda text: _alike(typed, text))
    if typed == expected:
        return ScannerVerdict(True, expected, f"{expected} came through as printed.")
    return ScannerVerdict(False, expected, _what_is_wrong(typed, expected))


def scanner_test_plate() -> bytes:
    """One page to scan at set-up: four codes with their words, and what to do if others appear."""
    paper = Paper("Scanner check", dpi=_DPI)
    paper.text(LEFT, 24, "Scanner check", Type(26, Face.BOLD))
    for n, words in enumerate(_HOW_TO):
        paper.text(LEFT, 34 + 5.8 * n, words, Type(12), room=RIGHT - LEFT)
    for n, (text, symbol) in enumerate(zip(SCANNER_TEST_TEXTS, _SYMBOLS, strict=True)):
        _draw_test(paper, LEFT + 92 * (n % 2), 52 + 48 * (n // 2), text, symbol)
    y = paper.lines(LEFT, 158, "If the screen shows something else", Type(13, Face.BOLD), 176, 8)
    for symptom, cure in _CURES:
        paper.text(LEFT, y, symptom, Type(10, Face.BOLD))
        y = paper.lines(62, y, cure, Type(10), RIGHT - 62, 4.8) + 2.4
    pdf = paper.pdf("Tell whoever looks after Conetrail.")
    prove(pdf, [[Due(text, box) for text, box in page] for page in paper.codes], _DPI)
    return pdf


def _draw_test(paper: Paper, x: float, y: float, text: str, symbol: Symbol) -> None:
    least_mm, name = (1.2, "QR") if symbol is Symbol.QR else (2.2, "Data Matrix")
    dark = paper.code((x + 27, y + 33), text, symbol, least_mm)
    paper.text(x + 38, dark.top + 3, name, Type(10))
    paper.text(x + 38, dark.top + 11, text, Type(13, Face.CODE_BOLD))


def _alike(typed: str, text: str) -> float:
    return SequenceMatcher(None, typed.upper(), text).ratio()


def _what_is_wrong(typed: str, expected: str) -> str:
    if typed.upper() == expected:
        return "It came in small letters: switch Caps Lock off, or the scanner’s change of case."
    if expected in typed:
        before, _, after = typed.partition(expected)
        added = " and ".join(filter(None, (_added("in front", before), _added("behind", after))))
        return f"The scanner adds {added}: enter it as its prefix here, or switch it off."
    if len(typed) == len(expected):
        pairs = dict.fromkeys((a, b) for a, b in zip(expected, typed, strict=True) if a != b)
        swapped = ", ".join(f"{b} for {a}" for a, b in pairs)
        return f"It typed {swapped}: set the scanner to the keyboard layout of this computer."
    return (
        f"It typed {typed or 'nothing'} instead of {expected}: "
        "set a pause between keys, and the keyboard layout of this computer."
    )


def _added(where: str, letters: str) -> str:
    return f"“{letters}” {where}" if letters else ""
