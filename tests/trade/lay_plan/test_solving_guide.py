"""The guide to the solvers names what there is: every module in backticks is a file, every source a key of ours."""

import re

import pytest

from calculators.asking.bibliography import bibliography
from scripts.tools.places import ROOT

LAY_PLAN = ROOT / "calculators" / "trade" / "lay_plan"
GUIDE = (LAY_PLAN / "SOLVING.md").read_text()
SOURCES = [key for row in re.findall(r"^\|.*\|(.*)\|$", GUIDE, re.MULTILINE) for key in re.findall(r"`([^`]+)`", row)]


def test_every_source_of_the_glossary_is_in_the_bibliography():
    assert len(SOURCES) > 10
    assert set(SOURCES) <= set(bibliography())


def modules_named(text: str) -> set[str]:
    """Names of modules in a text's lists of them, such as (`first`, `second`)."""
    lists = re.findall(r"\((`\w+`(?:,\s+`\w+`)*)\)", text)
    return {name for each in lists for name in re.findall(r"\w+", each)}


@pytest.mark.parametrize("name", sorted(modules_named(GUIDE)))
def test_every_module_named_is_there(name):
    assert list(LAY_PLAN.rglob(f"{name}.py"))


def test_modules_are_named():
    assert {"two_stage_value", "ruin_and_recreate"} <= modules_named(GUIDE)
