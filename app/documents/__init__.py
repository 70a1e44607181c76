"""Frozen rows in, PDF bytes out."""
