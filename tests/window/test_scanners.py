"""The scanners of this computer, by the sign each begins with."""

import pytest

from app.problems import BadInput
from app.scanning.keystrokes import Keystrokes
from app.window.scanners import Scanners, read_sign


def test_a_scanner_is_named_kept_and_heard_at_once(settings):
    keystrokes = Keystrokes({})
    scanners = Scanners(settings, keystrokes)
    scanners.name("#", "pots")
    scanners.name("~", "till")
    assert scanners.names == settings.scanners == keystrokes.prefixes == {
        "#": "pots", "~": "till"}
    scanners.forget("#")
    assert settings.scanners == keystrokes.prefixes == {"~": "till"}


@pytest.mark.parametrize("text", ["", "A", "7", "-", "·", "?", "##", "ab"])
def test_a_sign_that_stands_in_codes_or_words_is_refused(text):
    with pytest.raises(BadInput):
        read_sign(text)


def test_any_other_sign_will_do():
    assert read_sign(" # ") == "#"
