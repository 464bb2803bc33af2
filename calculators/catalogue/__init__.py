"""Every calculator of the handbook. A file in this folder that sets CALCULATOR is found by itself, and so is every
article."""

import pkgutil
from functools import cache
from importlib import import_module

from calculators.articles import articles
from calculators.articles.calculator import as_calculator
from calculators.asking.declaration import Calculator
from calculators.values.measure import quote


@cache
def catalogue() -> dict[str, Calculator]:
    """All calculators by name, in alphabetical order."""
    modules = (import_module(f"{__name__}.{found.name}") for found in pkgutil.iter_modules(__path__))
    calculators = [*(module.CALCULATOR for module in modules), *map(as_calculator, articles().values())]
    return {calculator.name: calculator for calculator in sorted(calculators, key=lambda each: each.name)}


def calculator_named(name: str) -> Calculator:
    """The calculator of that name; raises KeyError with a sentence that lists them all."""
    if name not in catalogue():
        raise KeyError(f"There is no calculator called “{quote(name)}”. There are: {', '.join(catalogue())}.")
    return catalogue()[name]
