"""The counter: one box that takes anything, and what is left to sell of it."""
