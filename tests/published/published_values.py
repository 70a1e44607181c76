"""Reads the published values: a table a file, its source in the lines that begin with #."""

import csv
from pathlib import Path

VALUES = Path(__file__).parent / "values"


def rows_of(name: str) -> list[dict[str, str]]:
    """The rows of one table, given as `qr_capacity`; a table without a source is refused."""
    lines = (VALUES / f"{name}.csv").read_text(encoding="utf-8").splitlines()
    table = [line for line in lines if not line.startswith("#")]
    assert len(table) < len(lines), f"{name} names no source"
    return list(csv.DictReader(table))
