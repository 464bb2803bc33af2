"""What serve.py and test.py do before their own work: the environment, Node and its packages, the build."""

import os
import subprocess
from collections.abc import Mapping
from pathlib import Path
from types import MappingProxyType

from scripts.setup import environment, node
from scripts.tools.command_error import CommandError
from scripts.tools.places import ROOT, VENV


def for_site() -> Path:
    """Set up all that building the site takes. Returns: the Python to build with."""
    return set_up(["site"])


def for_tests() -> Path:
    """Set up all that building and testing take, but the browser. Returns: the Python to test with."""
    return set_up(["site", "test"])


def set_up(extras: list[str]) -> Path:
    python = environment.ensure(ROOT, VENV, extras)
    # Who has set up for tests once keeps what they need, whatever is built next.
    node.ensure_packages(ROOT, node.ensure(ROOT, VENV), for_tests=environment.stamp_of(VENV, "test").file.is_file())
    return python


def build(python: Path, settings: Mapping[str, str] = MappingProxyType({})) -> None:
    """Build the site. settings: what `scripts/build.py` is told by name, such as SITE_URL, the site's address.

    Raises: Trouble when a step fails; the step has said why.
    """
    if subprocess.run([python, ROOT / "scripts/build.py"], cwd=ROOT, env={**os.environ, **settings}).returncode:
        raise CommandError("The handbook was not built.")
