"""What the contributors' guide promises of a new kind of value: one file, and every face and check knows it."""

import json
import re
from pathlib import Path

import pytest

from tests.copy_of_the_project import copied, example, guide, run, run_anyhow

COPIED = ["calculators", "scripts", "tests", "pyproject.toml", "DEVELOPERS.md"]
CALCULATOR = '''"""A thread laid double."""

from types import SimpleNamespace

from calculators.asking.declaration import Answer, Calculator, Example, Field, Result
from calculators.values.fineness import Fineness
from calculators.values.phrase import say


def _work(given: SimpleNamespace) -> Answer:
    double = 2 * given.thread
    return Answer({"double": double}, say("**{double}** from {thread:fineness}.", double=double, thread=given.thread))


CALCULATOR = Calculator(
    name="thread-double",
    title="Thread laid double",
    purpose="How fine a thread is that is laid double.",
    fields=(Field("thread", "Thread", Fineness(), "As on the reel.", fixed="40 tex"),),
    question="A thread of {thread}, laid double.",
    results=(Result("double", "Double", Fineness(), "Both strands together."),),
    work=_work,
    examples=(Example({"thread": "40 tex"}, {"double": 80}, "arithmetic: 2 × 40"),),
)
'''


@pytest.fixture(scope="module")
def house(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The project with the guide's kind in it, and a calculator that asks for it."""
    house = copied(tmp_path_factory.mktemp("house"), *COPIED)
    (folder, file) = re.findall(r"one file in `(calculators/values/)`, here `(\w+\.py)`", guide())[0]
    (house / folder / file).write_text(example("How fine a thread is"))
    (house / "calculators/catalogue/thread_double.py").write_text(CALCULATOR)
    return house


def test_it_is_read_and_shown_in_the_terminal(house):
    told = json.loads(run(house, "-m", "calculators", "thread-double", "thread=90 den", "--json"))
    assert told["results"] == {"double": 20}
    assert "Double: 180 den" in run(house, "-m", "calculators", "thread-double", "thread=90", "--ruler", "in")


@pytest.mark.parametrize(("ruler", "figure"), [("cm", "80\N{NO-BREAK SPACE}tex"), ("in", "720\N{NO-BREAK SPACE}den")])
def test_it_stands_on_the_ruler_in_hand_and_on_one_line_with_its_unit(house, ruler, figure):
    question = json.dumps({"ask": "calculator", "calculator": "thread-double", "typed": {}, "ruler": ruler})
    program = f"from calculators.faces.browser import replies; print(list(replies({question!r}))[-1])"
    shown = json.loads(run(house, "-c", program))["answer"]
    assert f"<td>{figure}</td>" in shown


def test_it_is_checked_like_all_others(house):
    told = run(
        house,
        *("-m", "pytest", "-v", "-p", "no:xdist", "tests/values/test_every_kind.py"),
        *("tests/catalogue/test_every_calculator.py", "-k", "thread-double or samples or planted or nobody"),
    )
    assert told.count("[thread-double, thread] PASSED") == 3 and told.count("[thread-double] PASSED") >= 5


def test_without_samples_it_fails_by_name(house):
    file = house / "calculators/values/fineness.py"
    whole = file.read_text()
    file.write_text(whole[: whole.index("    def samples")])
    words = ("-m", "pytest", "-p", "no:xdist", "-q", "tests/values/test_every_kind.py", "-k", "gives_samples")
    failed = run_anyhow(house, *words)
    file.write_text(whole)
    assert failed.returncode == 1 and "Fineness gives no samples" in failed.stdout
