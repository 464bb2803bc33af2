"""The runtime's steps of the build."""

from __future__ import annotations

from tools import node
from tools.places import BUILD, NODE_MODULES, SITE, VENV
from tools.steps import Step
from tools.trouble import Trouble

from . import bundle

WHEEL = BUILD / "wheel"
BUNDLE = BUILD / "runtime"


def make_bundle() -> None:
    found = node.find(VENV)
    if not found:
        raise Trouble("The browser's Python is made with Node, and none was found; run scripts/serve.py, which brings one.")
    bundle.make(bundle.Parts(found.node, NODE_MODULES / "pyodide", WHEEL), BUNDLE)


def finish_site() -> None:
    bundle.put_into(SITE, BUNDLE)


before_pages = [
    Step(
        "Python for the browser",
        make_bundle,
        reads=["build/wheel", "scripts/runtime", "package-lock.json", "constraints.txt"],
        makes=["build/runtime/listing.json"],
    ),
]
after_pages = [
    Step("the browser's Python put into the site", finish_site, reads=["build/runtime", "scripts/runtime"], makes=["site/assets/runtime"]),
]
