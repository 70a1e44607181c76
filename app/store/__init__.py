"""The book itself: open, do, ask, journal, upgrade, copies."""
