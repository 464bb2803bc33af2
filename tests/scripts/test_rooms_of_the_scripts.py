"""The rooms of the browser's scripts: who imports whom, upward never; every room is named, and every script once."""

import re
from pathlib import Path

import pytest

from scripts.tools.places import ROOT

SCRIPTS = ROOT / "docs/assets/javascript"
#: From the ground up: a room may import from itself and from those before it.
FLOORS = ("site.js", "python", "notices", "keeping", "printing", "calculator", "pages", "handbook.js")
IMPORTED = re.compile(r"""(?:\bfrom |^import |\bimport\()["'](\.[^"']+)["']""", re.MULTILINE)


def room_of(path: Path, folder: Path) -> str:
    """The first part of a script's place: its room, or a script that stands for itself."""
    return path.relative_to(folder).parts[0]


def faults(folder: Path) -> list[str]:
    found = []
    for path in sorted(folder.rglob("*.js")):
        room = room_of(path, folder)
        if room not in FLOORS or len(path.relative_to(folder).parts) > 2:
            found.append(f"{path.relative_to(folder)} lies in no known room")
            continue
        for name in IMPORTED.findall(path.read_text("utf-8")):
            other = (path.parent / name).resolve()
            if not other.is_file():
                found.append(f"{path.name} imports {name}, which is not there")
            elif FLOORS.index(room_of(other, folder.resolve())) > FLOORS.index(room):
                found.append(f"{path.name} of {room} imports {name}, which lies above")
    return found


def test_no_script_imports_from_a_room_above():
    assert faults(SCRIPTS) == []


def test_every_script_has_a_name_of_its_own():
    """The site has all of them in one folder."""
    names = [path.name for path in SCRIPTS.rglob("*.js")]
    assert sorted(set(names)) == sorted(names)


def test_one_script_knows_where_the_handbook_lies():
    assert [path.name for path in SCRIPTS.rglob("*.js") if "import.meta.url)" in path.read_text("utf-8")] == ["site.js"]


def test_nothing_is_kept_under_the_path_of_a_copy_on_a_disk():
    """Under another drive letter it would be out of sight."""
    assert [
        path.name for path in (SCRIPTS / "keeping").rglob("*.js") if re.search(r"\bPLACE\b", path.read_text())
    ] == []


@pytest.mark.parametrize(
    ("place", "text", "says"),
    [
        ("python/a.js", 'import { keep } from "../keeping/b.js";\n', "a.js of python imports ../keeping/b.js"),
        ("python/a.js", 'const late = () => import("../keeping/b.js");\n', "lies above"),
        ("python/a.js", 'import "../keeping/c.js";\n', "is not there"),
        ("cellar/a.js", "", "cellar/a.js lies in no known room"),
        ("python/deep/a.js", "", "python/deep/a.js lies in no known room"),
    ],
)
def test_a_planted_fault_is_found(place, text, says, tmp_path):
    for name, content in (("keeping/b.js", 'import "../python/sound.js";\n'), ("python/sound.js", ""), (place, text)):
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(content)
    assert len(faults(tmp_path)) == 1 and says in faults(tmp_path)[0]
