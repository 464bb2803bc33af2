"""The linter, the formatter and the type checker find nothing; each of them finds a planted fault."""

import re
import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from scripts.setup import node
from scripts.tools.places import NODE_MODULES, ROOT, VENV

CONFIGURATION = ROOT / "pyproject.toml"
SETTINGS = tomllib.loads(CONFIGURATION.read_text())["tool"]["mypy"]


def run(tool: str, *words: str, given: str | None = None) -> tuple[bool, str]:
    """Whether a tool is content with the house, or with a text given to it, and what it says."""
    command = [sys.executable, "-m", tool, *words]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, input=given)
    return done.returncode == 0, done.stdout + done.stderr


@pytest.fixture(scope="module")
def elsewhere(tmp_path_factory) -> str:
    """A configuration of the type checker that does not say what to look at."""
    before, heading, settings = CONFIGURATION.read_text().partition("[tool.mypy]\n")
    settings, cut = re.subn(r"^packages = .*\n", "", settings, flags=re.MULTILINE)
    assert cut == 1
    text = before + heading + settings
    file = tmp_path_factory.mktemp("types") / "pyproject.toml"
    file.write_text(text.replace("$MYPY_CONFIG_FILE_DIR", ROOT.as_posix()))
    return str(file)


def test_the_linter_finds_nothing():
    content, said = run("ruff", "check", ".")
    assert content, said


def test_every_file_is_formatted():
    content, said = run("ruff", "format", "--check", ".")
    assert content, said


def test_types_hold_everywhere():
    content, said = run("mypy")
    assert content, said


def test_no_module_is_excepted_from_the_type_checker():
    """Only packages of others that say nothing of types are told apart, by that one setting."""
    told = [{*each} - {"module"} for each in SETTINGS["overrides"]]
    assert told == [{"ignore_missing_imports"}]


def test_the_type_checker_is_shown_every_file():
    shown = {Path(path).resolve() for path in re.findall(r"Found source: +BuildSource\(path='([^']+)'", verbose())}
    files = {*ROOT.glob("calculators/**/*.py"), *ROOT.glob("scripts/**/*.py")}
    assert {path for path in shown if path.suffix == ".py"} == files


def verbose() -> str:
    """What the type checker says of its own work."""
    return run("mypy", "--verbose")[1]


@pytest.mark.parametrize(
    "fault",
    [
        "import os\n",
        "def price(of=[]):\n    return of\n",
        "WORDS = '" + "a" * 120 + "'\n",
        "import math  # noqa\n\nprint(math.pi)\n",
        "hem: int = 'x'  # type: ignore\n",
    ],
    ids=["unused import", "mutable default", "line too long", "bare noqa", "bare type: ignore"],
)
def test_the_linter_finds_a_planted_fault(fault):
    assert run("ruff", "check", "--stdin-filename", "planted.py", "-", given='"""A file."""\n\n' + fault)[0] is False
    assert run("ruff", "check", "--stdin-filename", "planted.py", "-", given='"""A file."""\n')[0]


def test_the_formatter_finds_a_planted_fault():
    for text, well in (("hem = [1,2]\n", False), ("hem = [1, 2]\n", True)):
        assert run("ruff", "format", "--check", "--stdin-filename", "planted.py", "-", given=text)[0] is well


@pytest.mark.parametrize(
    "fault",
    [
        'from calculators.values.measure import parse_length\n\nparse_length("1 cm").breadth\n',
        "from calculators.values.measure import parse_length\n\nparse_length(1)\n",
        "hem: int = 'x'\n",
        "def twice(hem):\n    return hem + hem\n",
        "def none(hems: list) -> bool:\n    return hems == []\n",
        "import json\n\n\ndef hem(text: str) -> int:\n    return json.loads(text)\n",
        "from calculators.documents.house_method.format import Document\n\nprint(Document)\n",
        "def half(hem: int) -> int:\n    return hem // 2\n    print(hem)\n",
    ],
    ids=[
        *("no such attribute", "wrong argument", "wrong value", "no types"),
        *("a list of anything", "anything returned", "taken from where it is not declared", "never reached"),
    ],
)
def test_the_type_checker_finds_a_planted_fault(elsewhere, fault):
    content, said = run("mypy", "--config-file", elsewhere, "-c", fault)
    assert not content and "<string>" in said and "Found 1 error" in said, said


SCRIPTS = (".js", ".mjs")
BIOME = "@biomejs/biome/bin/biome"


def run_of_npm(tool: str, *words: str, folder: Path = ROOT) -> tuple[bool, str]:
    """Whether a tool of npm, called in a folder, is content, and what it says."""
    command = [*node.found(VENV).node, str(NODE_MODULES / tool), *words]
    done = subprocess.run(command, cwd=folder, capture_output=True, text=True)
    return done.returncode == 0, done.stdout + done.stderr


def scripts() -> list[Path]:
    """Every script of the repository, as git knows them."""
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, text=True, check=True).stdout
    return [path for name in listed.split("\0") if name.endswith(SCRIPTS) and (path := ROOT / name).is_file()]


def test_every_script_is_formatted_and_the_linter_finds_nothing_in_it():
    content, said = run_of_npm(BIOME, "check", "--error-on-warnings")
    assert content, said
    assert int(re.search(r"Checked (\d+) files", said)[1]) >= len(scripts())


