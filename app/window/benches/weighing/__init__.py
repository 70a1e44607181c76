"""Weighing: jars at the balance, line by line, for a bath, for bottles or for a stock."""
