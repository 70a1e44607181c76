"""The moment to ask for when how things stand is wanted."""

from datetime import UTC, datetime

NOW = datetime.max.replace(tzinfo=UTC)
"""Later than every entry, so that a computer's clock that lags hides nothing that was done.

Where yesterday's white board is entered, the window's session asks for that moment instead.
"""
