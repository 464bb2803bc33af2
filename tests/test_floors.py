"""Which room may know which. The rooms of `calculators/`, from the ground up, each knowing only those before it:

Values know nobody of ours. The trade's arithmetic knows values, and drawing knows the trade's results. Drawing stands
below the
declarations (`asking`, `catalogue`), because a declaration names its drawing. A batch chains calculators; documents
keep what
was typed; the ticket gathers the answers of a batch; faces show all of it.

Nothing imports from a room further down this list, or from one that is not in it; nothing here knows the site
generator, the
browser, or any package but PyYAML.
"""

import ast
import sys
from collections.abc import Iterable, Iterator, Mapping

import pytest

from scripts.tools.places import ROOT

ROOMS = [
    "values",
    "trade", "trade.corners", "trade.sections", "trade.stitches", "trade.articles",
    "trade.lay_plan.solving", "trade.lay_plan",
    "drawing",
    "asking", "articles", "catalogue", "batch",
    "documents", "documents.house_method", "documents.job", "documents.exchange",
    "ticket",
    "faces.page", "faces.house_method", "faces.job", "faces.ticket", "faces.handing", "faces",
    "",
]  # fmt: skip
#: Rooms whose own folders (a calculator of several files, …) count as the room itself.
WITH_FOLDERS = {"catalogue"}
PACKAGES = {"yaml"}
#: Files, networks, processes and the page are none of a calculator's business. The terminal's entry alone looks at its
#: terminal.
NOT_OURS = {
    "os",
    "pathlib",
    "socket",
    "ssl",
    "http",
    "urllib",
    "subprocess",
    "shutil",
    "tempfile",
    "js",
    "pyodide",
    "threading",
    "multiprocessing",
}
MAY_LOOK_AT_ITS_TERMINAL = {"calculators.__main__"}


def room_of(module: str, rooms: set[str]) -> str:
    """The room a module lies in: `rooms` are the folders that there are, by full name, each of which may be imported as
    a module itself."""
    folder = module if module in rooms else module.rpartition(".")[0]
    name = folder.removeprefix("calculators").removeprefix(".")
    return next((each for each in WITH_FOLDERS if name.startswith(f"{each}.")), name)


