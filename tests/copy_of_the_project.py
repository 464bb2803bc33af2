"""A copy of the project, for who follows the contributors' guide in it."""

import re
import shutil
import subprocess
import sys
from pathlib import Path

from calculators.asking.site_method import PACKAGED
from scripts.tools.places import NODE_MODULES, ROOT


def copied(house: Path, *names: str) -> Path:
    """The files and folders of the project by these names, laid into a folder beside what npm has brought, with the
    tests’ own house method."""
    for name in names:
        copy = shutil.copytree if (ROOT / name).is_dir() else shutil.copy
        copy(ROOT / name, house / name)
    (house / "node_modules").symlink_to(NODE_MODULES)
    if (house / "calculators").is_dir():
        shutil.copy(ROOT / "tests/house" / PACKAGED, house / "calculators/asking" / PACKAGED)
    return house


def run(house: Path, *words: str) -> str:
    """What Python prints in a copy; it must end well."""
    ran = run_anyhow(house, *words)
    assert ran.returncode == 0, ran.stdout + ran.stderr
    return ran.stdout


def run_anyhow(house: Path, *words: str) -> subprocess.CompletedProcess[str]:
    """The same, however it ends."""
    return subprocess.run([sys.executable, *words], cwd=house, capture_output=True, encoding="utf-8")


def guide() -> str:
    return (ROOT / "DEVELOPERS.md").read_text("utf-8")


def example(begins: str) -> str:
    """The one example of the guide whose first sentence begins so."""
    (found,) = re.findall(rf"^```python\n(\"\"\"{begins}.*?)^```", guide(), re.MULTILINE | re.DOTALL)
    return found
