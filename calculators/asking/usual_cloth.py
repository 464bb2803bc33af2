"""What a method says of its cloth without writing it down twice: what trimming leaves of it, what its wash does, what
it costs."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from fractions import Fraction

from calculators.asking.house_method import HouseMethod, Written, on_ruler
from calculators.trade.cloth import UsableCloth, after_the_wash
from calculators.values.kind import InvalidValue
from calculators.values.kinds import Count, DimensionalChange, Length
from calculators.values.measure import Ruler, parse_length, show_exactly

WAYS = ("length", "width")
FOLDED = ("layers", "folded_length", "extra_length")
TRIMMED = ("selvedge", "end_loss", "skew")
_CHANGE = DimensionalChange(least=Fraction(-60), most=Fraction(60))


def usual_cloth(method: HouseMethod) -> Mapping[str, Written]:
    """The line of the cloth used most; of a list with one cloth, that one; empty where the list does not tell."""
    lines = method.tables.get("cloths", ())
    name = str(method.measures.get("cloth", "")).casefold()
    named = [line for line in lines if str(line.get("cloth", "")).casefold() == name]
    return (named or (list(lines) if len(lines) == 1 else []) or [{}])[0]


def change_found(column: str) -> Callable[[HouseMethod, Ruler], str]:
    """What the list of cloths says of the wash of the cloth used most, for the blank of a calculator; empty where it
    says nothing.

    column: ``change_length`` or ``change_width``.
    """

    def text(method: HouseMethod, ruler: Ruler) -> str:
        found = _change(usual_cloth(method), column)
        return "" if found is None else _CHANGE.show(found, ruler)

    return text


def worked_out(method: HouseMethod) -> HouseMethod:
    """The method with what its usual cloth leaves to be used, and with its test square after the wash, where it says
    neither itself.

    Only what the method's own entries lead to; the rest is the handbook's, as it stands.
    """
    for each in (_with_its_selvedges, _folded, _usable, _washed):
        method = each(method)
    return method


def for_cloth(method: HouseMethod, cloth: str) -> HouseMethod:
    """The method as it is for a cloth that is named: its own wash and its own price, and no other cloth's price.

    cloth: as the list of cloths has it; empty for the cloth used most.
    """
    if not cloth or cloth.casefold() == str(method.measures.get("cloth", "")).casefold():
        return method
    prices = tuple(
        line
        for line in method.tables.get("prices", ())
        if line.get("per") not in ("metre", "yard") or str(line.get("thing", "")).casefold() == cloth.casefold()
    )
    named = replace(method, measures={**method.measures, "cloth": cloth}, tables={**method.tables, "prices": prices})
    return _with_its_wash(named, method.cloth_line(cloth), WAYS)


def _with_its_selvedges(method: HouseMethod) -> HouseMethod:
    """A width that the house wrote down without its selvedges, as earlier editions asked for it, with them."""
    if not _own(method, ("usable_width",)) or _own(method, ("cloth_width",)):
        return method
    wanted = {"cloth_width": lambda unit: _length(method, "usable_width", unit) + 2 * _length(method, "selvedge", unit)}
    return _with(method, wanted, "the width without its selvedges, and both of these")


def _folded(method: HouseMethod) -> HouseMethod:
    """A cloth whose length the house settled, folded in as many layers as the handbook folds its own."""
    if "measures.cloth_length" not in method.own or _own(method, FOLDED):
        return method
    layers = _count(method)

    def one_layer(unit: str) -> Fraction:
        return method.rulers[unit].read(_length(method, "cloth_length", unit) / layers, "down")

    def over(unit: str) -> Fraction:
        return _length(method, "cloth_length", unit) - layers * one_layer(unit)

    return _with(method, {"folded_length": one_layer, "extra_length": over}, "the cloth, folded in as many layers")


def _usable(method: HouseMethod) -> HouseMethod:
    """What is left of the length of the usual cloth once ends and slant are off, as the calculator of usable cloth
    works it out."""
    layers = _count(method)

    def left(unit: str) -> UsableCloth:
        folded, extra, width, selvedge, end_loss, skew = (
            _length(method, name, unit) for name in (*FOLDED[1:], "cloth_width", *TRIMMED)
        )
        return UsableCloth(layers * folded + extra, width, selvedge, end_loss, skew)

    wanted: dict[str, Callable[[str], Fraction]] = {}
    if _own(method, (*FOLDED, "end_loss", "skew")) and "measures.usable_length" not in method.own:
        wanted["usable_length"] = lambda unit: left(unit).length
    return _with(method, wanted, "what trimming leaves of the cloth")


def _washed(method: HouseMethod) -> HouseMethod:
    if method.own.isdisjoint({"tables.cloths", "measures.cloth"}):
        return method
    return _with_its_wash(
        method, usual_cloth(method), [way for way in WAYS if f"measures.after_{way}" not in method.own]
    )


def _with_its_wash(method: HouseMethod, line: Mapping[str, Written], ways: Iterable[str]) -> HouseMethod:
    """The method with its test square after the wash as a line of the list of cloths says: what it was before, changed
    so."""
    changes = {way: found for way in ways if (found := _change(line, f"change_{way}")) is not None}

    def after(way: str) -> Callable[[str], Fraction]:
        return lambda unit: after_the_wash(_length(method, f"before_{way}", unit), changes[way])

    return _with(
        method,
        {f"after_{way}": after(way) for way in changes},
        f"from the wash of {line.get('cloth', '')} as listed under Cloths",
    )


def _with(method: HouseMethod, wanted: Mapping[str, Callable[[str], Fraction]], because: str) -> HouseMethod:
    """The method with measures worked out for either ruler [mm], shown as they are read off it and read as they are."""
    exact = {name: {unit: of(unit) for unit in ("cm", "in")} for name, of in wanted.items()}
    exact = {name: lengths for name, lengths in exact.items() if min(lengths.values()) > 0 or name == "extra_length"}
    shown = {
        name: {unit: Length().write(each, method.rulers[unit]) for unit, each in lengths.items()}
        for name, lengths in exact.items()
    }
    return replace(
        method,
        measures={**method.measures, **shown},
        own=method.own | {f"measures.{name}" for name in exact},
        because={**method.because, **dict.fromkeys(exact, because)},
        exactly={**method.exactly,
            **{name: {unit: show_exactly(each, unit) for unit, each in lengths.items()} for name,
                lengths in exact.items()}},
    )  # fmt: skip


def _own(method: HouseMethod, names: Iterable[str]) -> bool:
    return any(f"measures.{name}" in method.own for name in names)


def _length(method: HouseMethod, name: str, unit: str) -> Fraction:
    written = method.exactly.get(name, method.measures[name])
    return parse_length(on_ruler(written, method.rulers[unit]), unit)


def _count(method: HouseMethod) -> int:
    return Count().parse(str(method.measures["layers"]), method.ruler())


def _change(line: Mapping[str, Written], column: str) -> Fraction | None:
    try:
        return _CHANGE.parse(str(line[column]), Ruler("cm", Fraction(1, 10))) if line.get(column) else None
    except InvalidValue:
        return None