def imported(module: str, source: str, modules: set[str]) -> Iterator[str]:
    """Full names of what a module imports, wherever in it; of ours, the module itself rather than a name in it."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            yield from (name.name for name in node.names)
        elif isinstance(node, ast.ImportFrom):
            base = (
                f"{'.'.join(module.split('.')[: -node.level])}.{node.module or ''}".rstrip(".")
                if node.level
                else node.module
            )
            within = [f"{base}.{name.name}" for name in node.names if f"{base}.{name.name}" in modules]
            yield from within or [base]


def faults(sources: Mapping[str, str], folders: set[str]) -> list[str]:
    """Everything in these modules (full name → text) that goes against the floors; `folders` by full name."""
    found = []
    knows = {module: set(imported(module, source, set(sources))) for module, source in sources.items()}
    for module, others in knows.items():
        room = room_of(module, folders)
        if room not in ROOMS:
            found.append(f"{module} lies in a room that is not in the list")
            continue
        if room == "" and module not in {"calculators", "calculators.__main__"}:
            found.append(f"{module} lies beside the rooms, not in one")
        for other in others:
            top = other.split(".")[0]
            if top == "calculators":
                there = room_of(other, folders)
                if there in ROOMS and ROOMS.index(there) > ROOMS.index(room):
                    found.append(f"{module} imports {other} from a floor above")
            elif top not in sys.stdlib_module_names | PACKAGES:
                found.append(f"{module} imports {other}, which is neither Python's own nor PyYAML")
            elif top in NOT_OURS and module not in MAY_LOOK_AT_ITS_TERMINAL:
                found.append(f"{module} imports {other}: calculators touch no files, network, processes or page")
        if any(
            isinstance(node, ast.Name) and node.id in {"open", "eval", "exec", "compile", "__import__"}
            for node in ast.walk(ast.parse(sources[module]))
        ):
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
    return {name: file.read_text() for file, name in names.items()}


def our_folders() -> set[str]:
    return {".".join(file.parent.relative_to(ROOT).parts) for file in (ROOT / "calculators").rglob("*.py")}


def test_nothing_imports_upward_in_a_circle_or_from_elsewhere():
    assert faults(our_sources(), our_folders()) == []


def test_every_room_of_the_list_is_there():
    assert {room_of(module, our_folders()) for module in our_sources()} == set(ROOMS)


@pytest.mark.parametrize(
    ("module", "line", "says"),
    [
        ("values.measure", "from calculators.trade.hems import Hems", "floor above"), ("trade.hems", "from "
            "calculators.values.kinds import Length\nx = eval('1')", "runs text"),
        ("trade.hems", "from calculators.asking import declaration", "floor above"),
        ("trade.lay_plan.solving.search", "from "
            "calculators.trade.lay_plan.order import x", "floor above"),
        ("drawing.cloth", "from calculators.asking.declaration import Field", "floor above"), ("asking.rows", "import "
            "calculators.faces.page.markup", "floor above"),
        ("catalogue.hem", "from ..faces.page import markup", "floor above"),
        ("trade.hems", "from mkdocs.plugins import x", "neither"), ("faces.browser", "import playwright", "neither"),
        ("trade.hems", "import numpy", "neither"), ("faces.page.x", "import js", "page|neither"),
        ("trade.hems", "def f():\n    import socket", "no files"),
        ("trade.hems", "x = open('y')", "opens a file"),
        ("trade.cloth", "from calculators.trade.hems import Hems", "circle"),
        ("attic.hems", "", "not in the list"), ("trade.attic.hems", "", "not in the list"),
        ("hems", "", "beside the rooms"),
    ],
)  # fmt: skip
def test_a_planted_fault_is_found(module, line, says):
    sources = {
        "calculators.trade.hems": "from calculators.trade.cloth import x", "calculators.trade.cloth": "",
        "calculators.values.kinds": "",
        "calculators.trade.lay_plan.order": "", "calculators.asking.declaration": "",
        "calculators.faces.page.markup": "",
    }  # fmt: skip
    sources |= {f"calculators.{module}": line}
    folders = {name.rpartition(".")[0] for name in sources}
    assert any(word in fault for fault in faults(sources, folders) for word in says.split("|")), faults(
        sources, folders
    )


#: Where the browser and the terminal come in.
ENTRIES = {"calculators.__main__", "calculators.faces.browser"}


def shipped_for_nothing(sources: Mapping[str, str], others: Iterable[str]) -> list[str]:
    """Modules that neither ours nor one of these other texts (the build's) imports: what only tests use belongs to
    them. A calculator and an article are found by themselves."""
    texts = [*sources.items(), *(("", text) for text in others)]
    used = {name for module, text in texts for name in imported(module, text, set(sources)) if name != module}
    return [
        module
        for module, text in sources.items()
        if ast.parse(text).body[1:]  # more than a docstring
        and not module.startswith(("calculators.catalogue.", "calculators.articles."))
        and module not in used | ENTRIES
    ]


def test_what_only_tests_use_lies_among_them():
    assert shipped_for_nothing(our_sources(), (each.read_text() for each in (ROOT / "scripts").rglob("*.py"))) == []


def test_what_nothing_uses_is_found():
    used, unused = '"""A."""\nx = 1', '"""B."""\nfrom calculators.trade.a import x'
    sources = {"calculators.trade.a": used, "calculators.trade.b": unused}
    assert shipped_for_nothing(sources, []) == ["calculators.trade.b"]
    assert shipped_for_nothing(sources, ["from calculators.trade import b"]) == []
