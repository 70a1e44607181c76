"""The arithmetic of the trade: pure functions with frozen results; no database, no Qt, no paper."""
