"""The drawn trail: certainty is seen in the yarn, and only HOLD is red."""

from PySide6.QtCore import QPointF
from PySide6.QtGui import QColor, QImage, QPainter, QPainterPath

from app.documents.trail_picture import Tag, set_picture
from app.documents.yarn import Certainty
from app.window.look.palette import DAY
from app.window.parts.trail_drawing import draw_stroke
from app.window.parts.trail_graph import TrailGraph


def dark_along(certainty):
    """For every pixel along the middle of a drawn yarn: whether it is inked."""
    image = QImage(200, 20, QImage.Format.Format_RGB32)
    image.fill(QColor(DAY.surround))
    painter = QPainter(image)
    path = QPainterPath(QPointF(0, 10))
    path.lineTo(QPointF(200, 10))
    draw_stroke(painter, path, certainty)
    painter.end()
    return [image.pixelColor(x, 10).lightness() < 100 for x in range(200)]


def test_each_certainty_is_told_apart_without_colour(qapp):
    known, pool, unknown = (dark_along(one) for one in (
        Certainty.KNOWN, Certainty.POOL, Certainty.UNKNOWN))
    assert all(known)
    assert not any(dark_along(Certainty.PARTLY))  # its plies lie apart
    assert 0.5 < sum(pool) / 200 < 0.7
    assert 0.2 < sum(unknown) / 200 < 0.45


def test_only_hold_has_a_colour(qtbot):
    colours = {}
    for held in ("", "here"):
        graph = TrailGraph()
        qtbot.addWidget(graph)
        graph.resize(300, 240)
        graph.show_picture(set_picture(
            [Tag("here", "cone", "C·0114·F", ("14 skeins",), code=True, here=True, held=held)], [],
            "here"), "here", {})
        image = graph.grab().toImage()
        colours[held] = {image.pixelColor(x, y).name() for x in range(image.width())
                         for y in range(image.height())
                         if image.pixelColor(x, y).saturation() > 40}
    assert colours[""] == set()
    assert "#b3001b" in colours["here"]
