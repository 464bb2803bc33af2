"""The copy that opens by double click: a folder and a zip that need a browser and nothing else."""

from __future__ import annotations

import base64
import gzip
import html
import json
import re
import shutil
import zipfile
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

from scripts.after_pages import esbuild, policy
from scripts.runtime.served_name import served_name
from scripts.tools.archives import pack

HERE = Path(__file__).parent / "portable"
SCRIPTS = "assets/javascript"
SOURCES = Path(__file__).parents[2] / "docs" / SCRIPTS
FOLDER = "assets/portable"
#: What keeps and updates the served site has nothing to do here.
NOT_NEEDED = {"offline.js"}
#: No module: it runs before them.
FIRST = "at-first-paint.js"
ONLY_SERVED = ("runtime", "*.map", "lunr", "sw.js", "404.html", "sitemap*", "*.webmanifest")
README = "Open index.html in a browser. The whole handbook is in this folder; it needs no network.\n"


def make(site: Path, bundle: Path, target: Path) -> Path:
    """Write the copy of a built site into a folder that is made anew. Returns: the zip beside it, with the same
    content.

    Raises: FileExistsError when the folder is there and was not made by this.
    """
    if target.exists() and not (target / FOLDER).is_dir() and any(target.iterdir()):
        raise FileExistsError(target)
    shutil.rmtree(target, ignore_errors=True)
    shutil.copytree(site, target, ignore=shutil.ignore_patterns(*ONLY_SERVED))
    pages = {path: path.read_text() for path in sorted(target.rglob("*.html"))}
    _write_start(target, entries=_entries(pages.values()))
    shutil.rmtree(target / SCRIPTS)
    _write_search(target / "search")
    _write_runtime(bundle, target / FOLDER)
    rule = policy.policy_for(pages.values(), *policy.FROM_TEXTS)
    for path, page in pages.items():
        path.write_text(_page(page, path.relative_to(target).parent, rule))
    (target / "README.txt").write_text(README)
    return _zip(target)


def _entries(pages: Iterable[str]) -> list[str]:
    found = dict.fromkeys(name for page in pages for name in _MODULE.findall(page))
    return [name for name in found if name not in {FIRST, *NOT_NEEDED}]


_MODULE = re.compile(r'<script\b[^>]*\bsrc="[^"]*/javascript/([\w.-]+)"[^>]*></script>\s*')
_LINK = re.compile(r'(<(?:a|area|link)\b[^>]*\bhref=")([^"]*)"')
_SERVED_LINK = re.compile(r'<link\b[^>]*\brel="(?:canonical|manifest|modulepreload|preload|prev|next)"[^>]*>\s*')
_CONFIG = re.compile(r'(<script id="__config" type="application/json">)(.*?)(</script>)', re.DOTALL)
_POLICY = re.compile(r'(<meta http-equiv="Content-Security-Policy" content=")[^"]*(">)')


def _page(page: str, folder: Path, rule: str) -> str:
    """One page, made to work from a disk."""
    up = "../" * len(folder.parts)
    page = _SERVED_LINK.sub("", _MODULE.sub("", page))
    page = _CONFIG.sub(lambda found: found[1] + json.dumps(_settings(json.loads(found[2]))) + found[3], page)
    page = _LINK.sub(lambda found: f'{found[1]}{_with_index(found[2])}"', page)
    start = f'<script src="{up}{FOLDER}/start.js"></script>'
    return _POLICY.sub(lambda found: found[1] + html.escape(rule) + found[2] + start, page, count=1)


def _settings(theme: dict[str, Any]) -> dict[str, Any]:
    """The theme's settings without moving between pages by request: a disk answers none, and the theme then never tells
    its
    scripts that a page is there."""
    return theme | {"features": [each for each in theme["features"] if not each.startswith("navigation.instant")]}


def _with_index(address: str) -> str:
    """A link to a folder, as a link to the page in it."""
    if re.match(r"[a-z]+:|#|/", address):
        return address
    path, mark, rest = re.split(r"([?#]|$)", address, maxsplit=1)
    if path in (".", "..") or path.endswith("/.."):
        path += "/"
    return (path + "index.html" if path == "" or path.endswith("/") else path) + mark + rest


def _write_start(target: Path, entries: list[str]) -> None:
    modules = {path.name: path.read_text() for path in (target / SCRIPTS).glob("*.js")}
    assemble = (HERE / "assemble.js").read_text()
    in_worker = with_imports(
        "python-worker.js",
        {path.name: path.read_text() for path in SOURCES.rglob("*.js")}
        | {
            "python-files.js": (HERE / "python-files.js").read_text(),
            "runtime-bundle.js": modules["runtime-bundle.js"],
        },
    )
    # Without comments: an import that one of them speaks of is none.
    lean = {name: esbuild.run("--minify", text=text) for name, text in in_worker.items()}
    worker = {"modules": lean, "folder": "handbook:///"}
    (search_worker,) = (target / "assets/javascripts/workers").glob("search.*.js")
    handbook = {
        "modules": modules,
        "entries": entries,
        "searchWorker": search_worker.read_text(),
        "workerStart": f"const HANDBOOK = {json.dumps(worker)};\n{assemble}\n{(HERE / 'worker-start.js').read_text()}",
    }
    (target / FOLDER).mkdir(parents=True)
    (target / FOLDER / "start.js").write_text(
        f"const HANDBOOK = {json.dumps(handbook)};\n{assemble}\n{(HERE / 'start.js').read_text()}\n{modules[FIRST]}"
    )


def with_imports(name: str, scripts: Mapping[str, str]) -> dict[str, str]:
    """A script, those that it imports, those that these import, and so on, by their names without folders."""
    found: dict[str, str] = {}
    waiting = [name]
    while waiting:
        each = waiting.pop()
        if each not in found:
            found[each] = scripts[each]
            waiting += _IMPORT.findall(scripts[each])
    return found


_IMPORT = re.compile(r'^(?:import|export)\b[^"\';]*["\'](?:\.\.?/)+(?:[\w-]+/)*([\w-]+\.js)["\']', re.MULTILINE)


def _write_search(folder: Path) -> None:
    index = json.loads((folder / "search_index.json").read_text())
    for entry in index["docs"]:
        entry["location"] = _with_index(entry["location"])
    (folder / "search_index.js").write_text(f"var __index = {json.dumps(index)};\n")
    (folder / "search_index.json").unlink()


def _write_runtime(bundle: Path, folder: Path) -> None:
    for entry in json.loads((bundle / "listing.json").read_text())["files"].values():
        packed = gzip.compress((bundle / entry["name"]).read_bytes(), mtime=0)
        text = base64.b64encode(packed).decode()
        name = served_name(entry["name"])
        (folder / f"{name}.js").write_text(f'handbookFile("{name}", "{text}");\n')


def _zip(target: Path) -> Path:
    archive = target.with_name(target.name + ".zip")
    files = {
        f"{target.name}/{path.relative_to(target).as_posix()}": path.read_bytes()
        for path in target.rglob("*")
        if path.is_file()
    }
    archive.write_bytes(pack(files, zipfile.ZIP_DEFLATED))
    return archive
