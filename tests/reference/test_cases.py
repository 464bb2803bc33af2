"""Values from outside, worked out by CPython; tests/pyodide asks the browser's Python the same."""

from dataclasses import asdict, replace

import pytest

from calculators.asking.bibliography import bibliography
from scripts.checked.quantity import printed_value, quantity
from tests.reference import cases, faults, too_few, why_fewer
from tests.reference.judges import JUDGES

each_case = pytest.mark.parametrize("case", cases(), ids=lambda case: case.name)
A_CASE = next(case for case in cases() if (case.source, case.calculator) == ("kime-clark", "wash-test"))


@each_case
def test_comes_out_as_printed(case):
    assert case.off(case.ours) <= 0, case.ours


@each_case
def test_a_case_printed_otherwise_does_not_agree(case):
    """Planted: the printed number moved by a thousandth of itself beyond its rounding, one way and the other."""
    number, unit = printed_value(case.printed)
    step = 0 if case.rounding == "exact" else float(case.rounding)
    for other in (float(number) * 1.001 + step, float(number) * 0.999 - step):
        wrong = replace(case, printed=f"{other:.9f} {unit}".strip().replace("-", "−"))
        assert wrong.off(case.ours) > 0


def test_names_are_told_apart():
    assert len({case.name for case in cases()}) == len(cases())


@pytest.mark.parametrize(
    "planted, said",
    [
        ({"source": ""}, "source is missing"),
        ({"rounding": ""}, "rounding is missing"),
        ({"said": ""}, "said is missing"),
        ({"calculator": "loom"}, "there is no calculator loom"),
        ({"source": "no-such-book"}, "there is no source no-such-book"),
        ({"source": "derived"}, "a value of ours has no source, and any other has one"),
        ({"seen": "ours"}, "a value of ours has no source, and any other has one"),
        ({"seen": "library"}, "a library is asked, not read"),
        ({"seen": "dreamt"}, "whose value it is, or how it was seen, is not said"),
        ({"rounding": "fine"}, "fine is no rounding"),
        ({"rounding": "0"}, "a rounding is more than 0"),
        ({"printed": "29.44 ells"}, "'ells' is no unit"),
        ({"printed": "about 29"}, "'about 29' is no printed value"),
        ({"quantity": "washed_depth"}, "washed_depth"),
        ({"given": {"colour": "blue"}}, "colour is no field of wash-test"),
        ({"tolerance": "1"}, "tolerance is unknown"),
    ],
)
def test_a_case_with_a_fault_is_refused(planted, said):
    assert faults(asdict(A_CASE)) == []
    assert said in "; ".join(faults(asdict(A_CASE) | planted))


@pytest.mark.parametrize("part", sorted(asdict(A_CASE)))
def test_no_part_of_a_case_may_be_left_out(part):
    assert faults({name: value for name, value in asdict(A_CASE).items() if name != part}) == [f"{part} is missing"]


def test_every_calculator_has_three_values_from_outside_or_says_why_not():
    assert too_few(cases(), why_fewer()) == []


def test_a_calculator_without_three_and_without_a_reason_is_found():
    without = [case for case in cases() if case.calculator != "wash-test"]
    assert too_few(without, why_fewer()) == ["wash-test"]
    assert too_few(cases(), {name: why for name, why in why_fewer().items() if name != "order"}) == ["order"]


def test_a_reason_that_is_no_longer_true_is_found():
    assert too_few(cases(), why_fewer() | {"wash-test": "Nobody prints any."}) == ["wash-test"]


def test_a_value_from_memory_is_none_from_outside():
    """Whatever rests on memory alone is looked up before it is printed."""
    assert [
        case.name
        for case in cases()
        if case.outside and (case.seen == "memory" or bibliography()[case.source].known == "memory")
    ] == []


def test_a_number_of_ours_is_not_told_as_the_sources():
    """Where a source prints the rule only, the number is said to be ours, and it is none of those from outside."""
    ruled = [case for case in cases() if case.value == "rule"]
    assert {case.source for case in ruled} >= {"gost-14067", "home-and-school-sewing", "school-sewing", "ufgs-12-22-00"}
    assert not any(case.outside for case in ruled)


def test_libraries_give_what_is_written_down_as_theirs():
    judged = {case.name: case for case in cases() if case.value == "library"}
    assert set(judged) == set(JUDGES)
    assert [name for name, judge in JUDGES.items() if judged[name].off(judge()) > 0] == []
    assert len(judged) <= 10


@pytest.mark.parametrize(
    "text, number, unit",
    [
        ("3 2/3 yd", 11 / 3, "yd"),
        ("−3.0 %", -3, "%"),
        ("29.44 in", 29.44, "in"),
        ("296.00", 296, ""),
        ("75 1/4", 75.25, ""),
        ("30 cm²", 30, "cm²"),
    ],
)
def test_values_are_read_as_printed(text, number, unit):
    assert (float(printed_value(text)[0]), printed_value(text)[1]) == (number, unit)


@pytest.mark.parametrize(
    "text, comes_to",
    [
        ("a", 6),
        ("a - b + c", 4),
        ("2 * a - b / c", 10),
        ("64 * b / a", 42 + 2 / 3),
        ("0 - a", -6),
        ("a - b * 2 - c", -4),
        ("a / c / b", 0.5),
    ],
)
def test_a_quantity_is_a_sum_of_products(text, comes_to):
    assert quantity(text, {"a": 6.0, "b": 4.0, "c": 2.0 if "c / b" not in text else 3.0}) == pytest.approx(comes_to)


@pytest.mark.parametrize("text", ["", "a b", "a -", "- a", "a ** b", "a; b", "a.b", "(a)"])
def test_what_is_no_sum_is_refused(text):
    with pytest.raises(ValueError):
        quantity(text, {"a": 1.0, "b": 1.0})
