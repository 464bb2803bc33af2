"""Declarations that contradict themselves are refused when they are made."""

import pytest

from calculators.asking.declaration import Calculator, Field, InvalidInput, Result, invalid_input
from calculators.values.kinds import Count, Length
from calculators.values.measure import CENTIMETRES
from calculators.values.phrase import say

FIELDS = (
    Field("width", "Width", Length(), "Across.", fixed="36 cm"),
    Field("rare", "Rare", Count(), "Seldom.", fixed="1"),
)
RESULTS = (Result("area", "Area", Count(), "All of it."),)


def declared(**changes):
    settled = {
        "name": "n",
        "title": "T",
        "purpose": "P.",
        "fields": FIELDS,
        "question": "{width} wide.",
        "results": RESULTS,
        "work": lambda given: None,
    }
    return Calculator(**(settled | changes))


def test_fields_and_results_are_found_by_name():
    calculator = declared()
    assert calculator.field("rare").label == "Rare"
    assert calculator.result("area").label == "Area"
    assert calculator.in_question == ["width"]
    assert calculator.beside_question == ["rare"]
    assert set(calculator.kinds) == {"width", "rare", "area"}


@pytest.mark.parametrize(
    "find", [lambda calculator: calculator.field("no"), lambda calculator: calculator.result("no")]
)
def test_a_name_that_is_not_declared_is_not_found(find):
    with pytest.raises(StopIteration):
        find(declared())


def test_one_name_for_two_things_is_refused():
    with pytest.raises(ValueError, match="named twice"):
        declared(results=(Result("width", "Width", Count(), "Again."),))


def test_a_sentence_with_an_unknown_blank_is_refused():
    with pytest.raises(ValueError, match="depth"):
        declared(question="{width} wide and {depth} deep.")


def test_a_refusal_takes_texts_and_phrases_alike():
    refusal = InvalidInput({"width": "Too {wide} for this.", "rare": say("{n:piece|pieces} too many.", n=2)})
    assert {name: phrase.filled(CENTIMETRES) for name, phrase in refusal.sentences.items()} == {
        "width": "Too {wide} for this.",
        "rare": "2 pieces too many.",
    }
    assert (
        invalid_input("width", "No room for {size:length}.", size=360).sentences["width"].filled(CENTIMETRES)
        == "No room for 36 cm."
    )
