"""The runtime's steps of the build."""

from __future__ import annotations

from tools import node
from tools.places import BUILD, NODE_MODULES, SITE, VENV
from tools.steps import Step
from tools.trouble import Trouble

from . import bundle, policy

WHEEL = BUILD / "wheel"
BUNDLE = BUILD / "runtime"


def make_bundle() -> None:
    found = node.find(VENV)
    if not found:
        raise Trouble("The browser's Python is made with Node, and none was found; run scripts/serve.py, which brings one.")
    bundle.make(bundle.Parts(found.node, NODE_MODULES / "pyodide", WHEEL), BUNDLE)


def put_bundle_into_site() -> None:
    bundle.put_into(SITE, BUNDLE)


def put_policy_into_pages() -> None:
    policy.put_into(SITE)


before_pages = [
    Step(
        "Python for the browser",
        make_bundle,
        reads=["build/wheel", "scripts/runtime", "package-lock.json", "constraints.txt"],
        makes=["build/runtime/listing.json"],
    ),
]
after_pages = [
    Step("Python in the site", put_bundle_into_site, reads=["build/runtime", "scripts/runtime"], makes=["site/assets/runtime"]),
    Step("policy in the pages", put_policy_into_pages, reads=["scripts/runtime"]),
]
