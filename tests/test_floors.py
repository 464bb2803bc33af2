"""Who may know whom. The floors, from the ground up:

1. `numerals` knows nobody of ours; `measure` knows `numerals`.
2. Subjects (every module not named below: cloth, hems, corners, …) know `measure` and, without circles, each other.
3. `drawing` knows subjects' results. It stands below the declarations, because a declaration names its drawing.
4. Declarations (kinds, phrase, rows, declaration, the house method and its format, bibliography,
   catalogue, answering, walk, what several calculators ask alike).
5. Faces.

Nothing imports upward; nothing here knows the site generator, the browser, or any package but PyYAML.
"""

import ast
import sys
from collections.abc import Iterator, Mapping

import pytest

from scripts.tools.places import ROOT

GROUND, SUBJECTS, DRAWING, DECLARATIONS, FACES = range(1, 6)
NAMED = {
    "numerals": GROUND, "measure": GROUND, "drawing": DRAWING, "faces": FACES, "__main__": FACES,
    "kinds": DECLARATIONS, "phrase": DECLARATIONS, "rows": DECLARATIONS, "declaration": DECLARATIONS, "house_method": DECLARATIONS,
    "bibliography": DECLARATIONS, "catalogue": DECLARATIONS, "answering": DECLARATIONS, "walk": DECLARATIONS, "method": DECLARATIONS, "handing": DECLARATIONS, "ticket": DECLARATIONS,
    "corner_questions": DECLARATIONS, "corner_of_a_batch": DECLARATIONS, "edge_questions": DECLARATIONS, "house_measures": DECLARATIONS, "seams": DECLARATIONS, "money": DECLARATIONS,
    "duration": DECLARATIONS, "job": DECLARATIONS, "everything": DECLARATIONS,
}  # fmt: skip
PACKAGES = {"yaml"}
#: Files, networks, processes and the page are none of a calculator's business. The terminal's entry alone looks at its terminal.
NOT_OURS = {"os", "pathlib", "socket", "ssl", "http", "urllib", "subprocess", "shutil", "tempfile", "js", "pyodide", "threading", "multiprocessing"}
MAY_LOOK_AT_ITS_TERMINAL = {"__main__"}


def floor(module: str) -> int:
    return NAMED.get(module.split(".")[1], SUBJECTS) if "." in module else GROUND


def imported(module: str, source: str, modules: set[str]) -> Iterator[str]:
    """Full names of what a module imports, wherever in it; of ours, the module itself rather than a name in it."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            yield from (name.name for name in node.names)
        elif isinstance(node, ast.ImportFrom):
            base = f"{'.'.join(module.split('.')[: -node.level])}.{node.module or ''}".rstrip(".") if node.level else node.module
            within = [f"{base}.{name.name}" for name in node.names if f"{base}.{name.name}" in modules]
            yield from within or [base]


def faults(sources: Mapping[str, str]) -> list[str]:
    """Everything in these modules (full name → text) that goes against the floors."""
    found = []
    knows = {module: set(imported(module, source, set(sources))) for module, source in sources.items()}
    for module, others in knows.items():
        for other in others:
            top = other.split(".")[0]
            if top == "calculators":
                if floor(other) > floor(module):
                    found.append(f"{module} imports {other} from a floor above")
            elif top not in sys.stdlib_module_names | PACKAGES:
                found.append(f"{module} imports {other}, which is neither Python's own nor PyYAML")
            elif top in NOT_OURS and module.split(".")[1] not in MAY_LOOK_AT_ITS_TERMINAL:
                found.append(f"{module} imports {other}: calculators touch no files, network, processes or page")
        if any(isinstance(node, ast.Name) and node.id in {"open", "eval", "exec", "compile", "__import__"} for node in ast.walk(ast.parse(sources[module]))):
            found.append(f"{module} opens a file or runs text as code")
    return found + [f"{' → '.join(circle)} is a circle" for circle in circles(knows)]


def circles(knows: Mapping[str, set[str]]) -> list[list[str]]:
    found, done = [], set()

    def follow(module: str, way: list[str]) -> None:
        if module in way:
            found.append([*way[way.index(module) :], module])
        elif module not in done and module in knows:
            for other in sorted(knows[module]):
                follow(other, [*way, module])
            done.add(module)

    for module in sorted(knows):
        follow(module, [])
    return found


def our_sources() -> dict[str, str]:
    files = sorted((ROOT / "calculators").rglob("*.py"))
    names = {file: ".".join(file.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__") for file in files}
    return {name: file.read_text() for file, name in names.items() if name != "calculators"}


def test_nothing_imports_upward_in_a_circle_or_from_elsewhere():
    assert faults(our_sources()) == []


def test_the_floors_are_all_there():
    assert {floor(module) for module in our_sources()} == {GROUND, SUBJECTS, DRAWING, DECLARATIONS, FACES}


@pytest.mark.parametrize(
    ("module", "line", "says"),
    [
        ("measure", "from calculators.hems import Hems", "floor above"), ("hems", "from calculators.kinds import Length", "floor above"),
        ("hems", "from calculators import kinds", "floor above"), ("layplan.search", "from calculators.drawing.cloth import x", "floor above"),
        ("drawing.cloth", "from calculators.declaration import Field", "floor above"), ("kinds", "import calculators.faces.markup", "floor above"),
        ("catalogue.hem", "from ..faces import markup", "floor above"), ("hems", "from mkdocs.plugins import x", "neither"), ("faces.browser", "import playwright", "neither"),
        ("hems", "import numpy", "neither"), ("faces.page", "import js", "page|neither"), ("hems", "def f():\n    import socket", "no files"), ("hems", "x = open('y')", "opens a file"),
        ("hems", "x = eval('1')", "runs text"), ("cloth", "from calculators.hems import Hems", "circle"),
    ],
)  # fmt: skip
def test_a_planted_fault_is_found(module, line, says):
    sources = {f"calculators.{module}": line, "calculators.hems": "from calculators.cloth import x", "calculators.kinds": "", "calculators.faces.markup": "", "calculators.faces": ""}
    sources |= {f"calculators.{module}": line}
    assert any(word in fault for fault in faults(sources) for word in says.split("|")), faults(sources)
