"""Everything Qt."""
