"""Build the handbook into site/: the steps, in order. Run by serve.py and test.py, inside .venv.

To add a step, write what it does in a file of its own and give it a line in STEPS. Slow work belongs before the pages
and leaves its result in build/, since making the pages empties site/; what goes into site/ comes after them.

SITE_URL is the address it is built for, SITE_NAME what it is called, SITE_COLOUR the
colour of its thread. SITE_HOUSE is a folder whose files stand in place
of those of the same name in `calculators/asking`: the house method, and a studio's own over it.
"""

import argparse
import os
import shutil
import subprocess
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from scripts.after_pages.steps import after_pages
from scripts.runtime.steps import before_pages
from scripts.tools.command_error import CommandError, run_main
from scripts.tools.places import ADDRESS_FILE, BUILD, ROOT, SITE
from scripts.tools.stamps import files_below, fingerprint_of_files
from scripts.tools.steps import Step, run_steps

ADDRESS = os.environ.get("SITE_URL", "http://127.0.0.1:8000/")
NAME = os.environ.get("SITE_NAME", "")
COLOUR = os.environ.get("SITE_COLOUR", "")
HOUSE = Path(os.environ.get("SITE_HOUSE", ""))
ASKING = ROOT / "calculators/asking"


def call(*command: str) -> None:
    """Run one command of a step inside the repository, told the site's address.

    Raises: Trouble when it fails; what it printed says why.
    """
    if subprocess.run(command, cwd=ROOT, env=os.environ | {"SITE_URL": ADDRESS, "NO_MKDOCS_2_WARNING": "1"}).returncode:
        raise CommandError(f"The build stopped at `{' '.join(command)}`; the lines above say why.")


def of_the_house() -> list[Path]:
    """The files of SITE_HOUSE that differ from those of the handbook as it comes."""
    files = files_below(HOUSE, ["."]) if os.environ.get("SITE_HOUSE") else []
    return [
        file
        for file in files
        if not (ASKING / file.name).is_file() or file.read_bytes() != (ASKING / file.name).read_bytes()
    ]


def make_wheel() -> None:
    wheels = BUILD / "wheel"
    shutil.rmtree(wheels, ignore_errors=True)
    source = ROOT
    if of_the_house():
        source = BUILD / "wheel-source"
        shutil.rmtree(source, ignore_errors=True)
        shutil.copytree(ROOT / "calculators", source / "calculators", ignore=shutil.ignore_patterns("__pycache__"))
        for name in ("pyproject.toml", "LICENSE", "LICENSE-text.md"):
            shutil.copyfile(ROOT / name, source / name)
        for file in of_the_house():
            shutil.copyfile(file, source / "calculators/asking" / file.name)
    call(
        sys.executable, "-m", "pip", "wheel", "--quiet", "--disable-pip-version-check", "--no-index", "--no-deps",
        "--no-build-isolation", "--wheel-dir", str(wheels), str(source),
    )  # fmt: skip


def make_pages() -> None:
    """Beside the site first, so that pages that cannot be made leave the old ones where they are."""
    made = BUILD / "pages"
    call(sys.executable, "-m", "mkdocs", "--quiet", "build", "--strict", "--site-dir", str(made))
    shutil.rmtree(SITE, ignore_errors=True)
    made.rename(SITE)
    ADDRESS_FILE.write_text(ADDRESS)


HOUSE_KEY = fingerprint_of_files(HOUSE, [file.name for file in of_the_house()]) if of_the_house() else ""
STEPS = [
    Step(
        "calculators as a wheel",
        make_wheel,
        reads=["calculators", "pyproject.toml", "LICENSE", "scripts/build.py"],
        makes=["build/wheel"],
        settings=[HOUSE_KEY],
    ),
    *before_pages(),
    Step(
        "pages",
        make_pages,
        reads=[
            "calculators",
            "docs",
            "mkdocs.yml",
            "overrides",
            "scripts",
            "tests/reference",
            "tests/trade/lay_plan/instances",
            "pins/site.txt",
            "package-lock.json",
        ],
        makes=["site/index.html", "build/address"],
        settings=[ADDRESS, NAME, COLOUR, HOUSE_KEY],
    ),
    *after_pages(ADDRESS),
]


def main() -> int:
    argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter).parse_args()
    run_steps(STEPS, ROOT, BUILD / "stamps")
    return 0


if __name__ == "__main__":
    run_main(main)
