"""The rooms of scripts/: who imports whom, upward never; every room is named here."""

import ast
from pathlib import Path

import pytest

from scripts.tools.places import ROOT

#: From the ground up: a room may import from itself and from those before it; a command lies beside the rooms.
FLOORS = ("tools", "setup", "plan_cases", "checked", "pages", "runtime", "after_pages", "bench")
COMMANDS = {"serve.py", "test.py", "build.py", "pin.py"}


def faults(folder: Path) -> list[str]:
    found = []
    for path in sorted(folder.rglob("*.py")):
        room = path.relative_to(folder).parts[0]
        if room in COMMANDS:
            continue
        if room not in FLOORS:
            found.append(f"{path.relative_to(folder)} lies in no known room")
            continue
        for other in rooms_imported(path):
            if other not in FLOORS or FLOORS.index(other) > FLOORS.index(room):
                found.append(f"{path.relative_to(folder)} imports from {other}")
    return found


def rooms_imported(path: Path) -> list[str]:
    found = []
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        names = [each.name for each in node.names] if isinstance(node, ast.Import | ast.ImportFrom) else []
        if isinstance(node, ast.ImportFrom):
            names = [f"{node.module}.{name}" for name in names]
            assert not node.level, f"{path}: a room is named in full"
        found += [name.split(".")[1] for name in names if name.startswith("scripts.")]
    return found


def test_no_room_imports_from_one_above():
    assert faults(ROOT / "scripts") == []


@pytest.mark.parametrize(
    ("place", "text", "says"),
    [
        ("tools/a.py", "from scripts.setup import node\n", "tools/a.py imports from setup"),
        ("tools/a.py", "import scripts.setup.node\n", "tools/a.py imports from setup"),
        ("setup/a.py", "def later():\n    from scripts.pages.markers import MARKER\n", "imports from pages"),
        ("setup/a.py", "from scripts.serve import port\n", "imports from serve"),
        ("cellar/a.py", "", "cellar/a.py lies in no known room"),
        ("loose.py", "", "loose.py lies in no known room"),
    ],
)
def test_a_planted_fault_is_found(place, text, says, tmp_path):
    (tmp_path / place).parent.mkdir(exist_ok=True)
    (tmp_path / place).write_text(text)
    assert len(faults(tmp_path)) == 1 and says in faults(tmp_path)[0]
