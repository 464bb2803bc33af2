"""Every hand stitch can be sewn and holds what it promises; each check finds the fault that is planted for it."""

from dataclasses import replace
from fractions import Fraction as F

import pytest

from calculators.trade.stitches.hand import STITCHES
from calculators.trade.stitches.stitch import Place, Stitch, in_words, places
from tests.trade.stitches.checks import faults


@pytest.mark.parametrize("name", STITCHES)
def test_a_stitch_can_be_sewn_and_holds_what_it_promises(name: str):
    assert faults(STITCHES[name]) == []


@pytest.mark.parametrize("name", STITCHES)
@pytest.mark.parametrize("times", [1, 2, 5])
def test_the_thread_lies_over_and_under_by_turns_without_a_break(name: str, times: int):
    parts = STITCHES[name].threads(times)
    assert [part.over for part in parts] == [number % 2 == 0 for number in range(len(parts))]
    for before, after in zip(parts, parts[1:]):
        assert before.places[-1] == after.places[0]


RUNNING, SLIP = STITCHES["running"], STITCHES["slip"]
PLANTED = [
    (replace(RUNNING, once=RUNNING.once[:1]), "odd number of places"),
    (replace(SLIP, once=SLIP.once[:-1]), "odd number of places"),
    (replace(RUNNING, end=places((1, 0))), "the end has an odd number"),
    (replace(RUNNING, once=places((0, 0), (0, 0))), "the hole that it came from"),
    (replace(RUNNING, advance=F(1)), "the hole that it came from"),
    (replace(RUNNING, advance=F(0)), "does not get on"),
    (replace(RUNNING, once=places((0, 0), (-3, 0))), "goes back beyond"),
    (replace(RUNNING, once=places((0, 0), (1, 0)), advance=F(4)), "longer than promised"),
    (replace(SLIP, once=tuple(Place(each.along, F(1, 5)) for each in SLIP.once)), "does not hold the cloth"),
    (replace(SLIP, once=tuple(Place(each.along, F(-1, 5)) for each in SLIP.once)), "does not hold the hem"),
    (replace(STITCHES["ladder"], once=places((0, "0.35"), (1, "0.35"))), "does not hold the lower fold"),
    (replace(STITCHES["over-edge"], once=places((0, "-0.3"), ("0.6", "-0.1"))), "sewn in the air"),
    (replace(STITCHES["buttonhole"], once=STITCHES["buttonhole"].once[1:]), "none of the needle's"),
]


@pytest.mark.parametrize(("stitch", "said"), PLANTED, ids=[said for _, said in PLANTED])
def test_a_planted_fault_is_found(stitch: Stitch, said: str):
    assert [each for each in faults(stitch) if said in each]


def test_back_stitch_covers_its_row_and_running_stitch_half_of_it():
    """Back stitch leaves no gap on the right side, running stitch one as long as the stitch: so schoolbooks tell them
    apart."""

    def covered(name: str) -> F:
        stitch = STITCHES[name]
        over = [part for part in stitch.threads(6) if part.over]
        return sum((abs(part.places[-1].along - part.places[0].along) for part in over), F(0)) / (6 * stitch.advance)

    assert (covered("back"), covered("running")) == (1, F(1, 2))


def test_who_does_not_see_a_stitch_is_told_where_the_needle_goes():
    assert in_words(SLIP) == (
        "Worked to the left. The needle 1 comes out of the hem; 2 goes in through the cloth, straight across; 3 comes "
        "out of the cloth, a little on; 4 goes in through the hem, straight across; 5 comes out of the hem, a stitch "
        "on, and so on."
    )
    assert all(in_words(each).endswith(".") and "{" not in in_words(each) for each in STITCHES.values())
