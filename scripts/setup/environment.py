"""The Python environment in .venv: made once, filled with pinned packages, left alone while nothing changes."""

import importlib.util
import os
import subprocess
import sys
import tomllib
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any

from scripts.tools.command_error import CommandError
from scripts.tools.stamps import Stamp, fingerprint

WHOLE = "whole"
NO_VENV = (
    "This Python cannot make an environment of its own; on Debian or Ubuntu "
    "`sudo apt-get install python3-venv` adds what is missing, then run this again."
)


def python_of(venv: Path) -> Path:
    """The interpreter inside an environment."""
    return venv / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


def project(root: Path) -> dict[str, Any]:
    told: dict[str, Any] = tomllib.loads((root / "pyproject.toml").read_text())["project"]
    return told


def extras(root: Path) -> list[str]:
    """The names of all extras."""
    return list(project(root)["optional-dependencies"])


def stamp_of(venv: Path, extra: str) -> Stamp:
    return Stamp(venv / "stamps" / extra)


def pins_of(root: Path, extra: str) -> Path:
    """The file with every package that an extra brings in, at one version and with hashes: see scripts/pin.py."""
    return root / "pins" / f"{extra}.txt"


def key_of(root: Path, extra: str) -> str:
    """What decides whether an extra must be installed again."""
    return fingerprint(pins_of(root, extra).read_text())


def missing_extras(root: Path, venv: Path, extras: Iterable[str]) -> list[str]:
    """The extras that are not, or no longer, installed as pinned."""
    return [extra for extra in extras if not stamp_of(venv, extra).matches(key_of(root, extra))]


def whole(venv: Path) -> Stamp:
    """The stamp of an environment that no making and no installing has left half done."""
    return Stamp(venv / "stamps" / "whole")


def works(venv: Path) -> bool:
    """Whether the environment is whole and has a Python that is new enough."""
    if not whole(venv).matches(WHOLE) or not python_of(venv).exists():
        return False
    question = "import sys; raise SystemExit(sys.version_info < (3, 11))"
    return subprocess.run([python_of(venv), "-c", question], capture_output=True).returncode == 0


def make(venv: Path) -> None:
    """Make the environment afresh, whatever a half-made or outdated one has left behind.

    Raises: Trouble when this Python lacks what that takes.
    """
    if not all(importlib.util.find_spec(name) for name in ("venv", "ensurepip")):
        raise CommandError(NO_VENV)
    print(f"Making a Python environment in {venv}", flush=True)
    if subprocess.run([sys.executable, "-m", "venv", "--clear", venv]).returncode:
        raise CommandError(NO_VENV)
    whole(venv).press(WHOLE)


def install_command(root: Path, venv: Path, extras: Sequence[str]) -> list[str]:
    """What installs these extras: nothing that is not pinned, and no file whose hash is another than the pinned one."""
    pins = [word for extra in extras for word in ("--requirement", str(pins_of(root, extra)))]
    pip = [str(python_of(venv)), "-m", "pip", "install", "-qq", "--disable-pip-version-check"]
    return [*pip, "--require-hashes", *pins]


def ensure(root: Path, venv: Path, extras: Sequence[str]) -> Path:
    """Make sure that .venv is there and holds these extras as pinned.

    Returns: the environment's Python.
    Raises: Trouble when the environment cannot be made or filled.
    """
    if not works(venv):
        make(venv)
    missing = missing_extras(root, venv, extras)
    if missing:
        install(root, venv, missing)
    return python_of(venv)


def install(root: Path, venv: Path, extras: Sequence[str]) -> None:
    """Install extras, and note so only when all of it went well.

    A package that was only half copied would look installed to pip, so what is broken off here is made afresh next
    time.
    """
    print("Installing Python packages:", ", ".join(extras), flush=True)
    whole(venv).lift()
    if subprocess.run(install_command(root, venv, extras)).returncode:
        raise CommandError("The Python packages could not be installed; look at the lines above, and run this again.")
    for extra in extras:
        stamp_of(venv, extra).press(key_of(root, extra))
    whole(venv).press(WHOLE)
