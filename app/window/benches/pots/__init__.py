"""Pots and trays: bundles meet a bath, and a dye lot is born."""
