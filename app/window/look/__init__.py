"""Type, spacing, ink and icons."""
