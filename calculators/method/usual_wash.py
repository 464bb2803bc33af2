"""What the wash does to the cloth used most, as the method's list of cloths says it, where the test square is left open."""

from contextlib import suppress
from dataclasses import replace
from fractions import Fraction
from typing import Mapping

from calculators.cloth import after_the_wash
from calculators.house_method import HouseMethod, Written, on_ruler
from calculators.kinds import Change, Refused
from calculators.measure import parse_length, show_exactly

WAYS = ("length", "width")
_CHANGE = Change(least=Fraction(-60), most=Fraction(60))


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
    open_ways = [way for way in WAYS if f"measures.after_{way}" not in method.own]
    changes = {way: change for way in open_ways if (change := _change(method, way)) is not None}
    found = {f"after_{way}": _after(method, way, change) for way, change in changes.items()}
    own = {f"measures.{name}" for name in found}
    return replace(method, measures={**method.measures, **found}, own=method.own | own)


def _change(method: HouseMethod, way: str) -> Fraction | None:
    """The change in the wash [%] of the cloth used most; None where the list does not tell."""
    with suppress(Refused):
        if text := usual_cloth(method).get(f"change_{way}"):
            return _CHANGE.parse(str(text), method.rulers["cm"])
    return None


def _after(method: HouseMethod, way: str, change: Fraction) -> Written:
    def after(unit: str) -> str:
        before = on_ruler(method.measures[f"before_{way}"], method.rulers[unit])
        return show_exactly(after_the_wash(parse_length(before, unit), change), unit)

    return {unit: after(unit) for unit in ("cm", "in")}
