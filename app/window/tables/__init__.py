"""Long lists."""
