"""Cords in hand: what the pots, the wash and other benches do with them alike."""
