"""The two wheels the browser's Python needs: the calculators, and the pure part of PyYAML that reads the house
method."""

from __future__ import annotations

from importlib import metadata
from pathlib import Path

from scripts.tools.archives import unpack

Wheel = dict[str, bytes]


def calculators(folder: Path) -> Wheel:
    """The files of the project's own wheel, built before into a folder."""
    (built,) = folder.glob("*.whl")
    return unpack(built)


def pyyaml() -> Wheel:
    """The installed PyYAML without its compiled part, which `yaml` itself does without when it is absent."""
    wheel: Wheel = {}
    for path in metadata.files("pyyaml") or []:
        name = path.as_posix()
        pure = name.startswith("yaml/") and name.endswith(".py")
        if pure or name.endswith(".dist-info/METADATA") or ".dist-info/licenses/" in name:
            wheel[name] = Path(path.locate()).read_bytes()
    return wheel


def identity(wheel: Wheel) -> tuple[str, str]:
    """Name and version of a wheel, from its own metadata."""
    (path,) = [name for name in wheel if name.endswith(".dist-info/METADATA")]
    head = wheel[path].decode().partition("\n\n")[0]
    found = dict(line.split(": ", 1) for line in head.splitlines() if line.startswith(("Name: ", "Version: ")))
    return found["Name"], found["Version"]
