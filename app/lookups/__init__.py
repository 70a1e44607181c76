"""What the book answers: readers only, frozen rows."""
