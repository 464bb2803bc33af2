"""The shrinkage found by cloth reaches the wash test, unless the method settles the test square itself."""

import json

import pytest

from calculators.asking.answering import Asking, answer
from calculators.asking.house_method import FORMAT, VERSION
from calculators.catalogue import calculator_named
from calculators.documents.house_method.reading import read_method
from calculators.faces.house_method.form import form
from calculators.faces.page.markup import html
from calculators.values.measure import CENTIMETRES

LINEN = {"cloth": "Sage linen", "change_length": "−4 %", "change_width": "-3,5 %"}
HEAVY = {"cloth": "Heavy linen", "change_length": "−8 %"}


def text_of(cloths: list[dict], **measures: str) -> str:
    return json.dumps(
        {
            "format": FORMAT,
            "version": VERSION,
            "id": "ours",
            "name": "Ours",
            "measures": measures,
            "tables": {"cloths": cloths},
        }
    )


def changes(text: str, ruler: str = "") -> tuple[float, float]:
    found = answer(calculator_named("wash-test"), Asking({}, method=read_method(text)[1], wanted_ruler=ruler)).results
    return float(found["change_length"]), float(found["change_width"])


@pytest.mark.parametrize("ruler", ["", "in"])
@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (text_of([LINEN]), (-4, -3.5)),  # the only cloth
        (text_of([HEAVY, LINEN], cloth="sage LINEN"), (-4, -3.5)),  # the one used most
        (text_of([HEAVY, LINEN], cloth="Heavy linen"), (-8, -2.4)),  # what the list leaves open is the handbook's
        (text_of([HEAVY, LINEN]), (-4.8, -2.4)),  # the list does not tell which
        (text_of([LINEN], before_length="100 cm"), (-4, -3.5)),
        (text_of([]), (-4.8, -2.4)),
    ],
)
def test_the_wash_test_begins_with_what_the_cloth_did(text, expected, ruler):
    found = changes(text, ruler)
    if expected == (-4.8, -2.4) and ruler:
        expected = (-5, -2.5)  # the handbook's own square in inches
    elif expected[1] == -2.4 and ruler:
        expected = (expected[0], -2.5)
    assert found == pytest.approx(expected)


def test_a_square_that_the_method_settles_itself_counts():
    assert changes(text_of([LINEN], after_length="49 cm")) == pytest.approx((-2, -3.5))


def test_the_form_says_where_the_square_comes_from():
    document, _, _ = read_method(text_of([LINEN]))
    shown = "".join(map(html, form(document, CENTIMETRES))).replace("\N{NO-BREAK SPACE}", " ")
    assert "Left empty: 48 cm" in shown and "from the wash of Sage linen as listed under Cloths." in shown
