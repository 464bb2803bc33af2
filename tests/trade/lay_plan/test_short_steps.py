"""Planning pauses so often that a keystroke can always break in: work between two pauses is counted in calls, which is
the same on every machine."""

import sys
from itertools import islice

import pytest

from calculators.asking.answering import Asking, answers
from calculators.catalogue import calculator_named

FLAWS = "5 m | 60 cm | 8 cm | 6 cm; 22 m | 20 cm | 5 cm | 5 cm; 40 m | 90 cm | 6 cm | 6 cm; 71 m | 130 cm | 4 cm | 4 cm"
SIX = (
    "Napkin | 46 cm | 46 cm | 100; Placemat | 35 cm | 48 cm | 100 | yes; Runner | 45 cm | 140 cm | 50; Towel | 52 "
    "cm "
    "| 71 cm | 100 | yes; Mat | 29 cm | 29 cm | 100; Cloth | 90 cm | 90 cm | 50"
)
THREE = "Napkin | 46 cm | 46 cm | 300; Placemat | 35 cm | 48 cm | 150; Runner | 45 cm | 140 cm | 50"
MOST_CALLS = 700_000  # less than 0.1 s in CPython


def calls_of_each_step(typed: dict[str, str], steps: int) -> list[int]:
    """How many functions are called, built-in ones too, from one pause to the next."""
    counted = [0]

    def count(frame, event, arg):
        if event in ("call", "c_call"):
            counted[-1] += 1

    planning = islice(answers(calculator_named("lay-plan"), Asking(typed)), steps)
    sys.setprofile(count)
    try:
        for _ in planning:
            counted.append(0)
    finally:
        sys.setprofile(None)
    return counted


@pytest.mark.parametrize(
    ("cloth", "pieces", "more"),
    [("95 m", THREE, {}), ("95 m", THREE, {"aim": "shortest"}), ("90 m", SIX, {"strips": "either"})],
)
def test_no_step_of_five_hundred_pieces_with_flaws_is_long(cloth, pieces, more):
    counted = calls_of_each_step({"cloths": f"Linen | 150 cm | {cloth}", "pieces": pieces, "flaws": FLAWS, **more}, 400)
    assert len(counted) > 200 and max(counted) < MOST_CALLS
