"""Nothing is on the finishing table: what to scan."""

from PySide6.QtWidgets import QVBoxLayout

from app.window.look.icons import Icon
from app.window.look.look import Gap, Size
from app.window.parts.card import Card
from app.window.parts.picture import Picture
from app.window.parts.words import SECOND, Words


def nothing() -> Card:
    """The sentence of the empty table."""
    card = Card(in_hand=True)
    words = QVBoxLayout()
    words.setSpacing(Gap.SMALL)
    words.addWidget(Words("Before the scissors: count by tie colour.", Size.TITLE, bold=True))
    words.addWidget(
        Words(
            "Scan the disc on the cord. The ties tell which cone a skein is of; once "
            "they are cut, nothing does.",
            ink=SECOND,
        )
    )
    words.addWidget(
        Words(
            "A finished skein that becomes minis, balls, a second or goes back on a cord: scan "
            "its tag.",
            ink=SECOND,
        )
    )
    row = card.add_row(Picture(Icon.SCISSORS))
    row.addLayout(words, 1)
    return card
