"""The studio's choices: each change is a new row, the old one stays."""

from app.calculations.moments import day_words
from app.lookups.studio import DEFAULTS, setting
from app.records import Setting
from app.store.deed import Deed


def confirm_day(deed: Deed) -> None:
    """Someone looked: this computer's day and hour are right, whatever the last entry says."""
    deed.clock_in_doubt = False
    deed.say(f"confirmed the day: {day_words(deed.written)}")


def choose(deed: Deed, choices: dict[str, str]) -> None:
    """Write what the studio chose, where it differs from what stands."""
    unknown = choices.keys() - DEFAULTS.keys()
    if unknown:
        raise KeyError(f"no such settings: {sorted(unknown)}")
    changed = {k: v for k, v in choices.items() if setting(deed.connection, k) != v}
    deed.add_all([Setting(key=key, value=value) for key, value in changed.items()])
    deed.say(f"chose {', '.join(changed)}" if changed else "chose nothing new")
