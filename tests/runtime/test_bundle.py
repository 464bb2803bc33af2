"""The bundle holds what it says, compiled, trimmed, and the same bytes every time."""

import base64
import gzip
import hashlib
import json
from pathlib import Path

import pytest

from scripts.runtime import bundle
from scripts.runtime.library import LEFT_OUT
from scripts.tools.archives import unpack

MEBIBYTE = 1 << 20


@pytest.fixture(scope="module")
def listing(made: Path) -> dict:
    return json.loads((made / "listing.json").read_text())


def test_every_listed_file_has_the_listed_hash(made: Path, listing: dict):
    for entry in listing["files"].values():
        content = (made / entry["name"]).read_bytes()
        assert entry["bytes"] == len(content)
        assert entry["integrity"] == "sha256-" + base64.b64encode(hashlib.sha256(content).digest()).decode()


def test_made_twice_in_different_places_gives_the_same_bytes(made: Path, parts: bundle.Parts, tmp_path: Path):
    again = tmp_path / "elsewhere"
    bundle.make(parts, again)
    assert {path.name: path.read_bytes() for path in again.iterdir()} == {
        path.name: path.read_bytes() for path in made.iterdir()
    }


def test_python_files_are_compiled(made: Path, listing: dict):
    for role in ("library", "pyyaml", "workroom-calculators"):
        names = unpack(made / listing["files"][role]["name"])
        assert [name for name in names if name.endswith(".py")] == []
        assert any(name.endswith(".pyc") for name in names)


def test_library_leaves_out_what_a_worker_cannot_use(made: Path, listing: dict):
    names = {name.removesuffix(".pyc") for name in unpack(made / listing["files"]["library"]["name"])}
    left = {name for name in names for out in LEFT_OUT if name == out or name.startswith(f"{out}/")}
    assert left == set()
    assert {"json/__init__", "fractions", "datetime", "xml/etree/ElementTree", "traceback", "encodings/utf_8"} <= names


def test_lock_names_both_packages_with_their_hashes(made: Path, listing: dict):
    packages = listing["lock"]["packages"]
    assert packages["workroom-calculators"]["depends"] == ["pyyaml"]
    for name, package in packages.items():
        assert package["sha256"] == hashlib.sha256((made / package["file_name"]).read_bytes()).hexdigest()
        assert package["file_name"] == listing["files"][name]["name"]


def test_pyyaml_comes_without_its_compiled_part(made: Path, listing: dict):
    names = unpack(made / listing["files"]["pyyaml"]["name"])
    assert "yaml/__init__.pyc" in names and not any("_yaml" in name for name in names)


def test_snapshot_travels_compressed(made: Path, listing: dict):
    shipped = (made / listing["files"]["snapshot"]["name"]).read_bytes()
    assert len(shipped) < 4 * MEBIBYTE < 7 * MEBIBYTE < len(gzip.decompress(shipped)) < 10 * MEBIBYTE
