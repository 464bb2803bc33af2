"""The words of every hem, seam and closing: at most seven in a drawing, apart, each row of stitches among them."""

import pytest
from hypothesis import HealthCheck, Phase, assume, given, settings
from hypothesis import strategies as st

from calculators.asking.answering import Asking, answer
from calculators.asking.declaration import InvalidInput
from calculators.catalogue import calculator_named
from calculators.drawing.section_labels import MOST
from calculators.trade.sections.edges import EDGES
from tests.drawing.test_words_apart import LOPSIDED, OF_A_STEP
from tests.drawing.words import faults

CALCULATOR = calculator_named("edge-steps")
MEASURES = {name: each for name, each in LOPSIDED["edge-steps"].items() if name != "edge"}


@pytest.mark.parametrize("edge", EDGES)
@settings(max_examples=15, deadline=None, suppress_health_check=list(HealthCheck), phases=[Phase.generate])
@given(typed=st.fixed_dictionaries(MEASURES))
def test_words_of_every_step(edge: str, typed: dict[str, str]):
    asking = Asking({**typed, "edge": edge})
    try:
        answered = answer(CALCULATOR, asking)
    except InvalidInput:
        assume(False)
    steps, _ = answered.drawn_from
    for step, picture in zip(steps, CALCULATOR.drawing(answered.drawn_from, asking.ruler).pictures):
        assert faults(picture.svg, OF_A_STEP) == []
        words = [each.text for each in picture.svg.iter("text")]
        assert len(words) <= MOST
        assert len(words) >= 3
        missing = {row.name for row in step.section.rows} - set(words)
        assert not missing, picture.title
