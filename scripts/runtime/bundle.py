"""The runtime bundle: everything the browser needs to wake Python, in one folder named after its content.

It is made from the pinned Pyodide, the calculators' wheel and PyYAML. Python files are compiled at build time by the
very
Python that reads them in the browser, because compiling them at every start takes most of the time a plain start takes.
On
top of that lies a snapshot: the memory of a Python that has everything imported, without what the wasm file brings
anyway.
"""

from __future__ import annotations

import gzip
import hashlib
import json
import os
import shutil
import subprocess
import tempfile
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType
from typing import Any

from pyodide_lock.spec import InfoSpec, PackageSpec, PyodideLockSpec

from scripts.runtime import library, thin_snapshot, wheels
from scripts.runtime.served_name import served_name
from scripts.tools.archives import integrity, pack, unpack

HERE = Path(__file__).parent
LISTING = "assets/javascript/runtime-bundle.js"
FOLDER = "assets/runtime"
#: Set for every start, so that sets are walked in the same order whichever way Python was woken.
ENVIRONMENT = {"HOME": "/home/pyodide", "PYTHONHASHSEED": "0", "PYTHONINSPECT": "1", "TZ": "UTC"}


@dataclass(frozen=True)
class Parts:
    """What a bundle is made from: node, the words that start Node; pyodide, its npm package; wheel, the folder of our
    wheel."""

    node: Sequence[str]
    pyodide: Path
    wheel: Path


def make(parts: Parts, target: Path) -> None:
    """Make the bundle afresh: its files, and `listing.json` that says what each is for."""
    shutil.rmtree(target, ignore_errors=True)
    target.mkdir(parents=True)
    own = [wheels.calculators(parts.wheel), wheels.pyyaml()]
    kept = library.needed(unpack(parts.pyodide / "python_stdlib.zip"))
    lean = {name: content for name, content in kept.items() if library.is_lean(name)}
    described = {name: content for name, content in kept.items() if not library.is_lean(name)}
    compiled_lean, compiled_described, *compiled = _compile(
        parts, [(lean, 2), (described, 0), *((wheel, 3) for wheel in own)]
    )
    files = {role: (name, (parts.pyodide / name).read_bytes()) for role, name in _PYODIDE_FILES.items()}
    files["library"] = ("python-library.zip", pack(compiled_lean | compiled_described))
    packages = {}
    for source, wheel in zip(own, compiled, strict=True):
        package, content = _package(*wheels.identity(source), wheel)
        packages[package.name] = package
        files[package.name] = (package.file_name, content)
    packages["workroom-calculators"].depends = ["pyyaml"]
    lock = PyodideLockSpec(info=_interpreter(parts.pyodide), packages=packages)
    _write(target, files, lock)
    snapshot, listed = thin_snapshot.thinned(_memory_snapshot(parts, target), files["wasm"][1])
    files["snapshot"] = ("snapshot.gz", gzip.compress(snapshot, compresslevel=9, mtime=0))
    _write(target, files, lock, {"snapshot": listed})


_PYODIDE_FILES = {"loader": "pyodide.mjs", "machine": "pyodide.asm.mjs", "wasm": "pyodide.asm.wasm"}


def _interpreter(pyodide: Path) -> InfoSpec:
    # Only these few words are read from the shipped lock: as a whole it is newer than what pyodide-lock accepts.
    about = json.loads((pyodide / "pyodide-lock.json").read_text())["info"]
    version = json.loads((pyodide / "package.json").read_text())["version"]
    return InfoSpec(**about | {"version": version})


def _package(name: str, version: str, wheel: wheels.Wheel) -> tuple[PackageSpec, bytes]:
    content = pack(wheel)
    package = PackageSpec(
        name=name.lower(),
        version=version,
        file_name=f"{name.replace('-', '_')}-{version}-cp314-none-any.whl",
        install_dir="site",
        sha256=hashlib.sha256(content).hexdigest(),
        imports=sorted({path.split("/")[0] for path in wheel if path.endswith(".pyc")}),
    )
    return package, content


def _compile(parts: Parts, archives: Sequence[tuple[wheels.Wheel, int]]) -> list[wheels.Wheel]:
    """Compile the Python files of archives, each with the level of optimizing that compile.py knows: 2 drops
    docstrings, 3 the types of functions too."""
    with tempfile.TemporaryDirectory() as folder:
        words: list[str] = []
        targets = [Path(folder, f"{number}-compiled.zip") for number in range(len(archives))]
        for target, (archive, optimize) in zip(targets, archives, strict=True):
            source = target.with_suffix(".source")
            source.write_bytes(pack(archive))
            words += [str(source), str(target), str(optimize)]
        subprocess.run([*parts.node, HERE / "compile.mjs", parts.pyodide, *words], check=True)
        return [unpack(target) for target in targets]


def _memory_snapshot(parts: Parts, bundle: Path) -> bytes:
    snapshot = bundle / "snapshot"
    still = os.environ | {"TZ": "UTC", "LANG": "C", "LC_ALL": "C"}
    subprocess.run([*parts.node, HERE / "snapshot.mjs", bundle, snapshot], check=True, env=still)
    content = snapshot.read_bytes()
    snapshot.unlink()
    return content


def _write(
    target: Path,
    files: dict[str, tuple[str, bytes]],
    lock: PyodideLockSpec,
    more: Mapping[str, Any] = MappingProxyType({}),
) -> None:
    listed = {}
    for role, (name, content) in files.items():
        (target / name).write_bytes(content)
        listed[role] = {"name": name, "bytes": len(content), "integrity": integrity(content)}
    listing = {
        "files": listed,
        "packages": ["workroom-calculators"],
        "environment": ENVIRONMENT,
        "lock": lock.model_dump(),
        **more,
    }
    (target / "listing.json").write_text(json.dumps(listing, indent=1, sort_keys=True))


def put_into(site: Path, bundle: Path) -> None:
    """Copy a bundle into the built site and tell the pages' scripts where it lies."""
    text = (bundle / "listing.json").read_text()
    name = hashlib.sha256(text.encode()).hexdigest()[:16]
    listing = json.loads(text)
    folder = site / FOLDER / name
    folder.mkdir(parents=True, exist_ok=True)
    for entry in listing["files"].values():
        served = served_name(entry["name"])
        shutil.copyfile(bundle / entry["name"], folder / served)
        entry["name"] = served
    listing["folder"] = f"{FOLDER}/{name}/"
    (site / LISTING).write_text(f"// Made by the build.\nexport default {json.dumps(listing, sort_keys=True)};\n")
