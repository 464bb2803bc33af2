"""The kinds of piece that a step is only for: whether the method has a kind of each name."""

from collections.abc import Iterable, Mapping
from typing import Any

from calculators.asking.house_method import kinds_named
from calculators.values.kind import InvalidValue
from calculators.values.measure import quote

TABLE, COLUMN = "steps", "kinds"


def unknown_kinds(named: str, pieces: Iterable[Mapping[str, Any]]) -> str:
    """One sentence where a kind is named that the method does not have, empty where it has all.

    named: the kinds, with a comma between them. pieces: the lines of the method's table of pieces.
    """
    kinds = [str(line["piece"]) for line in pieces if line.get("piece")]
    known = {each.casefold() for each in kinds}
    unknown = [f"“{quote(each)}”" for each in kinds_named({"kinds": named}) if each.casefold() not in known]
    if not unknown:
        return ""
    are_not = (
        f"{unknown[0]} is not a kind of piece"
        if len(unknown) == 1
        else f"{', '.join(unknown[:-1])} and {unknown[-1]} are not kinds of piece"
    )
    return (
        f"{are_not} of this method. It has {', '.join(kinds)}."
        if kinds
        else f"{are_not} of this method, which has none yet. Add it to the list above first."
    )


def check_kinds(named: str, pieces: Iterable[Mapping[str, Any]]) -> None:
    """Raises InvalidValue with that sentence."""
    if sentence := unknown_kinds(named, pieces):
        raise InvalidValue(sentence)
