"""The pages' scripts become few files, so that a page is not kept waiting for one small script after another."""

import shutil
import tempfile
from collections.abc import Sequence
from pathlib import Path

from scripts.after_pages import esbuild
from scripts.tools.places import ROOT, SITE
from scripts.tools.steps import Step

SOURCES = Path("docs/assets/javascript")
SCRIPTS = SITE / "assets/javascript"
#: What a page, or somebody who looks into one, asks for by name; what several of them need goes into files of its own.
OF_PAGES = ("handbook.js", "offline.js", "python.js", "store.js", "kept.js")
OF_WORKERS = ("python-worker.js", "journal-worker.js")
#: No modules: the first runs before them, the other in place of those that a browser refused.
BEFORE_ALL = ("at-first-paint.js", "as-text.js")
#: Written when the runtime is put into the site; until then the empty one stands there.
OF_THE_RUNTIME = "runtime-bundle.js"


def source(name: str) -> Path:
    """Where the script lies that the site has under a name: each name is used once, whatever its folder."""
    (found,) = (ROOT / SOURCES).rglob(name)
    return found


def join(target: Path = SCRIPTS, also: Sequence[str] = ()) -> None:
    """Write the scripts of the site, all into one folder, made from those in docs and from libraries of npm.

    Parameters: also, further scripts that a page asks for by name.
    """
    with tempfile.TemporaryDirectory() as folder:
        _join(folder, "--splitting", "--chunk-names=[name]-[hash]", *map(str, map(source, [*OF_PAGES, *also])))
        for worker in OF_WORKERS:
            _join(folder, str(source(worker)))
        shutil.rmtree(target, ignore_errors=True)
        target.mkdir(parents=True)
        for made in Path(folder).iterdir():
            shutil.copyfile(made, target / made.name)
    for name in BEFORE_ALL:
        (target / name).write_text(esbuild.run("--minify", text=source(name).read_text()))
    shutil.copyfile(source(OF_THE_RUNTIME), target / OF_THE_RUNTIME)


def _join(folder: str, *words: str) -> None:
    esbuild.run(
        "--bundle",
        "--minify",
        "--format=esm",
        "--external:*/runtime-bundle.js",
        "--entry-names=[name]",
        f"--outdir={folder}",
        *words,
    )


after_pages = [
    Step(
        "scripts joined",
        join,
        reads=[
            "package-lock.json",
            "scripts/after_pages/join_scripts.py",
            "scripts/after_pages/esbuild.py",
            str(SOURCES),
        ],
        makes=["site/assets/javascript/handbook.js"],
    )
]
