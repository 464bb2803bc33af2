"""The house method: the measurements and habits one workroom has settled on, which fill every field left alone."""

from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from importlib.resources import files
from typing import Any, Mapping

import yaml

from calculators.measure import Ruler, quote


RULER_STEPS = {"cm": ("1/10", "1/2"), "mm": ("1", "1/2"), "in": ("1/2", "1/4", "1/8", "1/16", "1/32")}


@dataclass(frozen=True)
class HouseMethod:
    """One workroom's settled measures.

    rulers: the ruler used for each unit, "cm", "mm" and "in"; unit: the one the house reads by habit.
    measures: name → text, or → {"cm": text, "in": text} where a round figure differs between rulers.
    """

    name: str
    unit: str
    rulers: Mapping[str, Ruler]
    measures: Mapping[str, str | Mapping[str, str]]

    def offers(self, wanted: str) -> bool:
        """Whether there is such a ruler; named as for `ruler`."""
        unit, _, step = (wanted or self.unit).partition(" ")
        return unit in self.rulers and step in ("", *RULER_STEPS[unit])

    def ruler(self, wanted: str = "") -> Ruler:
        """The ruler asked for: "" is the one the house reads by habit, "in" the house's inch ruler, "in 1/32" a finer one.

        Raises ValueError with a sentence when there is no such ruler.
        """
        if not self.offers(wanted):
            known = ", ".join(f"{name} {step}" for name, steps in RULER_STEPS.items() for step in steps)
            raise ValueError(f"There is no ruler “{quote(wanted)}” here. There are: {known}.")
        unit, _, step = (wanted or self.unit).partition(" ")
        return Ruler(unit, Fraction(step)) if step else self.rulers[unit]

    def measure(self, name: str, ruler: Ruler) -> str:
        """The house's text for a measure, in round figures of the ruler in hand."""
        text = self.measures[name]
        return text if isinstance(text, str) else text["in" if ruler.unit == "in" else "cm"]


def read_house_method(data: Mapping[str, Any]) -> HouseMethod:
    """The house method from its file's contents."""
    ruler = data["ruler"]
    rulers = {unit: Ruler(unit, Fraction(ruler[f"{unit}_step"])) for unit in ("cm", "in")}
    rulers["mm"] = Ruler("mm", rulers["cm"].step_mm)
    return HouseMethod(data["name"], ruler["unit"], rulers, data["measures"])


@cache
def site_method() -> HouseMethod:
    """The method the handbook is built with: calculators/house-method.yaml."""
    return read_house_method(yaml.safe_load(files("calculators").joinpath("house-method.yaml").read_text(encoding="utf-8")))
