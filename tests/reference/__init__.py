"""Published and derived values as data, for every Python that runs the calculators."""

import re
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Mapping

import yaml

_UNIT_MM = {"mm": 1.0, "cm": 10.0, "in": 25.4, "%": 1.0, "pieces": 1.0, "times": 1.0}


@dataclass(frozen=True)
class Case:
    """One value: what a source prints for what is given."""

    name: str
    calculator: str
    given: Mapping[str, str]
    quantity: str
    expected: float
    unit: str
    tolerance: float
    source: str
    known: str

    @property
    def question(self) -> dict[str, Any]:
        """What to ask `calculators.faces.browser.replies`."""
        return {"ask": "plain", "calculator": self.calculator, "typed": dict(self.given)}

    def agrees(self, results: Mapping[str, float]) -> bool:
        """Whether results in millimetres come out as the source prints them."""
        terms = re.findall(r"([+-]?)\s*(\w+)", self.quantity)
        found = sum(-results[name] if sign == "-" else results[name] for sign, name in terms)
        return abs(found / _UNIT_MM[self.unit] - self.expected) <= self.tolerance + 1e-9


def cases() -> list[Case]:
    """Every case of every file in this folder."""
    return [Case(**entry) for file in sorted(Path(__file__).parent.glob("*.yaml")) for entry in yaml.safe_load(file.read_text())]
