"""Python answers the same whichever way it was woken, and its numbers are those that the sources print."""

import json
import subprocess
from pathlib import Path

import pytest

from calculators.batch.walk import WALKS
from calculators.catalogue import catalogue
from scripts.setup import node
from scripts.tools.places import BUILD, VENV
from tests import bad_values
from tests.reference import cases

BUNDLE = BUILD / "runtime"


def questions() -> list[dict]:
    """The reference cases first, then every calculator with each ruler, the walks, figures of a page, and values that
    are refused."""
    asked = [case.question for case in cases()]
    for name in catalogue():
        for ruler in ("cm", "in"):
            asked.append({"ask": "calculator", "calculator": name, "given": {}, "typed": {}, "ruler": ruler})
    asked += [{"ask": "walk", "walk": name, "typed": {}, "ruler": ""} for name in WALKS]
    beside = {"calculator": "edge-steps", "given": {}, "but": {"edge": "double"}, "beside": {"edge": "single"}}
    small = {"calculator": "cushion-zip", "given": {}, "small": True}
    asked.append({"ask": "numbers", "figures": [beside, small], "ruler": ""})
    wrong = [
        *bad_values.BEYOND_LIMITS,
        *(("pieces-from-cloth", "piece_width", text) for text in bad_values.REFUSED_EVERYWHERE),
    ]
    for name, field, text in wrong:
        if text.isprintable():  # a lone surrogate cannot be handed over as UTF-8
            asked.append({"ask": "calculator", "calculator": name, "given": {}, "typed": {field: text}, "ruler": ""})
    return asked


@pytest.fixture(scope="module")
def told(tmp_path_factory: pytest.TempPathFactory) -> dict[str, list[str]]:
    folder = tmp_path_factory.mktemp("both")
    (folder / "questions.json").write_text(json.dumps(questions()))
    program = Path(__file__).with_name("both_ways.mjs")
    subprocess.run(
        [*node.find(VENV).node, program, BUNDLE, folder / "questions.json", folder / "answers.json"], check=True
    )
    return json.loads((folder / "answers.json").read_text())


def test_a_start_from_the_snapshot_answers_as_a_plain_start_does(told):
    assert len(told["snapshot"]) == len(questions())
    differing = [
        asked for asked, one, other in zip(questions(), told["library"], told["snapshot"], strict=True) if one != other
    ]
    assert differing == []


def test_the_browser_s_python_comes_out_as_printed(told):
    for case, reply in zip(cases(), told["snapshot"], strict=False):
        assert case.agrees(json.loads(reply)["results"]), case.name
