"""Make the browser's Python once more, in another folder, and compare it with the one in build/, byte for byte.

    .venv/bin/python scripts/runtime/check_bundle.py    after a build; half a minute

What may differ on another machine: `snapshot.gz` (another zlib packs otherwise), everything compiled (another Pyodide).
"""

import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from scripts.runtime import bundle
from scripts.runtime.steps import BUNDLE, WHEEL
from scripts.setup import node
from scripts.tools.command_error import CommandError, run_main
from scripts.tools.places import NODE_MODULES, VENV


def main() -> int:
    if not (BUNDLE / "listing.json").is_file():
        raise CommandError("Build the site first: python3 scripts/serve.py --build")
    with tempfile.TemporaryDirectory() as folder:
        again = Path(folder, "runtime")
        bundle.make(bundle.Parts(node.found(VENV).node, NODE_MODULES / "pyodide", WHEEL), again)
        names = sorted({path.name for place in (BUNDLE, again) for path in place.iterdir()})
        differing = [name for name in names if not is_same(BUNDLE / name, again / name)]
    for name in names:
        print(f"{'DIFFERS' if name in differing else 'same   '}  {name}")
    return 1 if differing else 0


def is_same(one: Path, other: Path) -> bool:
    return one.is_file() and other.is_file() and one.read_bytes() == other.read_bytes()


if __name__ == "__main__":
    run_main(main)
