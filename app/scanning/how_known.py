"""How a link is known that a code was named for: proven by a scan, or as stated."""

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType


class Came(StrEnum):
    """The way a code came to the bench."""

    SCAN = "scan"
    PHOTO = "photo"
    TOLD = "told"
    GAPS = "gaps"


BASIS_OF: Mapping[Came, str] = MappingProxyType({
    Came.SCAN: "scanned",
    Came.PHOTO: "stated",
    Came.TOLD: "stated",
    Came.GAPS: "stated",
})
"""What a link is saved on. Only a tag in the hand proves anything.

A photograph shows a tag and not the yarn it hangs on now: that it is the tag of this yarn, and that
the picture is of today, is what the sender says. However well it is read, it is as stated, until
somebody scans the tag itself and says so by a deed of its own.
"""
