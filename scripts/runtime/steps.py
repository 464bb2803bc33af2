"""The runtime's steps of the build."""

from __future__ import annotations

from scripts.runtime import bundle
from scripts.setup import node
from scripts.tools.command_error import CommandError
from scripts.tools.places import BUILD, NODE_MODULES, VENV
from scripts.tools.steps import Step

WHEEL = BUILD / "wheel"
BUNDLE = BUILD / "runtime"


def make_bundle() -> None:
    found = node.find(VENV)
    if not found:
        raise CommandError(
            "The browser's Python is made with Node, and none was found; run scripts/serve.py, which brings one."
        )
    bundle.make(bundle.Parts(found.node, NODE_MODULES / "pyodide", WHEEL), BUNDLE)


def before_pages() -> list[Step]:
    """The slow part: the bundle, in build/."""
    reads = ["build/wheel", "scripts/runtime", "scripts/tools/archives.py", "package-lock.json", "pins/site.txt"]
    return [Step("Python for the browser", make_bundle, reads, makes=["build/runtime/listing.json"])]
