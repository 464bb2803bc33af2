"""The offline copy: which files the service worker keeps, and the hash of each."""

from __future__ import annotations

import hashlib
import json
import math
from pathlib import Path

from scripts.after_pages import esbuild
from scripts.tools.archives import integrity

SOURCE = Path(__file__).with_name("service_worker.js")
MEGABYTE = 1_000_000
_CHARSET = '<meta charset="utf-8">'


def is_kept(path: str) -> bool:
    """Whether a file of the site belongs to the offline copy: all but what no page of ours asks for."""
    for_other_languages = path.startswith("assets/javascripts/lunr/")
    return not (path == "sw.js" or path.endswith((".map", ".xml.gz")) or for_other_languages)


def put_edition_into(site: Path) -> str:
    """Write into every page which edition of the site it belongs to, so that a page and the kept copy can be compared,
    and how large the copy is."""
    files = _kept_files(site)
    edition = _hash("".join(f"{path}:{integrity(content)}" for path, content in files.items()))
    size = math.ceil(sum(map(len, files.values())) / MEGABYTE)
    meta = f'<meta name="edition" content="{edition}" data-megabytes="{size}">'
    for path in site.rglob("*.html"):
        page = path.read_text()
        path.write_text(page.replace(_CHARSET, f"{_CHARSET}{meta}", 1))
    return edition


def put_service_worker_into(site: Path, address: str) -> None:
    """Write the service worker and its list of files. Nothing of the site may change afterwards."""
    edition = put_edition_into(site)
    files = {path: [len(content), integrity(content)] for path, content in _kept_files(site).items()}
    code = esbuild.run("--minify", text=SOURCE.read_text())
    handbook = {"edition": edition, "version": _hash(json.dumps(files) + code), "address": address, "files": files}
    (site / "sw.js").write_text(f"const HANDBOOK = {json.dumps(handbook)};\n\n{code}")


def _kept_files(site: Path) -> dict[str, bytes]:
    paths = {path.relative_to(site).as_posix(): path for path in sorted(site.rglob("*")) if path.is_file()}
    return {name: path.read_bytes() for name, path in paths.items() if is_kept(name)}


def _hash(text: str) -> str:
    return hashlib.sha256(text.encode()).hexdigest()[:16]
