"""The pages' scripts become few files, so that a page is not kept waiting for one small script after another."""

import shutil
import tempfile
from pathlib import Path

from . import esbuild
from .places import ROOT, SITE
from .steps import Step

SOURCES = Path("docs/assets/javascript")
SCRIPTS = SITE / "assets/javascript"
#: What a page, or somebody who looks into one, asks for by name; what several of them need goes into files of its own.
OF_PAGES = ("handbook.js", "offline.js", "python.js", "store.js", "kept.js")
OF_THE_WORKER = "python-worker.js"
#: Stand for themselves: one is no module, the other is written when the runtime is put into the site.
AS_THEY_ARE = ("at-first-paint.js", "runtime-bundle.js")


def join(target: Path = SCRIPTS) -> None:
    """Write the scripts of the site, made from those in docs and from libraries of npm."""
    with tempfile.TemporaryDirectory() as folder:
        _join(folder, "--splitting", "--chunk-names=[name]-[hash]", *(str(SOURCES / name) for name in OF_PAGES))
        _join(folder, str(SOURCES / OF_THE_WORKER))
        shutil.rmtree(target, ignore_errors=True)
        target.mkdir(parents=True)
        for made in Path(folder).iterdir():
            shutil.copyfile(made, target / made.name)
    for name in AS_THEY_ARE:
        shutil.copyfile(ROOT / SOURCES / name, target / name)


def _join(folder: str, *words: str) -> None:
    esbuild.run(
        "--bundle",
        "--minify-identifiers",
        "--minify-syntax",
        "--format=esm",
        "--external:*/runtime-bundle.js",
        f"--outdir={folder}",
        *words,
    )


after_pages = [
    Step(
        "scripts joined",
        join,
        reads=["package-lock.json", "scripts/tools/join_scripts.py", "scripts/tools/esbuild.py", str(SOURCES)],
        makes=["site/assets/javascript/handbook.js"],
    )
]
