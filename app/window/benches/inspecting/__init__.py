"""The shade check: cards read, held against the standard, and decided of."""
