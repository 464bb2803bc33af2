"""The runtime's steps of the build."""

from __future__ import annotations

from tools import node
from tools.places import BUILD, NODE_MODULES, SITE, VENV
from tools.steps import Step
from tools.trouble import Trouble

from . import bundle, offline, policy

WHEEL = BUILD / "wheel"
BUNDLE = BUILD / "runtime"


def make_bundle() -> None:
    found = node.find(VENV)
    if not found:
        raise Trouble(
            "The browser's Python is made with Node, and none was found; run scripts/serve.py, which brings one."
        )
    bundle.make(bundle.Parts(found.node, NODE_MODULES / "pyodide", WHEEL), BUNDLE)


def before_pages() -> list[Step]:
    """The slow part: the bundle, in build/."""
    reads = ["build/wheel", "scripts/runtime", "package-lock.json", "pins/site.txt"]
    return [Step("Python for the browser", make_bundle, reads, makes=["build/runtime/listing.json"])]


def after_pages(address: str) -> list[Step]:
    """What is done to the built pages, in this order: the service worker comes last, since it knows the hash of every
    file."""
    reads = ["build/runtime", "scripts/runtime"]
    return [
        Step("Python in the site", lambda: bundle.put_into(SITE, BUNDLE), reads, makes=["site/assets/runtime"]),
        Step("policy in the pages", lambda: policy.put_into(SITE), reads),
        Step("offline copy", lambda: offline.put_service_worker_into(SITE, address), reads, makes=["site/sw.js"]),
    ]
