"""The browser's Python, woken once for all tests."""

import json
import subprocess
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from scripts.setup import node
from scripts.tools.places import BUILD, VENV

BUNDLE = BUILD / "runtime"
PROGRAM = Path(__file__).with_name("answers.mjs")


@pytest.fixture(scope="session")
def line_to_pyodide() -> Iterator[Callable[[str], list]]:
    """Asks the browser's Python one line, and gives the list it answers with."""
    assert (BUNDLE / "listing.json").is_file(), "Build the site first: python3 scripts/serve.py --build"
    words = [*map(str, node.find(VENV).node), str(PROGRAM), str(BUNDLE)]
    with subprocess.Popen(words, stdin=subprocess.PIPE, stdout=subprocess.PIPE, encoding="utf-8") as process:

        def ask(line: str) -> list:
            process.stdin.write(line + "\n")
            process.stdin.flush()
            return json.loads(process.stdout.readline())

        yield ask
        process.stdin.close()


@pytest.fixture(scope="session")
def in_pyodide(line_to_pyodide) -> Callable[[dict], list[dict]]:
    """All replies of the browser's Python to one question."""
    return lambda request: [json.loads(text) for text in line_to_pyodide(json.dumps(request))]
