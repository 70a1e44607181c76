"""Finishing: the count by tie colour, before the scissors destroy it."""
