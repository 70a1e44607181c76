from PySide6.QtWidgets import QLabel, QScrollArea, QVBoxLayout, QWidget

from app.window.parts.sight import bring, to_top


def test_what_is_asked_comes_into_sight_and_the_top_again(qtbot):
    page, low = QWidget(), QLabel("asked")
    column = QVBoxLayout(page)
    column.addSpacing(900)
    column.addWidget(low)
    area = QScrollArea()
    qtbot.addWidget(area)
    area.setWidgetResizable(True)
    area.setWidget(page)
    area.resize(300, 200)
    area.show()
    bring(low)
    qtbot.waitUntil(lambda: area.verticalScrollBar().value() > 600)
    to_top(low)
    assert area.verticalScrollBar().value() == 0


def test_what_lies_on_no_page_stays_where_it_is(qtbot):
    alone = QLabel("alone")
    qtbot.addWidget(alone)
    bring(alone)
    to_top(alone)
    assert alone.parentWidget() is None
