"""Where the program's own files are: in a checkout, or inside an installed wheel."""

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent
_INSTALLED = _PACKAGE / "_installed"
_ROOT = _INSTALLED if _INSTALLED.is_dir() else _PACKAGE.parent

MIGRATIONS = _ROOT / "migrations"
RESOURCES = _ROOT / "resources"
DEMO_DATA = _ROOT / "demo_data"


def resource(name: str) -> Path:
    """Path of one shipped file, given as 'fonts/Name.ttf'; it must exist."""
    path = RESOURCES / name
    if not path.is_file():
        raise FileNotFoundError(f"shipped file missing: {path}")
    return path
