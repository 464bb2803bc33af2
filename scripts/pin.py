"""Write constraints.txt anew: every package that the extras of pyproject.toml bring in, at the version pip takes today.

    .venv/bin/python scripts/pin.py

Change a version in pyproject.toml, run this, then run the tests. The versions are those that the oldest supported
Python
takes, since the newer ones take them too.
"""

import json
import subprocess
import sys

from tools import environment
from tools.places import ROOT
from tools.trouble import Trouble, run_main

OLDEST = "3.11.0"
# pip resolves for another Python from wheels alone; this one needs no other package.
WITHOUT_WHEEL = "rectpack"
HEADING = "# Every package that pyproject.toml's extras bring in, each at one version. Made by scripts/pin.py."


def resolved(wanted: list[str]) -> dict[str, str]:
    """The version of each package that would be installed, by name; installs nothing.

    Raises: Trouble when the packages do not go together.
    """
    command = [
        sys.executable, "-m", "pip", "install", "-qq", "--dry-run", "--ignore-installed", "--report", "-",
        "--python-version", OLDEST, "--only-binary", ":all:", "--target", "unused", *wanted,
    ]  # fmt: skip
    answer = subprocess.run(command, stdout=subprocess.PIPE, text=True)
    if answer.returncode:
        raise Trouble("The packages of pyproject.toml could not be resolved together; the lines above say why.")
    packages = [entry["metadata"] for entry in json.loads(answer.stdout)["install"]]
    return {package["name"]: package["version"] for package in packages}


def main() -> int:
    wanted = environment.requirements(ROOT, *environment.extras(ROOT))
    # Those with a condition are for newer Pythons; what they need is among the others.
    apart = [line for line in wanted if ";" in line or line.startswith(WITHOUT_WHEEL)]
    pins = [line.partition(";")[0].strip() for line in apart]
    pins += [f"{name}=={version}" for name, version in resolved([line for line in wanted if line not in apart]).items()]
    (ROOT / "constraints.txt").write_text("\n".join([HEADING, *sorted(pins, key=str.lower)]) + "\n")
    return 0


if __name__ == "__main__":
    run_main(main)
