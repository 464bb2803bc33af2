"""The reference of a calculator: what it asks, what it answers, how, from which sources, and its worked examples."""

import xml.etree.ElementTree as ET
from collections.abc import Iterable, Sequence

from calculators.asking.answering import Asking
from calculators.asking.bibliography import source_named
from calculators.asking.declaration import Calculator, Example
from calculators.faces.page.markup import element
from calculators.faces.page.table import row_of_name, table


def reference(calculator: Calculator, held_against: Iterable[ET.Element] = ()) -> ET.Element:
    """The reference as a block of HTML. held_against: what is told of values from outside, with a heading of its
    own."""
    asking = Asking({})
    fields = [(f.name, f.label, f.help, asking.text(f) or "may stay empty") for f in calculator.fields]
    results = [(r.name, r.label, r.meaning) for r in calculator.results]
    parts = [
        element("p", None, calculator.purpose),
        element(
            "p",
            None,
            "At a terminal: ",
            element("code", None, f"python -m calculators {calculator.name} {calculator.fields[0].name}=…"),
        ),
        element("h2", {"id": "asked"}, "What it asks"),
        _table("What it asks", ("Name", "Label", "Meaning", "The house’s value"), fields),
        element("h2", {"id": "answered"}, "What it answers"),
        _table("What it answers", ("Name", "Label", "Meaning"), results),
    ]
    if calculator.examples:
        parts += [
            element("h2", {"id": "examples"}, "Worked examples, checked at every build"),
            *map(_example, calculator.examples),
        ]
    parts += held_against
    if calculator.sources:
        cited = [element("li", None, source_named(key).cited) for key in calculator.sources]
        parts += [element("h2", {"id": "sources"}, "Sources"), element("ul", None, *cited)]
    return element(
        "div",
        {"class": "reference"},
        *parts,
        element("p", {"class": "declared-in"}, "Declared in ", element("code", None, calculator.work.__module__), "."),
    )


def _table(label: str, heads: Sequence[str], rows: Iterable[Sequence[str]]) -> ET.Element:
    """A table below its heading, which says what a caption would."""
    return table(label, heads, (row_of_name(name, *([cell] for cell in cells)) for name, *cells in rows), ())


def _example(example: Example) -> ET.Element:
    given = ", ".join(f"{name} {text}" for name, text in example.given.items())
    expected = ", ".join(
        f"{name} {float(value):g}" if not isinstance(value, str) else f"{name} {value}"
        for name, value in example.expected.items()
    )
    return element(
        "p", None, f"{given} → {expected} (lengths in mm). ", element("span", {"class": "practice"}, example.source)
    )
