"""A balance at the other end of a wire: a real pair of terminals."""

import os
import tty


class AWire:
    """What it says arrives at `port`; `asked` is what it was asked with."""

    def __init__(self) -> None:
        self._end, self._mine = os.openpty()
        tty.setraw(self._end)
        tty.setraw(self._mine)
        self.port = os.ttyname(self._mine)
        os.set_blocking(self._end, False)
        self._is_open = True

    def say(self, text: str) -> None:
        os.write(self._end, text.encode("latin-1"))

    def asked(self) -> bytes:
        try:
            return os.read(self._end, 4096)
        except BlockingIOError:
            return b""

    def unplug(self) -> None:
        if self._is_open:
            self._is_open = False
            os.close(self._end)
            os.close(self._mine)
