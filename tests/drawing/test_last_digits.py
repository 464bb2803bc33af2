"""Computers' Pythons differ in the last digit of a sine or a sum: no drawing and no word may hang on it."""

import json
import math
import random
import sys

import pytest

import calculators.faces.browser as browser
from calculators.catalogue import catalogue
from calculators.trade.corners import comparison
from tests.any_numbers import RULERS, any_numbers

INEXACT = ("sin", "cos", "asin", "atan2", "degrees", "radians")
MIRROR = {
    "hem_1": "1 75/89 cm",
    "hem_2": "20 mm",
    "angle": "135.914",
    "turn": "50/127 in",
    "facing_seam": "6 mm",
    "edge_stitch": "0.002 m",
    "cloth_thickness": "11/635 in",
    "shown": "faced",
}


def answer(name, typed, ruler):
    """What a page shows, worked out anew."""
    comparison._layers.cache_clear()
    return list(
        browser.replies(
            json.dumps({"ask": "calculator", "calculator": name, "given": {}, "typed": typed, "ruler": ruler})
        )
    )


def another_python(monkeypatch, chance):
    """Sines, angles and sums as another computer works them out: up to one step of a float more or less."""

    def nudged(work):
        def other(*given, **named):
            value = work(*given, **named)
            if not isinstance(value, float) or not value:
                return value
            return math.nextafter(value, chance.choice([-math.inf, value, math.inf]))

        return other

    for module in [
        each
        for name, each in sys.modules.items()
        if name.startswith(("calculators.trade.corners", "calculators.drawing"))
    ]:
        for name in INEXACT:
            if getattr(module, name, None) is getattr(math, name):
                monkeypatch.setattr(module, name, nudged(getattr(math, name)))
        monkeypatch.setattr(module, "sum", nudged(sum), raising=False)


@pytest.mark.parametrize("name", [name for name in catalogue() if name.startswith(("corner", "mitre", "pointed"))])
def test_the_last_digit_of_a_float_decides_nothing(name, monkeypatch):
    chance = random.Random(f"last digits of {name}")
    for _ in range(25):
        typed, ruler = any_numbers(catalogue()[name], chance), chance.choice(RULERS)
        here = answer(name, typed, ruler)
        with monkeypatch.context() as elsewhere:
            another_python(elsewhere, chance)
            assert answer(name, typed, ruler) == here, (typed, ruler)


def test_of_two_thickest_places_the_same_one_is_numbered_everywhere(monkeypatch):
    here = answer("corner-bulk", MIRROR, "in 1/32")
    for seed in range(20):
        with monkeypatch.context() as elsewhere:
            another_python(elsewhere, random.Random(seed))
            assert answer("corner-bulk", MIRROR, "in 1/32") == here
