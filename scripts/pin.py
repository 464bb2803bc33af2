"""Write pins/ anew: for each extra of pyproject.toml every package it brings in, at one version, with the hashes of all
its files.

    .venv/bin/python scripts/pin.py

Change a version in pyproject.toml, run this, then run the tests. It takes uv, which installing needs not. The versions
are those that the oldest supported Python takes, on every kind of machine, and alike in all extras.
"""

import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from scripts.setup import environment
from scripts.tools.command_error import CommandError, run_main
from scripts.tools.places import ROOT

OLDEST = "3.11"
HEADING = "# Every package that the extra brings in, at one version, with its hashes. Made by scripts/pin.py.\n"


def resolved(uv: str, *words: str) -> str:
    """The pinned packages with their hashes, as pip reads them; installs nothing.

    Raises: Trouble when the packages do not go together.
    """
    command = [
        uv, "pip", "compile", "pyproject.toml", "--universal", "--python-version", OLDEST, "--fork-strategy", "fewest",
        "--generate-hashes", "--no-annotate", "--no-header", "--quiet", *words,
    ]  # fmt: skip
    answer = subprocess.run(command, cwd=ROOT, stdout=subprocess.PIPE, text=True)
    if answer.returncode:
        raise CommandError("The packages of pyproject.toml could not be resolved together; the lines above say why.")
    return answer.stdout


def main() -> int:
    uv = shutil.which("uv")
    if not uv:
        raise CommandError("uv makes the pins and is not there; `pip install uv` brings it, then run this again.")
    with tempfile.TemporaryDirectory() as folder:
        together = Path(folder, "all.txt")
        together.write_text(resolved(uv, "--all-extras"))
        for extra in environment.extras(ROOT):
            pins = resolved(uv, "--extra", extra, "--constraint", str(together))
            environment.pins_of(ROOT, extra).write_text(HEADING + pins)
    return 0


if __name__ == "__main__":
    run_main(main)
