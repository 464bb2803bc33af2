"""A thousand hostile texts in the blanks of every calculator; `scripts/bench/hostile_values.py` tries as many as one
likes, and times them."""

import time
from math import inf
from random import Random

import pytest

from calculators.catalogue import calculator_named, catalogue
from calculators.values.kind import InvalidValue
from calculators.values.kinds import Length
from scripts.bench.hostile_values import LIMIT, Found, tried, try_out
from tests.hostile_texts import SHAPES, hostile_text


def test_no_text_breaks_any_blank_or_is_refused_unclearly():
    found = tried(1000, 20, inf)
    assert found.faults == []
    assert set(found.kinds) == {type(field.kind).__name__ for each in catalogue().values() for field in each.fields}
    for calculator, asked in [(each, field) for each in catalogue().values() for field in each.fields]:
        of_its_kind = found.kinds[type(asked.kind).__name__]
        while not of_its_kind.refused and of_its_kind.texts < 100:  # of a kind that few blanks have
            made_by, text = hostile_text(asked.kind, Random(of_its_kind.texts))
            try_out(found, calculator, asked, text, made_by, "cm 1/10", inf)
    assert found.faults == []
    assert all(each.refused for each in found.kinds.values())


def test_texts_of_every_shape_are_among_them():
    chance = Random(1)
    kind = calculator_named("lay-plan").field("pieces").kind
    made_by = {hostile_text(kind, chance)[0] for _ in range(400)}
    assert made_by >= {*SHAPES, *(f"{shape}, in a cell" for shape in SHAPES)}


def fails() -> None:
    raise ZeroDivisionError


def refuses_unclearly() -> None:
    raise InvalidValue("invalid\ninput")


def is_busy() -> None:
    until = time.process_time() + 1.1 * LIMIT
    while time.process_time() < until:
        pass


@pytest.mark.parametrize(
    ("act", "words"),
    [(fails, "ZeroDivisionError"), (refuses_unclearly, "not one clear sentence"), (is_busy, " ms")],
)
def test_a_planted_fault_is_found(act, words, monkeypatch):
    parse = Length.parse

    def spoilt(self, text, ruler):
        if text == "37 cm":
            act()
        return parse(self, text, ruler)

    monkeypatch.setattr(Length, "parse", spoilt)
    calculator, found = calculator_named("pieces-from-cloth"), Found()
    try_out(found, calculator, calculator.field("piece_width"), "36 cm", limit=inf)
    assert found.faults == []
    try_out(found, calculator, calculator.field("piece_width"), "37 cm")
    assert len(found.faults) == 1 and words in found.faults[0]