def test_no_line_of_a_script_is_long():
    """The formatter breaks no comment and no text."""
    assert [
        f"{path.name}:{number}"
        for path in scripts()
        for number, line in enumerate(path.read_text("utf-8").splitlines(), 1)
        if len(line) > 120
    ] == []


@pytest.mark.parametrize(
    "fault",
    [
        'import { hem } from "./sound.js";\n\nexport const seam = 1;\n',
        "export function seam() {\n  let hem = 1;\n  return hem;\n}\n",
        "export const seam = { a: 1, a: 2 };\n",
        "export function seam(hem) {\n  return (hem = 2);\n}\n",
        "// biome-ignore lint/suspicious/noDebugger\ndebugger;\n",
        "// biome-ignore lint/suspicious/noDebugger: there is none\nexport const seam = 1;\n",
        'import { other } from "./other.js";\n\nexport const seam = () => other;\n',
        "export const seam = [1,2];\n",
    ],
    ids=[
        "unused import",
        "let that stays",
        "key twice",
        "assignment inside",
        "suppressed without a reason",
        "suppressed in vain",
        "circle",
        "not formatted",
    ],
)
def test_a_planted_fault_in_a_script_is_found(fault, tmp_path):
    shutil.copy(ROOT / "biome.jsonc", tmp_path)
    (tmp_path / "sound.js").write_text("export const hem = 1;\n")
    (tmp_path / "other.js").write_text('import { seam } from "./planted.js";\n\nexport const other = () => seam;\n')
    for text, well in (("export const seam = 1;\n", True), (fault, False)):
        (tmp_path / "planted.js").write_text(text)
        content, said = run_of_npm(BIOME, "check", "--error-on-warnings", "--vcs-enabled=false", folder=tmp_path)
        assert content is well, said


def test_the_guides_examples_satisfy_the_type_checker(elsewhere):
    guide = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    examples = re.findall(r"^```python\n(\"\"\".*?)^```", guide, re.MULTILINE | re.DOTALL)
    assert len(examples) >= 2
    for example in examples:
        content, said = run("mypy", "--config-file", elsewhere, "-c", example)
        assert content, said


TYPES = ROOT / "scripts/types"
TSC = "typescript/bin/tsc"
#: Only ever shortened.
NOT_TYPED_YET = {
    "docs/assets/javascript/calculator/widgets.js",
}


def worlds() -> list[str]:
    """Where scripts run: each has a configuration of its own, since each knows other things."""
    return sorted(path.stem for path in TYPES.glob("*.json") if path.stem != "base")


def faults_of_types(world: str, folder: Path = ROOT) -> dict[str, str]:
    """The scripts of a world whose types do not hold, and what the type checker says of each."""
    content, said = run_of_npm(TSC, "--pretty", "false", "-p", f"scripts/types/{world}.json", folder=folder)
    found = dict(re.findall(r"^(\S+?)\(\d+,\d+\): (error .*)$", said, re.MULTILINE))
    assert content or found, said
    return found


def test_types_of_scripts_hold_in_all_but_those_listed():
    faulty = {path: said for world in worlds() for path, said in faults_of_types(world).items()}
    assert {path: said for path, said in faulty.items() if path not in NOT_TYPED_YET} == {}
    assert NOT_TYPED_YET - set(faulty) == set(), "mended: take them off the list"


def test_the_type_checker_is_shown_every_script():
    shown: set[Path] = set()
    for world in worlds():
        content, said = run_of_npm(TSC, "--listFilesOnly", "-p", f"scripts/types/{world}.json")
        assert content, said
        shown |= {Path(line) for line in said.splitlines()}
    assert set(scripts()) - shown == set()


@pytest.fixture(scope="module")
def copied(tmp_path_factory) -> Path:
    """The scripts of pages and worker in a folder of their own."""
    folder = tmp_path_factory.mktemp("copied")
    for name in ("docs/assets/javascript", "scripts/types", "scripts/after_pages/portable"):
        shutil.copytree(ROOT / name, folder / name)
    (folder / "node_modules").symlink_to(NODE_MODULES)
    return folder


@pytest.mark.parametrize(
    ("world", "script", "right", "wrong"),
    [
        ("pages", "python.js", "type: ToWorker.ASK, id,", "type: ToWorker.ASK, number: id,"),
        ("pages", "python.js", "message.trouble.detail", "message.problem.detail"),
        ("pages", "at-first-paint.js", 'way: "snapshot"', 'way: "swiftly"'),
        ("pages", "following.js", "Question.WHOSE,", '"who is it",'),
        ("worker", "python-worker.js", "done: arrived });", "bytes: arrived });"),
        ("worker", "python-worker.js", "wake(data)", "wake(data.id)"),
        ("worker", "python-files.js", "this.files[role].name", "this.files[role].title"),
    ],
)
def test_a_message_of_another_form_is_found(copied, world, script, right, wrong):
    (path,) = (copied / "docs").rglob(script)
    text = path.read_text("utf-8")
    assert right in text
    path.write_text(text.replace(right, wrong, 1), "utf-8")
    try:
        assert path.relative_to(copied).as_posix() in faults_of_types(world, copied)
    finally:
        path.write_text(text, "utf-8")


def test_no_fault_of_a_type_is_passed_over_without_a_reason():
    """`@ts-expect-error` says why on its line; the two that pass over whatever there is are not used."""
    for path in scripts():
        text = path.read_text("utf-8")
        assert not re.search(r"@ts-(?:ignore|nocheck)|@ts-expect-error\s*(?:\*/|$)", text, re.MULTILINE), path
