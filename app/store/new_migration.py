"""For developers: write the next migration from what the records say. Read it before you keep it.

`python -m app.store.new_migration "words that say what changes"`
"""

import sys
import tempfile
from datetime import UTC, datetime
from pathlib import Path

from alembic import command
from alembic.script import ScriptDirectory
from sqlalchemy import create_engine

from app.store.upgrade import migrations_config, upgrade_book


def new_migration(words: str) -> str:
    """Write the script against a book at today's head; its number follows the last one."""
    config = migrations_config()
    last = ScriptDirectory.from_config(config).get_current_head()
    number = f"{int(last or 0) + 1:04}"
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "now.book"
        if last:
            upgrade_book(path, datetime.now(UTC))
        engine = create_engine(f"sqlite:///{path}")
        with engine.connect() as connection:
            config.attributes["connection"] = connection
            config.set_main_option("file_template", "%%(rev)s_%%(slug)s")
            command.revision(config, words, autogenerate=True, rev_id=number)
        engine.dispose()
    return number


if __name__ == "__main__":
    new_migration(" ".join(sys.argv[1:]))
