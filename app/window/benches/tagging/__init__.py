"""Tagging: tags are printed for a pile, and each is tied on its skein with one scan."""
