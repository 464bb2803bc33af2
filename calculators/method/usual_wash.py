"""What the wash does to the cloth used most, as the method's list of cloths says it, where the test square is left open."""

from dataclasses import replace
from fractions import Fraction
from typing import Mapping

from calculators.cloth import after_the_wash
from calculators.house_method import HouseMethod, Written, on_ruler
from calculators.measure import parse_length, show_exactly

WAYS = ("length", "width")


def usual_cloth(method: HouseMethod) -> Mapping[str, Written]:
    """The line of the cloth used most; of a list with one cloth, that one; empty where the list does not tell."""
    lines = method.tables.get("cloths", ())
    name = str(method.measures.get("cloth", "")).casefold()
    named = [line for line in lines if str(line.get("cloth", "")).casefold() == name]
    return (named or (list(lines) if len(lines) == 1 else []) or [{}])[0]


def with_its_wash(method: HouseMethod) -> HouseMethod:
    """The method with its test square measured after the wash: what it was before, changed as its own list of cloths says.

    Only where the method says nothing of the square itself.
    """
    if "tables.cloths" not in method.own:
        return method
    found = {f"after_{way}": _after(method, way) for way in WAYS if f"measures.after_{way}" not in method.own and usual_cloth(method).get(f"change_{way}")}
    own = {f"measures.{name}" for name in found}
    return replace(method, measures={**method.measures, **found}, own=method.own | own)


def _after(method: HouseMethod, way: str) -> Written:
    change = Fraction(str(usual_cloth(method)[f"change_{way}"]).removesuffix("%").strip().replace("−", "-").replace(",", "."))

    def after(unit: str) -> str:
        before = on_ruler(method.measures[f"before_{way}"], method.rulers[unit])
        return show_exactly(after_the_wash(parse_length(before, unit), change), unit)

    return {unit: after(unit) for unit in ("cm", "in")}
