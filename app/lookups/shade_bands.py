"""Up to which difference each word about two shades holds in this studio."""

import json
from dataclasses import asdict, replace

from sqlalchemy import Connection

from app.calculations.shade_words import USUAL, Bands
from app.lookups.studio import setting

SHADE_LIMITS = "shade limits"
"""The setting: {limit: CIEDE2000} as JSON; what is not named is as usual."""


def shade_bands(connection: Connection) -> Bands:
    """What the studio chose, else what is usual."""
    return replace(USUAL, **json.loads(setting(connection, SHADE_LIMITS)))


def kept_bands(bands: Bands) -> dict[str, str]:
    """As a choice of the studio."""
    return {SHADE_LIMITS: json.dumps(asdict(bands))}
