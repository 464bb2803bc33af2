"""What the contributors' guide promises: one new file and one line in a page make a calculator with all its faces."""

import json
import re
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from tests.copy_of_the_project import copied, example, guide, run

PAGE = "stitch/machine"
COPIED = [
    "calculators",
    "docs",
    "overrides",
    "scripts",
    "tests",
    "mkdocs.yml",
    "pyproject.toml",
    "package.json",
    "pins",
    "README.md",
    "DEVELOPERS.md",
]


@pytest.fixture(scope="module")
def house(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The project with the guide's example in it, just as the guide says."""
    house = copied(tmp_path_factory.mktemp("house"), *COPIED)
    (file,) = re.findall(r"One file in `(calculators/catalogue/)`, here `(\w+\.py)`", guide())
    (line,) = re.findall(r"and one line in a page: `(.*?)`", guide())
    (house / "".join(file)).write_text(example("Thread for a seam"))
    with (house / f"docs/{PAGE}.md").open("a") as page:
        page.write(f"\n{line}\n")
    run(house, "-m", "mkdocs", "--quiet", "build", "--strict")
    return house


def test_it_answers_in_the_terminal(house):
    assert "thread-length" in run(house, "-m", "calculators")
    told = json.loads(run(house, "-m", "calculators", "thread-length", "seam=2 m", "ratio=2.8", "--json"))
    assert told["results"] == {"thread": 5600}


def test_it_stands_on_the_page_with_its_answer(house):
    page = BeautifulSoup((house / f"site/{PAGE}/index.html").read_text("utf-8"), "html.parser")
    section = page.select_one('section.calculator[data-calculator="thread-length"]')
    assert {blank["name"]: blank["value"] for blank in section.select("form.asked input[name]")} == {
        "seam": "100 cm",
        "ratio": "2.5",
    }
    assert section.select_one(".answer .spoken").get_text() == "250\N{NO-BREAK SPACE}cm of thread."


def test_it_has_its_reference_page(house):
    page = BeautifulSoup((house / "site/reference/thread-length/index.html").read_text("utf-8"), "html.parser")
    assert page.h1.get_text(strip=True).startswith("Thread for a seam")


def test_it_is_checked_like_all_others(house):
    told = run(
        house,
        "-m",
        "pytest",
        "-v",
        "tests/catalogue/test_every_calculator.py",
        "tests/test_floors.py",
        "-k",
        "thread or floors",
    )
    assert told.count("[thread-length] PASSED") >= 5


def test_the_browser_is_answered_too(house):
    question = json.dumps(
        {"ask": "calculator", "calculator": "thread-length", "typed": {"seam": "1 yd"}, "ruler": "in 1/8"}
    )
    program = f"from calculators.faces.browser import replies; print(list(replies({question!r}))[-1])"
    assert (
        "90\N{NO-BREAK SPACE}in of thread"
        in BeautifulSoup(json.loads(run(house, "-c", program))["answer"], "html.parser").get_text()
    )
