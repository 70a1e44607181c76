"""Brings pip into the environment whose Python runs this: its own copy, the system's, or a wheel.

The wheel comes from the package index that pip is set to use on this machine.
"""

import configparser
import os
import re
import ssl
import subprocess
import sys
from collections.abc import Mapping, Sequence
from html import unescape
from pathlib import Path
from urllib.parse import urljoin
from urllib.request import urlopen

WHEEL = "pip-26.3-py3-none-any.whl"
SETTINGS = ("/etc/xdg/pip/pip.conf", "/etc/pip.conf", "~/.pip/pip.conf", "~/.config/pip/pip.conf")


def setting(name: str, environ: Mapping[str, str], files: Sequence[str]) -> str | None:
    """One of pip's settings: from its variable, else from the last of its files that has it."""
    read = configparser.RawConfigParser()
    read.read([os.path.expanduser(file) for file in (*files, environ.get("PIP_CONFIG_FILE", ""))])
    variable = environ.get("PIP_" + name.upper().replace("-", "_"))
    return variable or read.get("global", name, fallback=None)


def address(page: str, base: str) -> str:
    """Where the wheel lies, as the index page links it; beside the page if it does not."""
    link = re.search(rf'href="([^"]*\b{re.escape(WHEEL)}[^"]*)"', page)
    return urljoin(base, unescape(link[1]) if link else WHEEL)


def fetch() -> Path:
    """The wheel, fetched into the environment's folder."""
    index = setting("index-url", os.environ, SETTINGS) or "https://pypi.org/simple"
    context = ssl.create_default_context(cafile=setting("cert", os.environ, SETTINGS))
    with urlopen(f"{index.rstrip('/')}/pip/", timeout=60, context=context) as page:
        link = address(page.read().decode(), page.url)
    wheel = Path(sys.prefix, WHEEL)
    with urlopen(link, timeout=60, context=context) as answer:
        wheel.write_bytes(answer.read())
    return wheel


def main(base_python: str) -> int:
    """Tries one way after the other; says what went wrong with the last."""
    here = sys.executable
    own = [here, "-m", "ensurepip"]
    systems = [base_python, "-m", "pip", "--python", here, "install", "pip"]
    if any(subprocess.run(way, capture_output=True).returncode == 0 for way in (own, systems)):
        return 0
    wheel = fetch()
    return subprocess.call([here, f"{wheel}/pip", "install", "--no-index", str(wheel)])


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
