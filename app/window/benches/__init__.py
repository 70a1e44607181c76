"""One module a work place."""
