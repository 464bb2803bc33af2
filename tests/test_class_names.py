"""A name of a class stands for one thing: whoever reads it anywhere in `calculators/` knows which class is meant."""

import ast
from collections import defaultdict
from collections.abc import Mapping

from scripts.tools.places import ROOT


def defined_twice(sources: Mapping[str, str]) -> dict[str, list[str]]:
    """Class names that several of these modules (full name → text) define, or one of them twice, a leading underscore
    aside."""
    places = defaultdict(list)
    for module, text in sources.items():
        for node in ast.walk(ast.parse(text)):
            if isinstance(node, ast.ClassDef):
                places[node.name.lstrip("_")].append(module)
    return {name: modules for name, modules in places.items() if len(modules) > 1}


def test_a_class_name_stands_for_one_class():
    files = sorted((ROOT / "calculators").rglob("*.py"))
    assert defined_twice({file.relative_to(ROOT).as_posix(): file.read_text() for file in files}) == {}


def test_a_name_that_stands_for_two_classes_is_found():
    sources = {
        "a": "class Step:\n    pass",
        "b": "def f():\n    class _Step:\n        pass",
        "c": "class Steps:\n    pass",
    }
    assert defined_twice(sources) == {"Step": ["a", "b"]}
