"""What goes along from one size of pieces to the lay plan gives the same pieces there."""

import random

import pytest

from calculators.asking.answering import Asking, answer
from calculators.asking.declaration import InvalidInput, Onward
from calculators.catalogue import calculator_named
from tests.any_numbers import any_numbers

PIECES, PLAN = calculator_named("pieces-from-cloth"), calculator_named("lay-plan")
RULERS = {"cm": (20, 60), "in": (8, 24)}


def _counts(typed, ruler):
    found = answer(PIECES, Asking(typed, wanted_ruler=ruler))
    (onward,) = (note for note in found.notes if isinstance(note, Onward))
    return found.results["count"], answer(PLAN, Asking(onward.carries, wanted_ruler=ruler)).results["count"]


@pytest.mark.parametrize("number", range(24))
def test_as_many_pieces_lie_on_the_plan(number):
    """At random, with and without selvedges: just as many where pieces keep their way, at least as many where they may
    turn."""
    chance = random.Random(f"to the plan {number}")
    unit = chance.choice(list(RULERS))
    least, most = RULERS[unit]
    wide, long = chance.randint(least, most), chance.randint(least, most)
    typed = {
        # a little wider and longer than so many pieces: the selvedges, or what a cloth loses at its ends, are one piece
        "cloth_width": f"{chance.randint(2, 5) * wide}.5 {unit}",
        "cloth_length": f"{chance.randint(2, 9) * long}.5 {unit}",
        "piece_width": f"{wide} {unit}",
        "piece_length": f"{long} {unit}",
        "measured": chance.choice(["selvedges", "trimmed"]),
        "may_turn": chance.choice(["yes", "no"]),
    }
    count, on_plan = _counts(typed, unit)
    assert on_plan >= count > 0 and (on_plan == count or typed["may_turn"] == "yes"), typed


def test_whatever_its_blanks_let_through_is_read_by_the_plan():
    chance, read = random.Random("to the plan"), 0
    for _ in range(40):
        try:
            found = answer(PIECES, Asking(any_numbers(PIECES, chance)))
        except InvalidInput:
            continue
        (onward,) = (note for note in found.notes if isinstance(note, Onward))
        for field in ("cloths", "pieces", "selvedge"):
            PLAN.field(field).kind.parse(onward.carries[field], Asking({}).ruler)
        read += 1
    assert read > 10
