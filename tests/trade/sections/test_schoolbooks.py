"""Layers lie where schoolbooks say that they lie: what each says, beside the section that is drawn."""

from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
import yaml

from calculators.asking.bibliography import bibliography
from calculators.trade.sections.checks import held_by, open_raw_edges
from calculators.trade.sections.edge import EdgeMeasures
from calculators.trade.sections.edges import EDGES
from calculators.trade.sections.section import CrossSection

TOLD = yaml.safe_load((Path(__file__).parents[2] / "reference" / "layers" / "schoolbooks.yaml").read_text("utf-8"))
CLOTH = EdgeMeasures(turn=Fraction(10), hem=Fraction(20), edge_stitch=Fraction(2), allowance=Fraction(12))
SIDES = {True: "r", False: "w"}
ENOUGH = 16  # edges that are held against what somebody else says


def orders(section: CrossSection) -> list[list[str]]:
    """What lies over one another at each of the thickest places, the lowest first."""
    stacks = [section.lying(cell) for cell in section.cells()]
    most = max(map(len, stacks))
    return [[f"{run.strip} {SIDES[run.right_up]}" for run in stack] for stack in stacks if len(stack) == most]


def among(stack: list[str], told: list[str]) -> bool:
    """Whether what is told lies there in that order, whatever else lies between."""
    left = iter(stack)
    return all(layer in left for layer in told)


def faults(edge: str, claim: dict[str, Any]) -> Iterator[str]:
    """What of a claim does not hold."""
    steps = EDGES[edge].steps(CLOTH)
    number = claim["step"]
    section = steps[number if number < 0 else number - 1].section
    if "order" in claim and claim["order"] not in orders(section):
        yield f"{edge}, step {number}: {orders(section)}"
    if "among" in claim and not any(among(stack, claim["among"]) for stack in orders(section)):
        yield f"{edge}, step {number}: {orders(section)}"
    for row, layers in claim.get("through", {}).items():
        if held_by(section, row) != layers:
            yield f"{edge}, step {number}: {row} through {held_by(section, row)}"
    if still_open := set(claim.get("shut", ())) & set(open_raw_edges(section)):
        yield f"{edge}, step {number}: {still_open} open"


@pytest.mark.parametrize("told", TOLD, ids=lambda told: f"{told['edge']}-{told['source']}")
def test_layers_lie_as_they_are_told(told: dict[str, Any]):
    assert [fault for claim in told["claims"] for fault in faults(told["edge"], claim)] == []


def test_enough_edges_are_told_by_somebody_else_whose_words_were_read():
    assert {told["source"] for told in TOLD} <= set(bibliography())
    assert all(told["said"].endswith(".") and told["claims"] for told in TOLD)
    assert len({told["edge"] for told in TOLD if told["seen"] == "read"}) >= ENOUGH


@pytest.mark.parametrize(
    "claim",
    [
        {"step": 1, "order": ["lower piece r", "upper piece w"]},
        {"step": 2, "shut": ["lower piece"]},
        {"step": 3, "through": {"second row": 4}},
        {"step": 2, "among": ["upper piece w", "lower piece r"]},
    ],
)
def test_a_claim_that_does_not_hold_is_found(claim: dict[str, Any]):
    assert list(faults("french", claim))
