"""Reference cases: what a source gives and prints, beside what a calculator makes of it. The data are in
tests/reference/*.yaml."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields
from fractions import Fraction
from functools import cache, cached_property
from pathlib import Path
from typing import Any

import yaml

from calculators.asking.answering import Asking
from calculators.asking.bibliography import bibliography
from calculators.asking.site_method import example_method
from calculators.catalogue import calculator_named, catalogue
from calculators.faces.page.plain import plain_answer
from scripts.checked.quantity import printed_value, quantity, units

FOLDER = Path(__file__).parents[2] / "tests" / "reference"
WHY_FEWER = "why-fewer.yaml"

#: Whose the printed value is: the source's own, a library's, ours by a rule that the source prints, or ours by
#: arithmetic alone.
VALUES = ("source", "library", "rule", "ours")
SEEN = ("read", "second-hand", "memory", "library", "ours")
WITHOUT_SOURCE = ("derived", "common practice, no source")
EXACT = "exact"
ENOUGH = 3


@dataclass(frozen=True)
class Case:
    """One value held against something outside.

    name: of the case, as a title. calculator: whose. said: what the source gives, in a few words.
    given: the same as fields of the calculator. quantity: a result, or results added, taken away, multiplied or
    divided.
    printed: number and unit, as the source has them. rounding: the last place it rounds to, in that unit, or ``exact``.
    source: a key of the bibliography, or one of WITHOUT_SOURCE. seen: how the source was seen. value: whose the printed
    value is.
    """

    name: str
    calculator: str
    said: str
    given: Mapping[str, str]
    quantity: str
    printed: str
    rounding: str
    source: str
    seen: str
    value: str

    @property
    def question(self) -> dict[str, Any]:
        """What to ask `calculators.faces.browser.replies`."""
        return {"ask": "plain", "calculator": self.calculator, "typed": dict(self.given)}

    @property
    def outside(self) -> bool:
        """Whether the printed value is somebody else's."""
        return self.value in ("source", "library")

    @cached_property
    def ours(self) -> float:
        """What the calculator makes of it, in the unit of the printed value."""
        return self.in_unit(
            plain_answer(calculator_named(self.calculator), Asking(self.given, method=example_method()))["results"]
        )

    def in_unit(self, results: Mapping[str, float]) -> float:
        """The quantity asked for, in the unit of the printed value. results: in the units of a plain answer."""
        return quantity(self.quantity, results) / units()[printed_value(self.printed)[1]]

    def agrees(self, results: Mapping[str, float]) -> bool:
        """Whether results come out as the source prints them, at its own rounding."""
        return self.off(self.in_unit(results)) <= 0

    def off(self, found: float) -> float:
        """How far a number lies beyond the rounding of the printed one, in its unit; 0 or less where they agree."""
        return self.apart(found) - (0.0 if self.rounding == EXACT else float(Fraction(self.rounding)) / 2)

    def apart(self, found: float) -> float:
        """How far a number lies from the printed one, in its unit; 0 or less where only the last bits of a float
        differ."""
        number = float(printed_value(self.printed)[0])
        return abs(found - number) - 1e-9 * max(1.0, abs(number))


def faults(entry: Mapping[str, Any]) -> list[str]:
    """What is wrong with a case as data, in sentences; none when it can be asked and shown."""
    wanted = {field.name for field in fields(Case)}
    told = [f"{name} is missing" for name in sorted(wanted) if not entry.get(name)]
    told += [f"{name} is unknown" for name in sorted(set(entry) - wanted)]
    if told:
        return told
    case = Case(**entry)
    if case.calculator not in catalogue():
        return [f"there is no calculator {case.calculator}"]
    asked, answered = (
        {each.name for each in some}
        for some in (catalogue()[case.calculator].fields, catalogue()[case.calculator].results)
    )
    told += [f"{name} is no field of {case.calculator}" for name in case.given if name not in asked]
    told += _value_faults(case, answered)
    if case.source not in WITHOUT_SOURCE and case.source not in bibliography():
        told.append(f"there is no source {case.source}")
    if case.value not in VALUES or case.seen not in SEEN:
        told.append("whose value it is, or how it was seen, is not said")
    elif (case.value == "ours") != (case.source in WITHOUT_SOURCE) or (case.value == "ours") != (case.seen == "ours"):
        told.append("a value of ours has no source, and any other has one")
    elif (case.value == "library") != (case.seen == "library"):
        told.append("a library is asked, not read")
    return told


def _value_faults(case: Case, answered: set[str]) -> list[str]:
    told = []
    try:
        printed_value(case.printed)
        quantity(case.quantity, dict.fromkeys(answered, 1.0))
    except (ValueError, KeyError) as problem:
        told.append(str(problem))
    if case.rounding != EXACT:
        try:
            told += [] if Fraction(case.rounding) > 0 else ["a rounding is more than 0"]
        except ValueError:
            told.append(f"{case.rounding} is no rounding")
    return told


@cache
def cases() -> tuple[Case, ...]:
    """Every case of every file, in the order of the calculators.

    Raises ValueError that names the first case with a fault, so that neither build nor test goes on with it.
    """
    made = []
    for file in sorted(FOLDER.glob("*.yaml")):
        for entry in yaml.safe_load(file.read_text("utf-8")) if file.name != WHY_FEWER else ():
            if told := faults(entry):
                raise ValueError(f"{file.name}, {entry.get('name', 'a case without a name')}: {'; '.join(told)}")
            made.append(Case(**entry))
    order = list(catalogue())
    return tuple(sorted(made, key=lambda case: order.index(case.calculator)))


@cache
def why_fewer() -> dict[str, str]:
    """For each calculator with fewer than ENOUGH cases from outside: why, in a sentence."""
    told: dict[str, str] = yaml.safe_load((FOLDER / WHY_FEWER).read_text("utf-8"))
    return told


def too_few(some: Iterable[Case], reasons: Mapping[str, str]) -> list[str]:
    """Calculators with fewer than ENOUGH values from outside and no reason, or with a reason that they no longer
    need."""
    found = [case.calculator for case in some if case.outside]
    return [name for name in catalogue() if (found.count(name) >= ENOUGH) == bool(reasons.get(name))]
