"""Conetrail: the record of a hand-dye studio, from cone to customer."""
