from app.window.look.icons import Icon
from app.window.parts.picture import Picture


def test_it_grows_with_the_text_and_is_drawn(qtbot, dressed):
    picture = Picture(Icon.POT)
    qtbot.addWidget(picture)
    assert picture.sizeHint().width() == 84
    picture.resize(picture.sizeHint())
    drawn = picture.grab().toImage()
    inked = sum(drawn.pixelColor(x, y).lightness() < 100 for x in range(84) for y in range(84))
    assert 200 < inked < 3_000
    dressed(2.0)
    assert picture.sizeHint().width() == 168
