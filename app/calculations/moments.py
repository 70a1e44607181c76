"""Moments as people read them: by the clock on their own wall."""

from datetime import datetime, tzinfo


def day_words(moment: datetime, zone: tzinfo | None = None) -> str:
    """'6 Apr 2026', in this zone, else in the computer's own."""
    there = moment.astimezone(zone)
    return f"{there.day} {there:%b %Y}"


def short_day(moment: datetime, zone: tzinfo | None = None) -> str:
    """'6 Apr'."""
    there = moment.astimezone(zone)
    return f"{there.day} {there:%b}"


def clock_words(moment: datetime, zone: tzinfo | None = None) -> str:
    """'08:12'."""
    return f"{moment.astimezone(zone):%H:%M}"


def moment_words(moment: datetime, zone: tzinfo | None = None) -> str:
    """'6 Apr 08:12'."""
    return f"{short_day(moment, zone)} {clock_words(moment, zone)}"


def board_words(moment: datetime, zone: tzinfo | None = None) -> str:
    """'Thu 26 Nov 16:40', as it stands on the white board."""
    return f"{moment.astimezone(zone):%a} {moment_words(moment, zone)}"


def took_words(seconds: int) -> str:
    """How long something took: '12 seconds', '4 minutes', '3 hours'; the shorter, the finer."""
    if seconds < 1:
        return "under a second"
    of, unit = next((of, unit) for of, unit in ((1, "second"), (60, "minute"), (3600, "hour"))
                    if seconds < 120 * of or unit == "hour")
    count = (seconds + of // 2) // of
    return f"{count} {unit}" if count == 1 else f"{count:,} {unit}s"
