"""A small site with the real machinery around calculators that do as a test orders."""

import shutil
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest

from scripts.runtime import bundle
from scripts.runtime.archives import pack
from scripts.tools import node
from scripts.tools.places import NODE_MODULES, ROOT, VENV
from scripts.tools.server import open_server

STAND_IN = Path(__file__).parent / "stand_in"
METADATA = "Metadata-Version: 2.4\nName: workroom-calculators\nVersion: 0.1.0\n\n"
PAGE = '<!doctype html><html lang="en"><title>Stand-in</title><p>Readable.</p><script type="module" src="assets/javascript/python.js"></script>'


@pytest.fixture(scope="session")
def parts(tmp_path_factory: pytest.TempPathFactory) -> bundle.Parts:
    """What the stand-in's bundle is made from."""
    folder = tmp_path_factory.mktemp("wheel")
    files = {path.relative_to(STAND_IN).as_posix(): path.read_bytes() for path in STAND_IN.rglob("*.py")}
    files["workroom_calculators-0.1.0.dist-info/METADATA"] = METADATA.encode()
    (folder / "workroom_calculators-0.1.0-py3-none-any.whl").write_bytes(pack(files))
    return bundle.Parts(node.find(VENV).node, NODE_MODULES / "pyodide", folder)


@pytest.fixture(scope="session")
def made(parts: bundle.Parts, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The stand-in's bundle."""
    target = tmp_path_factory.mktemp("made") / "bundle"
    bundle.make(parts, target)
    return target


@pytest.fixture(scope="session")
def small_site(made: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site of one page with the stand-in's bundle."""
    site = tmp_path_factory.mktemp("small") / "site"
    shutil.copytree(ROOT / "docs/assets/javascript", site / "assets/javascript")
    bundle.put_into(site, made)
    (site / "index.html").write_text(PAGE)
    return site


@pytest.fixture(scope="session")
def small_address(small_site: Path) -> Iterator[str]:
    with open_server(small_site, 0) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield server.address
        server.shutdown()
