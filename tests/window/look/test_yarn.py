import pytest
from PySide6.QtCore import QPointF
from PySide6.QtGui import QColor, QImage, QPainter

from app.window.look.yarn import SWING, YARN, Certainty, draw_yarn, straight

WIDTH, MIDDLE = 360, 20


def drawn(certainty):
    image = QImage(WIDTH, 2 * MIDDLE, QImage.Format.Format_RGB32)
    image.fill(QColor("#CFCFCF"))
    painter = QPainter(image)
    draw_yarn(painter, straight(QPointF(0, MIDDLE), QPointF(WIDTH, MIDDLE)), certainty)
    painter.end()
    return image


def gaps(image):
    """Columns in which there is no yarn at all."""
    ground = QColor("#CFCFCF")
    return [
        x for x in range(WIDTH) if all(image.pixelColor(x, y) == ground for y in range(2 * MIDDLE))
    ]


def test_what_is_known_is_whole():
    assert gaps(drawn(Certainty.KNOWN)) == []


def test_what_is_partly_known_is_open_but_not_broken():
    image = drawn(Certainty.PARTLY)
    assert gaps(image) == []
    assert image.pixelColor(WIDTH // 2, MIDDLE) == QColor("#CFCFCF")


def test_one_of_a_pool_is_broken_many_times():
    broken = gaps(drawn(Certainty.POOL))
    runs = sum(1 for x in broken if x - 1 not in broken)
    assert runs >= 5


def test_what_is_not_known_is_one_gap_with_a_question_in_it():
    broken = gaps(drawn(Certainty.NOT_KNOWN))
    assert len(broken) > WIDTH / 2
    assert WIDTH // 2 not in broken


@pytest.mark.parametrize("certainty", list(Certainty))
def test_the_yarn_keeps_to_its_thickness(certainty):
    image, ground = drawn(certainty), QColor("#CFCFCF")
    edge = MIDDLE - round(YARN / 2) - 3
    assert all(image.pixelColor(x, edge) == ground for x in range(WIDTH // 3))


def test_the_plies_lie_apart_between_two_crossings():
    image = drawn(Certainty.KNOWN)
    between = 7  # half a crossing
    for y in (MIDDLE - SWING, MIDDLE + SWING):
        assert image.pixelColor(between, round(y)).lightness() > 220
