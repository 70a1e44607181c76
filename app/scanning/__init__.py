"""From keystrokes to a code, and from a code to a thing."""
