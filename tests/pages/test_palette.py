"""The colours keep their promise: text at 7:1 or better (WCAG 2.2, 1.4.6), lines that matter at 3:1 (1.4.11), in both
schemes."""

import itertools
import re
from pathlib import Path

import pytest

from scripts.tools.thread_colour import contrast, recoloured

PALETTE = Path(__file__).parents[2] / "docs/assets/stylesheets/palette.css"
GROUNDS = (
    "ground",
    "sheet",
    "thread-pale",
    "caution-pale",
    "cloth-right",
    "cloth-wrong",
    "other-right",
    "other-wrong",
    "kind-odd",
    "kind-even",
)
TEXTS = ("ink", "ink-quiet", "thread", "caution")


def colours(scheme: str, palette: str) -> dict[str, str]:
    block = re.search(rf'\[data-md-color-scheme="{scheme}"\] \{{(.*?)\}}', palette, re.DOTALL)
    return dict(re.findall(r"--([\w-]+): #(\w{6});", block[1]))


def test_contrast_agrees_with_the_known_ends_of_its_scale():
    assert contrast("000000", "ffffff") == pytest.approx(21)
    assert contrast("777777", "ffffff") == pytest.approx(4.48, abs=0.005)  # the best-known near miss of 4.5:1


@pytest.fixture(
    params=[None, "7a1f1a", "ffff00", "00ff00", "000000", "ffffff", "777777"],
    ids=lambda colour: colour or "as it comes",
)
def palette(request) -> str:
    """The handbook's colours, and those of a studio that has a thread of its own."""
    as_it_comes = PALETTE.read_text("utf-8")
    return recoloured(as_it_comes, request.param) if request.param else as_it_comes


@pytest.mark.parametrize("scheme", ["default", "slate"])
def test_text_reads_on_every_ground(scheme, palette):
    found = colours(scheme, palette)
    faint = {
        f"{text} on {ground}": round(contrast(found[text], found[ground]), 2)
        for text, ground in itertools.product(TEXTS, GROUNDS)
        if contrast(found[text], found[ground]) < 7
    }
    assert not faint


@pytest.mark.parametrize("scheme", ["default", "slate"])
def test_outlines_stand_out_from_the_page(scheme, palette):
    found = colours(scheme, palette)
    assert min(contrast(found["outline"], found[ground]) for ground in ("ground", "sheet")) >= 3


@pytest.mark.parametrize("scheme", ["default", "slate"])
def test_the_weave_of_the_wrong_side_can_be_seen(scheme, palette):
    found = colours(scheme, palette)
    assert contrast(found["weave"], found["cloth-wrong"]) >= 3


@pytest.mark.parametrize("scheme", ["default", "slate"])
def test_a_thread_of_ones_own_is_the_only_thing_that_changes(scheme):
    before = colours(scheme, PALETTE.read_text("utf-8"))
    after = colours(scheme, recoloured(PALETTE.read_text("utf-8"), "7a1f1a"))
    changed = {name for name in before if before[name] != after[name]}
    assert before.keys() == after.keys() and changed == {"thread", "thread-pale", "kind-odd"}
    if scheme == "default":
        assert after["thread"] == "7a1f1a", "a colour that reads is taken as it is"
