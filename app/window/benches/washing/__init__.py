"""Wash & dry: place and discs make a load; what is in which water, and on which rail."""
