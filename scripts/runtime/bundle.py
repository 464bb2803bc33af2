"""The runtime bundle: everything the browser needs to wake Python, in one folder named after its content.

It is made from the pinned Pyodide, the calculators' wheel and PyYAML. Python files are compiled at build time by the very
Python that reads them in the browser, because compiling them at every start takes most of the time a plain start takes.
"""

from __future__ import annotations

import hashlib
import json
import subprocess
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from pyodide_lock.spec import InfoSpec, PackageSpec, PyodideLockSpec

from . import wheels
from .archives import integrity, pack, unpack
from .library import needed

HERE = Path(__file__).parent
LISTING = "assets/javascript/runtime-bundle.js"
FOLDER = "assets/runtime"


@dataclass(frozen=True)
class Parts:
    """What a bundle is made from: node, the words that start Node; pyodide, its npm package; wheel, the folder of our wheel."""

    node: Sequence[str]
    pyodide: Path
    wheel: Path


def make(parts: Parts, target: Path) -> None:
    """Make the bundle: its files, and `listing.json` that says what each is for."""
    target.mkdir(parents=True, exist_ok=True)
    own = {wheels.identity(wheel): wheel for wheel in (wheels.calculators(parts.wheel), wheels.pyyaml())}
    library = needed(unpack(parts.pyodide / "python_stdlib.zip"))
    compiled_library, *compiled = _compile(parts, [library, *own.values()])
    files = {
        "loader": ("pyodide.mjs", (parts.pyodide / "pyodide.mjs").read_bytes()),
        "machine": ("pyodide.asm.mjs", (parts.pyodide / "pyodide.asm.mjs").read_bytes()),
        "wasm": ("pyodide.asm.wasm", (parts.pyodide / "pyodide.asm.wasm").read_bytes()),
        "library": ("python-library.zip", pack(compiled_library)),
    }
    # Only the few words about the interpreter are read from the shipped lock: its form is newer than what pyodide-lock accepts.
    about = json.loads((parts.pyodide / "pyodide-lock.json").read_text())["info"]
    pyodide_version = json.loads((parts.pyodide / "package.json").read_text())["version"]
    packages = {}
    for (name, version), wheel in zip(own, compiled, strict=True):
        file_name = f"{name.replace('-', '_')}-{version}-cp314-none-any.whl"
        content = pack(wheel)
        files[name] = (file_name, content)
        packages[name.lower()] = _package(name.lower(), version, file_name, content, wheel)
    packages["workroom-calculators"].depends = ["pyyaml"]
    lock = PyodideLockSpec(info=InfoSpec(**about | {"version": pyodide_version}), packages=packages)
    _write(target, files, lock)


def _package(name: str, version: str, file_name: str, content: bytes, wheel: wheels.Wheel) -> PackageSpec:
    imports = sorted({path.split("/")[0] for path in wheel if path.endswith("/__init__.pyc") and path.count("/") == 1})
    digest = hashlib.sha256(content).hexdigest()
    return PackageSpec(name=name, version=version, file_name=file_name, install_dir="site", sha256=digest, imports=imports)


def _compile(parts: Parts, archives: Sequence[wheels.Wheel]) -> list[wheels.Wheel]:
    with tempfile.TemporaryDirectory() as folder:
        pairs = []
        for number, archive in enumerate(archives):
            source, target = Path(folder, f"{number}.zip"), Path(folder, f"{number}c.zip")
            source.write_bytes(pack(archive))
            pairs += [source, target]
        subprocess.run([*parts.node, HERE / "compile.mjs", parts.pyodide, *pairs], check=True)
        return [unpack(target) for target in pairs[1::2]]


def _write(target: Path, files: dict[str, tuple[str, bytes]], lock: PyodideLockSpec) -> None:
    listed = {}
    for role, (name, content) in files.items():
        (target / name).write_bytes(content)
        listed[role] = {"name": name, "bytes": len(content), "integrity": integrity(content)}
    listing = {
        "bytes": sum(entry["bytes"] for entry in listed.values()),
        "files": listed,
        "packages": ["workroom-calculators"],
        "lock": lock.model_dump(),
    }
    (target / "listing.json").write_text(json.dumps(listing, indent=1, sort_keys=True))


def put_into(site: Path, bundle: Path) -> None:
    """Copy a bundle into the built site and tell the pages' scripts where it lies."""
    listing = json.loads((bundle / "listing.json").read_text())
    name = hashlib.sha256((bundle / "listing.json").read_bytes()).hexdigest()[:16]
    folder = site / FOLDER / name
    folder.mkdir(parents=True, exist_ok=True)
    for entry in listing["files"].values():
        (folder / entry["name"]).write_bytes((bundle / entry["name"]).read_bytes())
    listing["folder"] = f"../runtime/{name}/"
    (site / LISTING).write_text(f"// Made by the build.\nexport default {json.dumps(listing, sort_keys=True)};\n")
