"""A small site with the real machinery around calculators that do as a test orders."""

import threading
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from scripts.after_pages import join_scripts, offline, policy
from scripts.runtime import bundle
from scripts.setup import node
from scripts.tools.archives import pack
from scripts.tools.places import NODE_MODULES, VENV
from scripts.tools.server import open_server

STAND_IN = Path(__file__).parent / "stand_in"
METADATA = "Metadata-Version: 2.4\nName: workroom-calculators\nVersion: 0.1.0\n\n"
PAGE = """<!doctype html><html lang="en"><head><meta charset="utf-8"><title>{name}</title>
<script async src="{base}assets/javascript/at-first-paint.js"></script></head>
<body><main><h1>{name}</h1><p>Readable.</p><p id="edition">{edition}</p></main>
<script src="{base}assets/theme.js"></script>
<script type="module" src="{base}assets/javascript/python-notice.js"></script>
<script type="module" src="{base}assets/javascript/offline.js"></script></body></html>"""


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
def make_site(made: Path, tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], Path]:
    """Makes a small whole site around the stand-in, every page of which says its edition."""
    known: dict[str, Path] = {}

    def make(edition: str) -> Path:
        if edition not in known:
            known[edition] = tmp_path_factory.mktemp("small") / "site"
            _make_site(known[edition], made, edition)
        return known[edition]

    return make


def _make_site(site: Path, bundle_folder: Path, edition: str) -> None:
    join_scripts.join(site / "assets/javascript", also=["python-notice.js"])
    bundle.put_into(site, bundle_folder)
    (site / "assets/theme.js").write_text("window.document$ = { subscribe: (hear) => hear(document) };")
    (site / "assets/edition.txt").write_text(edition)
    for name, base in [("index.html", ""), ("404.html", ""), ("second/index.html", "../"), ("third/index.html", "../")]:
        (site / name).parent.mkdir(exist_ok=True)
        (site / name).write_text(PAGE.format(base=base, edition=edition, name=name))
    (site / "sitemap.xml").write_text(
        "<urlset><url><loc>http://built.for/</loc></url><url><loc>http://built.for/second/</loc></url></urlset>"
    )
    policy.put_into(site)
    offline.put_service_worker_into(site, "http://built.for/")


@pytest.fixture(scope="session")
def small_site(make_site: Callable[[str], Path]) -> Path:
    """The stand-in's site in its first edition."""
    return make_site("first")


@pytest.fixture(scope="session")
def small_address(small_site: Path) -> Iterator[str]:
    with open_server(small_site, 0) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield server.address
        server.shutdown()
