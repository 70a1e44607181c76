"""The studio's choices: each change is a new row, the old one stays."""

from app.lookups.studio import DEFAULTS, setting
from app.records import Setting
from app.store.deed import Deed


def choose(deed: Deed, choices: dict[str, str]) -> None:
    """Write what the studio chose, where it differs from what stands."""
    unknown = choices.keys() - DEFAULTS.keys()
    if unknown:
        raise KeyError(f"no such settings: {sorted(unknown)}")
    changed = {k: v for k, v in choices.items() if setting(deed.connection, k) != v}
    deed.add_all([Setting(key=key, value=value) for key, value in changed.items()])
    deed.say(f"chose {', '.join(changed)}" if changed else "chose nothing new")
