"""A picture of the window, drawn by a child that needs no screen."""

import os

import pytest
from PySide6.QtGui import QImage

from app.problems import Refused
from app.window.picture import picture_of
from app.work.holding import hold


def test_the_window_is_drawn_with_a_thing_in_hand(studio, tmp_path, monkeypatch):
    monkeypatch.delenv("QT_QPA_PLATFORM", raising=False)
    studio.do(hold, "cone", studio.cone(), "oil stain")
    studio.book.close()
    png = tmp_path / "window.png"
    picture_of(studio.book.path, png, "C00017", (1000, 700), 1.25)
    image = QImage(str(png))
    assert (image.width(), image.height()) == (1000, 700)
    reds = {image.pixelColor(x, y).name() for x in range(0, 1000, 2) for y in range(0, 700, 2)}
    assert "#b3001b" in reds  # the plate HOLD is in sight
    assert "QT_QPA_PLATFORM" not in os.environ


def test_where_it_cannot_be_drawn_a_sentence_says_why(studio, tmp_path):
    studio.book.close()
    with pytest.raises(Refused, match="The picture of the window could not be made"):
        picture_of(studio.book.path, tmp_path / "no such folder" / "window.png")
