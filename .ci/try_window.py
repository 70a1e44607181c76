"""Opens Qt once, after naming each system library this machine lacks and its Debian package."""

import ctypes
import os
import sys
from collections.abc import Iterator, Mapping

WINDOW = {
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libX11.so.6": "libx11-6",
    "libdbus-1.so.3": "libdbus-1-3",
    "libfontconfig.so.1": "libfontconfig1",
    "libglib-2.0.so.0": "libglib2.0-0",
    "libgssapi_krb5.so.2": "libgssapi-krb5-2",
    "libxkbcommon.so.0": "libxkbcommon0",
}
SCREEN = {
    "libwayland-cursor.so.0": "libwayland-cursor0",
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-shape.so.0": "libxcb-shape0",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
}


def missing(libraries: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """The libraries that this machine cannot load, each with its package."""
    for library, package in libraries.items():
        try:
            ctypes.CDLL(library)
        except OSError:
            yield library, package


if __name__ == "__main__":
    unseen = os.environ.get("QT_QPA_PLATFORM") == "offscreen"
    for library, package in missing(WINDOW if unseen else WINDOW | SCREEN):
        sys.stdout.write(f"{library} {package}\n")
    sys.stdout.flush()
    from PySide6.QtWidgets import QApplication

    QApplication(sys.argv)
