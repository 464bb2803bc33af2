"""What holds for every kind of value: it says itself how it is asked, shown and tried out."""

import ast
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from importlib import import_module
from random import Random
from typing import Any

import pytest

from calculators.asking.declaration import Field
from calculators.asking.rows import Rows
from calculators.values.kind import InvalidValue, Kind, kind_for_spec, units
from calculators.values.kinds import Length
from calculators.values.measure import CENTIMETRES, SIXTEENTHS
from scripts.tools.places import ROOT
from tests.sentences import is_one_message
from tests.values.every_kind import asked_kinds, subclasses

ASKED = asked_kinds()
each_asked = pytest.mark.parametrize("kind", ASKED.values(), ids=ASKED)
ON = (CENTIMETRES, SIXTEENTHS)
HOME = "calculators.values"
#: Rows are asked for in fields, so they live where fields do.
HOME_OF_ROWS = "calculators.asking.rows"


@dataclass(frozen=True)
class Unsampled(Kind):
    """A planted kind that forgot to say what it lets through."""

    def parse(self, text, ruler):
        return text


@each_asked
def test_lets_through_what_it_says_and_refuses_what_it_says(kind):
    for seed in range(20):
        for ruler in ON:
            taken, refused = kind.samples(Random(seed)), kind.invalid_samples(Random(seed))
            assert taken and refused
            for text in taken:
                kind.parse(text, ruler)
            for text in refused:
                with pytest.raises(InvalidValue) as told:
                    kind.parse(text, ruler)
                assert is_one_message(str(told.value)), str(told.value)


@each_asked
def test_what_it_lets_through_is_written_out_shown_and_written_again(kind):
    for seed in range(20):
        for ruler, other in (ON, ON[::-1]):
            for text in kind.samples(Random(seed)):
                value = kind.parse(text, ruler)
                assert kind.parse(kind.write_out(text, ruler), other) == value, text
                assert kind.parse(kind.standing(text), ruler) == value, text
                assert kind.parse(kind.write_exactly(value, ruler), ruler) == value or not kind.two_figures, text
                assert isinstance(kind.show(value, ruler), str)


@each_asked
def test_what_it_writes_into_a_blank_reads_back_as_it_is_shown(kind):
    for seed in range(20):
        for ruler in ON:
            for text in kind.samples(Random(seed)):
                value = kind.parse(text, ruler)
                again = kind.parse(kind.write(value, ruler), ruler)
                assert kind.show(again, ruler).replace("about ", "") == kind.show(value, ruler).replace("about ", "")


def test_a_list_has_choices_and_nothing_else_has():
    for place, kind in ASKED.items():
        assert bool(kind.choices) == (kind.control == "list"), place


def test_a_kind_that_is_read_gives_samples():
    """By name, so that none is silently left out where chance tries everything."""
    assert unsampled(subclasses()) == []


def test_a_kind_without_samples_is_found():
    assert unsampled([Unsampled, Length]) == ["Unsampled gives no samples", "Unsampled gives no invalid_samples"]
    with pytest.raises(NotImplementedError, match="Unsampled"):
        Unsampled().samples(Random(1))
    with pytest.raises(NotImplementedError, match="Unsampled"):
        Rows(columns=(Field("name", "Name", Unsampled(), "A name."),)).samples(Random(1))


def unsampled(kinds) -> list[str]:
    return [
        f"{kind.__name__} gives no {way}"
        for kind in kinds
        if kind.parse is not Kind.parse
        for way in ("samples", "invalid_samples")
        if getattr(kind, way) is getattr(Kind, way)
    ]


def test_a_unit_of_another_size_or_a_word_said_twice_is_refused():
    with pytest.raises(ValueError, match="cm"):
        type("Cubits", (Kind,), {"units": {"cm": 457}})
    with pytest.raises(ValueError, match="said as length"):
        type("Cubits", (Kind,), {"format_specs": {"length": {}}})
    assert units()["cm"] == 10 and isinstance(kind_for_spec("length"), Length)


def questions_of_kind(source: str, names: Mapping[str, Any]) -> Iterator[str]:
    """Every place of a module where it asks which kind it has before it. names: what its names stand for."""
    for node in ast.walk(ast.parse(source)):
        if (
            isinstance(node, ast.Call)
            and isinstance(node.func, ast.Name)
            and node.func.id in ("isinstance", "issubclass")
        ):
            asked = node.args[1:]
        elif isinstance(node, ast.Compare) and _is_type_of(node.left):
            asked = node.comparators
        elif isinstance(node, ast.MatchClass):
            asked = [node.cls]
        else:
            continue
        for part in (inner for each in asked for inner in ast.walk(each)):
            if isinstance(part, ast.Name | ast.Attribute) and _is_kind(part, names):
                yield f"line {part.lineno} asks whether it is {ast.unparse(part)}"


def _is_type_of(node: ast.expr) -> bool:
    return isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "type"


def _is_kind(node: ast.Name | ast.Attribute, names: Mapping[str, Any]) -> bool:
    path = ast.unparse(node).split(".")
    found = names.get(path[0])
    for name in path[1:]:
        found = getattr(found, name, None)
    return isinstance(found, type) and issubclass(found, Kind)


def test_nobody_asks_which_kind_it_is():
    """What depends on the kind stands in the kind; `asking/rows.py` alone says which fields are asked in rows."""
    told = []
    for file in sorted((ROOT / "calculators").rglob("*.py")):
        module = ".".join(file.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")
        if module.startswith(f"{HOME}.") or module == HOME_OF_ROWS or module == "calculators.__main__":
            continue
        told += [f"{module}, {each}" for each in questions_of_kind(file.read_text(), vars(import_module(module)))]
    assert told == []


@pytest.mark.parametrize(
    "line",
    [
        "isinstance(kind, Length)",
        "isinstance(kind, (str, Length))",
        "isinstance(kind, str | Length)",
        "isinstance(kind, kinds.Length)",
        "issubclass(kind, Length)",
        "type(kind) is Length",
        "type(kind) in (Length, Rows)",
        "match kind:\n    case Length(least=0):\n        pass",
    ],
)
def test_a_planted_question_is_found(line):
    names = {"Length": Length, "Rows": Rows, "kinds": import_module("calculators.values.kinds"), "str": str}
    assert list(questions_of_kind(line, names))
    assert not list(questions_of_kind(line.replace("Length", "Picture").replace("Rows", "Picture"), names))
