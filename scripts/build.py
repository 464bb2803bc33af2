"""Build the handbook into site/: the steps, in order. Run by serve.py and test.py, inside .venv.

To add a step, write what it does in a file of its own and give it a line in STEPS. Slow work belongs before the pages
and leaves its result in build/, since making the pages empties site/; what goes into site/ comes after them.
"""

import os
import shutil
import subprocess
import sys

from runtime import steps as runtime
from tools import fewer_requests, join_scripts
from tools.places import ADDRESS_FILE, BUILD, ROOT, SITE
from tools.steps import Step, run_steps
from tools.trouble import Trouble, run_main

ADDRESS = os.environ.get("SITE_URL", "http://127.0.0.1:8000/")


def call(*command: str) -> None:
    """Run one command of a step inside the repository, told the site's address.

    Raises: Trouble when it fails; what it printed says why.
    """
    if subprocess.run(command, cwd=ROOT, env=os.environ | {"SITE_URL": ADDRESS, "NO_MKDOCS_2_WARNING": "1"}).returncode:
        raise Trouble(f"The build stopped at `{' '.join(command)}`; the lines above say why.")


def make_wheel() -> None:
    wheels = BUILD / "wheel"
    shutil.rmtree(wheels, ignore_errors=True)
    call(
        sys.executable, "-m", "pip", "wheel", "--quiet", "--disable-pip-version-check", "--no-index", "--no-deps",
        "--no-build-isolation", "--wheel-dir", str(wheels), ".",
    )  # fmt: skip


def make_pages() -> None:
    call(sys.executable, "-m", "mkdocs", "--quiet", "build", "--strict", "--site-dir", str(SITE))
    ADDRESS_FILE.write_text(ADDRESS)


STEPS = [
    Step(
        "calculators as a wheel",
        make_wheel,
        reads=["calculators", "pyproject.toml", "LICENSE", "scripts/build.py"],
        makes=["build/wheel"],
    ),
    *runtime.before_pages(),
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
            "constraints.txt",
            "package-lock.json",
        ],
        makes=["site/index.html", "build/address"],
        settings=[ADDRESS],
    ),
    *join_scripts.after_pages,
    *fewer_requests.after_pages,
    *runtime.after_pages(ADDRESS),
]


def main() -> int:
    run_steps(STEPS, ROOT, BUILD / "stamps")
    return 0


if __name__ == "__main__":
    run_main(main)
