"""A tag is read back, for pictures: photographs of codes, and codes with gaps."""

from io import BytesIO

import qrcode
from PIL import Image
from PySide6.QtTest import QTest

from app.lookups.things import by_code, of_lot
from app.window.posing import quiet


def photograph(hands, lot, count, *strange):
    """A picture with the codes of so many tags of a lot, and of others, is dropped."""
    ask = hands.window.session.ask
    tags = [tag.code for tag in ask(of_lot, ask(by_code, lot).id)][:count]
    picture = Image.new("L", (400 * (count + len(strange)) or 400, 400), 255)
    for place, text in enumerate((*tags, *strange)):
        picture.paste(qrcode.make(text).get_image().resize((300, 300)), (400 * place + 50, 50))
    picture.save(file := BytesIO(), "PNG")
    hands.window.head.scan_line.pictured.emit(file.getvalue())
    QTest.qWait(50)
    quiet(hands.window)


READ_BACK = {
    "counter-photo": ("Counter", lambda it: photograph(it, "2615YX1", 2)),
    "desk-photo": ("Desk", lambda it: photograph(it, "2615YX1", 3, "2615YX1-00", "hello")),
    "desk-blurred": ("Desk", lambda it: photograph(it, "2615YX1", 0)),
    "desk-gaps": ("Desk", lambda it: it.ask("2615???")),
    "desk-stated": ("Desk", lambda it: (it.ask("2615?X? ferry"), it.press("Return"))),
}
"""{name: bench, and what is done there before the picture is taken}"""
