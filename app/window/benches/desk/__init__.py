"""The desk: one thing in hand with both ends of its thread, holds, people, plates, the book."""
