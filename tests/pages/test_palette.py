"""The colours keep their promise: text at 7:1 or better (WCAG 2.2, 1.4.6), lines that matter at 3:1 (1.4.11), in both
schemes."""

import itertools
import re
from pathlib import Path

import pytest

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


def colours(scheme: str) -> dict[str, str]:
    block = re.search(rf'\[data-md-color-scheme="{scheme}"\] \{{(.*?)\}}', PALETTE.read_text("utf-8"), re.DOTALL)
    return dict(re.findall(r"--([\w-]+): #(\w{6});", block[1]))


def luminance(colour: str) -> float:
    """Relative luminance as WCAG 2.2 defines it."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (0, 2, 4)]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def test_contrast_agrees_with_the_known_ends_of_its_scale():
    assert contrast("000000", "ffffff") == pytest.approx(21)
    assert contrast("777777", "ffffff") == pytest.approx(4.48, abs=0.005)  # the best-known near miss of 4.5:1


@pytest.mark.parametrize("scheme", ["default", "slate"])
def test_text_reads_on_every_ground(scheme):
    found = colours(scheme)
    faint = {
        f"{text} on {ground}": round(contrast(found[text], found[ground]), 2)
        for text, ground in itertools.product(TEXTS, GROUNDS)
        if contrast(found[text], found[ground]) < 7
    }
    assert not faint


@pytest.mark.parametrize("scheme", ["default", "slate"])
def test_outlines_stand_out_from_the_page(scheme):
    found = colours(scheme)
    assert min(contrast(found["outline"], found[ground]) for ground in ("ground", "sheet")) >= 3


@pytest.mark.parametrize("scheme", ["default", "slate"])
def test_the_weave_of_the_wrong_side_can_be_seen(scheme):
    found = colours(scheme)
    assert contrast(found["weave"], found["cloth-wrong"]) >= 3
