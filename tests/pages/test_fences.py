"""What the documents say to type works, and every piece of Python in them runs."""

import ast
import doctest
import re
import shlex
import subprocess
import sys

import pytest

from scripts.tools.places import ROOT

#: The contributors' guide: one page, and what stands beside the code it is about.
GUIDE = [
    ROOT / "DEVELOPERS.md",
    ROOT / "calculators/ARCHITECTURE.md",
    ROOT / "calculators/trade/lay_plan/SOLVING.md",
    ROOT / "scripts/runtime/BROWSER.md",
    ROOT / "overrides/readme.md",
]
DOCUMENTS = [ROOT / "README.md", *GUIDE, *sorted((ROOT / "docs").rglob("*.md"))]
_FENCE = re.compile(r"^( *)```(\w+)[^\n]*\n(.*?)^\1```", re.MULTILINE | re.DOTALL)
_INLINE = re.compile(r"`((?:python3?|\.ci/run)[^`\n]*)`")


def fences(language: str) -> list:
    """Every fence of a language: (document, text), named by where it stands."""
    found = []
    for document in DOCUMENTS:
        for number, (indent, kind, text) in enumerate(_FENCE.findall(document.read_text("utf-8"))):
            if kind == language:
                text = re.sub(rf"^{indent}", "", text, flags=re.MULTILINE)
                found.append(pytest.param(document, text, id=f"{document.relative_to(ROOT)}-{number}"))
    return found


def run_python(text: str) -> None:
    """Run a piece of Python; where it is a session with a prompt, its answers must come out too."""
    if ">>>" not in text:
        exec(compile(text, "fence", "exec"), {"__name__": "fence"})
    else:
        test = doctest.DocTestParser().get_doctest(text, {}, "fence", None, 0)
        told: list[str] = []
        result = doctest.DocTestRunner(verbose=False).run(test, out=told.append)
        assert result.failed == 0, "".join(told)


@pytest.mark.parametrize(("document", "text"), fences("python"))
def test_python_runs(document, text):
    run_python(text)


def commands(text: str) -> list[tuple[str, str]]:
    """The commands of a fence, each with the output that stands below it, if any. A command starts with a dollar sign
    or,
    in a fence without any, on every line."""
    lines = [line for line in text.splitlines() if line.strip()]
    if not any(line.startswith("$ ") for line in lines):
        return [(line, "") for line in lines]
    found: list[tuple[str, str]] = []
    for line in lines:
        if line.startswith("$ "):
            found.append((line[2:], ""))
        else:
            found[-1] = (found[-1][0], found[-1][1] + line + "\n")
    return found


def works(command: str, output: str = "") -> None:
    words = shlex.split(command, comments=True)
    if words[:3] in (["python3", "-m", "calculators"], ["python", "-m", "calculators"]):
        ran = subprocess.run([sys.executable, *words[1:]], cwd=ROOT, capture_output=True, encoding="utf-8", timeout=60)
        assert ran.returncode == 0, ran.stderr
        assert output.split() == ran.stdout.split() or not output, ran.stdout
    elif words[0] == "python3" and words[1].startswith("scripts/"):
        assert (ROOT / words[1]).is_file(), words[1]
        known = subprocess.run(
            [sys.executable, words[1], "--help"], cwd=ROOT, capture_output=True, encoding="utf-8", timeout=60
        ).stdout
        assert [word for word in words[2:] if word.startswith("--") and word not in known] == []
        assert [
            word for word in words[2:] if word.startswith("tests/") and not (ROOT / word.partition("::")[0]).exists()
        ] == []
    else:
        assert (ROOT / words[0]).is_file(), f"nobody knows whether `{command}` works"


@pytest.mark.parametrize(("document", "text"), fences("sh"))
def test_commands_work(document, text):
    for command, output in commands(text):
        works(command, output)


def inline_commands() -> list:
    found = [(document, command) for document in DOCUMENTS for command in _INLINE.findall(document.read_text("utf-8"))]
    return [
        pytest.param(command, id=f"{document.name}-{command[:40]}")
        for document, command in found
        if not re.search(r"[A-Z]{3,}|…", command)
    ]


@pytest.mark.parametrize("command", inline_commands())
def test_commands_in_sentences_work(command):
    works(command)


def test_the_contributors_guide_is_read_in_any_editor():
    assert [
        f"{document.relative_to(ROOT)}:{number}"
        for document in GUIDE
        for number, line in enumerate(document.read_text("utf-8").splitlines(), 1)
        if len(line) > 120
    ] == []


def test_names_of_files_in_the_contributors_guide_are_names_of_files():
    guide = "".join(document.read_text("utf-8") for document in GUIDE)
    named = set(re.findall(r"`((?:calculators|scripts|tests|docs|overrides|faces|drawing)/[\w./-]+)`", guide))
    assert named
    assert [name for name in named if not (ROOT / name).exists() and not (ROOT / "calculators" / name).exists()] == []


def test_a_k_that_selects_nothing_would_be_noticed():
    """The guide names one test to run; there is such a test."""
    (file, word) = re.search(
        r"scripts/test\.py (tests/\S+) -k (\w+)", (ROOT / "DEVELOPERS.md").read_text("utf-8")
    ).groups()
    assert any(
        word in node.name
        for node in ast.walk(ast.parse((ROOT / file).read_text()))
        if isinstance(node, ast.FunctionDef)
    )


@pytest.mark.parametrize(
    "planted",
    [
        "python3 -m calculators no-such",
        "python3 scripts/no-such.py",
        "python3 scripts/serve.py --no-such",
        "make all",
        "python3 scripts/test.py tests/no_such.py",
    ],
)
def test_a_command_that_does_not_work_is_found(planted):
    with pytest.raises((AssertionError, FileNotFoundError)):
        works(planted)


def test_an_answer_that_is_not_given_is_found():
    works("python3 -m calculators mitre-marks hem_1='1 in' hem_2='1 in' --ruler in --json", "")
    with pytest.raises(AssertionError):
        works("python3 -m calculators mitre-marks", "Mark 99 cm on both edges.")
    with pytest.raises(AssertionError):
        run_python(">>> 1 + 1\n3\n")
