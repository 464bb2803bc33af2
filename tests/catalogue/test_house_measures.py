"""A value that one page takes, the next takes: whatever fields share a measure of the house have the same limits, the
house's own form too."""

from collections import defaultdict

import pytest

from calculators.articles import articles
from calculators.asking.answering import Asking
from calculators.asking.seams import JOINS, SEAMS, allowance_of
from calculators.asking.site_method import site_method
from calculators.batch.walk import WALKS, Taken
from calculators.catalogue import calculator_named, catalogue
from calculators.documents.house_method.sections import entries
from calculators.values.kinds import Choice, Count, Length


def limits(kind):
    return (kind.least, kind.most) if isinstance(kind, (Length, Count)) else None


SHARED = defaultdict(dict)
for _name, _entry in entries().items():
    SHARED[_name]["the house method"] = _entry.kind
for _calculator in catalogue().values():
    for _field in _calculator.fields:
        if _field.default:
            SHARED[_field.default][f"{_calculator.name} {_field.name}"] = _field.kind


@pytest.mark.parametrize("measure", SHARED)
def test_fields_that_begin_with_one_measure_have_its_limits(measure):
    """Only whether 0 may stand differs: where nothing is folded or joined, no page of a fold has anything to take."""
    assert len({limits(kind) for kind in SHARED[measure].values()}) == 1, SHARED[measure]


@pytest.mark.parametrize("walk", WALKS.values(), ids=lambda walk: walk.name)
def test_a_walk_hands_on_only_what_the_next_step_takes(walk):
    """What was typed in one step, such as a turn, is within the limits of the field that takes it over."""
    for step in walk.steps:
        for name, taken in step.taken.items():
            if not isinstance(taken, Taken) or taken.name not in {
                field.name for field in calculator_named(taken.calculator).fields
            }:
                continue
            given, asked = (
                calculator_named(taken.calculator).field(taken.name).kind,
                calculator_named(step.calculator).field(name).kind,
            )
            if isinstance(given, Choice):
                assert set(given.options) <= set(asked.options), (step.calculator, name)
            else:
                assert asked.least <= given.least and given.most <= asked.most, (step.calculator, name)


def test_every_seam_takes_what_the_house_has_for_it():
    method = site_method()
    cm, inch = method.ruler("cm"), method.ruler("in")
    assert {seam: (allowance_of(method, cm, seam), allowance_of(method, inch, seam)) for seam in SEAMS} == {
        "plain": ("1.5 cm", "5/8 in"), "felled": ("1.2 cm", "1/2 in"), "french": ("1 cm", "3/8 in"),
        "zip": ("2 cm", "3/4 in"), "selvedges": ("0", "0"),
    }  # fmt: skip


@pytest.mark.parametrize(
    "calculator", [each for each in catalogue().values() if "seam" in each.kinds], ids=lambda each: each.name
)
def test_a_seam_that_is_named_brings_its_allowance_to_every_page_that_joins(calculator):
    seam, allowance = calculator.field("seam"), calculator.field("seam_allowance")
    assert tuple(seam.kind.options) == JOINS or calculator.name in articles()
    for kind in seam.kind.options:
        asking = Asking({"seam": kind})
        assert asking.value(allowance) == allowance.kind.parse(
            allowance_of(asking.method, asking.ruler, kind), asking.ruler
        )
    assert Asking({"seam_allowance": "7 mm"}).value(allowance) == 7
