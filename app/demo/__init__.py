"""The invented studio: its papers are lived through the program's own deeds; same seed, same book.
"""

from app.demo.hands import TagSheet
from app.demo.life import FIRST_TOKEN, NAME, SEED, Lived, live

__all__ = ["FIRST_TOKEN", "NAME", "SEED", "Lived", "TagSheet", "live"]
