"""The baseline: a page that starts Pyodide the plain way, as its own guide shows, with the same wheels installed from
files."""

from __future__ import annotations

import json
import shutil
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from scripts.runtime import wheels
from scripts.tools.archives import pack
from scripts.tools.places import BUILD, NODE_MODULES

PYODIDE_FILES = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip", "pyodide-lock.json")
PAGE = """<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Plain</title></head>
<body><p id="answer">Waiting.</p>
<script type="module">
import {{ loadPyodide }} from "./pyodide.mjs";
const python = await loadPyodide();
await python.loadPackage({wheels}.map((name) => new URL(name, location.href).href), {{ messageCallback: () => {{}} }});
const face = python.pyimport("calculators.faces.browser");
let reply = "";
for (const text of face.replies({question})) reply = text;
document.querySelector("#answer").innerHTML = JSON.parse(reply).answer;
window.answeredAt = performance.now();
</script></body></html>"""


def make(site: Path, question: Mapping[str, Any]) -> None:
    """Write the page that wakes Python, asks one question and shows the answer, with all that it needs."""
    for name in PYODIDE_FILES:
        shutil.copyfile(NODE_MODULES / "pyodide" / name, site / name)
    (ours,) = (BUILD / "wheel").glob("*.whl")
    shutil.copyfile(ours, site / ours.name)
    pure = wheels.pyyaml()
    name, version = wheels.identity(pure)
    yaml = f"{name}-{version}-py3-none-any.whl"
    (site / yaml).write_bytes(pack(pure))
    (site / "index.html").write_text(
        PAGE.format(wheels=json.dumps([yaml, ours.name]), question=json.dumps(json.dumps(question)))
    )
