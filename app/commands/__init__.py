"""The words of the command line, and what each of them does."""
