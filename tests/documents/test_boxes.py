"""Rectangles: moved and turned, and back."""

from app.documents.boxes import Box


def test_a_box_is_moved_by_two_numbers() -> None:
    assert Box(1, 2, 3, 5).moved(10, -1) == Box(11, 1, 13, 4)


def test_a_box_at_the_sheets_right_lies_at_the_top_when_turned_to_the_left() -> None:
    assert Box(190, 10, 210, 40).turned(210) == Box(10, 0, 40, 20)
    box = Box(20, 11, 105, 66)
    four_times = box.turned(210).turned(297).turned(210).turned(297)
    assert four_times == box
