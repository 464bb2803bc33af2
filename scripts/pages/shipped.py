"""The licences of everything that the site ships and others made, read where it is installed when the site is built.

Where a package brings no text of its own, the text lies in `licences/`; what the theme has bundled says in its own
source maps whose it is.
"""

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from importlib import metadata
from importlib.resources import files
from pathlib import Path

from scripts.tools.places import NODE_MODULES, ROOT

TEXTS = Path(__file__).parent / "licences"
FONTS = ROOT / "docs/assets/fonts"
#: Packages of npm that are used at the build and no part of which is shipped.
NOT_SHIPPED = {"esbuild"}
#: Packages of npm that bring no text of their own: the text that holds for them.
WITHOUT_TEXT = {"pyodide": "mpl-2.0.txt"}
_BANNER = re.compile(r"/\*[*!]?.*?(?:[Cc]opyright|[Ll]icen[sc]e).*?\*/", re.DOTALL)
_PACKAGE = re.compile(r"node_modules/((?:@[^/]+/)?[^/]+)/")


class MissingLicence(ValueError):
    """Raised for what is shipped without a text of its licence; the build stops on it."""


@dataclass(frozen=True)
class Shipped:
    """Something shipped: its name, what it does in the handbook, the text of its licence."""

    name: str
    does: str
    text: str


def shipped() -> list[Shipped]:
    """Everything that the site ships and others made. Raises: MissingLicence for what has no text."""
    found = [
        Shipped("Python", "works the numbers out", read(TEXTS / "python.txt")),
        *(Shipped(name, "is among the scripts", of_npm(name, NODE_MODULES)) for name in npm_packages()),
        Shipped("PyYAML", "reads tables for Python", of_python("pyyaml")),
        Shipped("mkdocs-material", "is the look and the search", of_python("mkdocs-material")),
        Shipped("Material Design Icons", "are the signs on buttons", read(_icons())),
        *(Shipped(name, "is part of the look and the search", text) for name, text in in_theme().items()),
        *(Shipped(path.stem.removesuffix("-licence").title(), "is a typeface", read(path)) for path in _typefaces()),
        Shipped("Apache-2.0", "is the licence that some of these name", read(TEXTS / "apache-2.0.txt")),
    ]
    for each in found:
        if not each.text.strip():
            raise MissingLicence(f"{each.name} is shipped without the text of its licence.")
    return found


def npm_packages() -> list[str]:
    """Those that pages or Python are made of."""
    asked = json.loads((ROOT / "package.json").read_text())["dependencies"]
    return sorted(set(asked) - NOT_SHIPPED)


def of_npm(name: str, folder: Path) -> str:
    """The licence that an npm package brings. Raises: MissingLicence when it brings none."""
    if name in WITHOUT_TEXT:
        return read(TEXTS / WITHOUT_TEXT[name])
    found = sorted((folder / name).glob("LICEN[CS]E*"))
    if not found:
        raise MissingLicence(f"{name} is shipped without the text of its licence.")
    return read(found[0])


def of_python(name: str) -> str:
    """The licence that a Python package brings. Raises: MissingLicence when it brings none."""
    for path in metadata.files(name) or []:
        if "licenses" in path.parts and path.stem.upper().startswith("LICEN"):
            return read(Path(str(path.locate())))
    raise MissingLicence(f"{name} is shipped without the text of its licence.")


def in_theme() -> dict[str, str]:
    """What the theme has bundled, by name, with what its source says of its licence."""
    found: dict[str, list[str]] = {}
    for source, text in _sources():
        named = _PACKAGE.findall(source)
        if named:
            found.setdefault(named[-1], []).extend(_BANNER.findall(text))
    return {name: "\n\n".join(dict.fromkeys(banners)) or _named(name) for name, banners in sorted(found.items())}


def _named(name: str) -> str:
    try:
        return _BUNDLED[name]
    except KeyError:
        raise MissingLicence(f"The theme has bundled {name}, whose source names no licence.") from None


#: Parts of the theme's scripts whose source says nothing: what their authors say beside it.
_BUNDLED = {
    "rxjs": "Under the Apache License, Version 2.0, below.",
    "focus-visible": "Under the W3C Software and Document Notice and License.",
}


def _sources() -> Iterator[tuple[str, str]]:
    for path in sorted(_theme().rglob("*.js.map")):
        bundled = json.loads(path.read_text(encoding="utf-8"))
        yield from zip(bundled["sources"], bundled["sourcesContent"], strict=True)


def _theme() -> Path:
    return Path(str(files("material"))) / "templates/assets/javascripts"


def _icons() -> Path:
    return Path(str(files("material"))) / "templates/.icons/material/LICENSE"


def _typefaces() -> list[Path]:
    return sorted(FONTS.glob("*-licence.txt"))


def read(path: Path) -> str:
    """The text of a file. Raises: MissingLicence when it is not there."""
    try:
        return path.read_text(encoding="utf-8")
    except OSError:
        raise MissingLicence(f"{path.name} is missing: the text of a licence.") from None
