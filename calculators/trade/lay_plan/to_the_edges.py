"""A plan made in coarse units reaches only to the last whole unit; here it is given the rest of the cloth, as what is
left over."""

from dataclasses import replace
from fractions import Fraction

from calculators.trade.lay_plan.solving.model import whole_units
from calculators.trade.lay_plan.solving.plan import Part, Plan


def to_the_edges(plan: Plan, unit: Fraction, width: Fraction, length: Fraction | None) -> tuple[Plan, Fraction]:
    """The same plan on the whole cloth.

    plan: in units. unit: what one of them stands for [mm].
    width, length: of the whole cloth with one gap added [mm]; length None where the plan ends with its last strip.
    Returns the plan in a unit in which the whole cloth is a whole number, and that unit [mm].
    Source: derived, each last part grown by what rounding to whole units had left at its edge.
    """
    whole_length = plan.cloth.length * unit if length is None else length
    fine = whole_units([unit, width, whole_length])
    times = int(unit / fine)
    task = plan.task
    pieces = tuple(
        replace(piece, width=piece.width * times, length=piece.length * times, value=piece.worth)
        for piece in task.pieces
    )
    wide, long = int(width / fine), int(whole_length / fine)
    finer = replace(task, width=wide, length=None if task.length is None else long, pieces=pieces)
    cloth = _times(plan.cloth, times)
    return Plan(finer, _grown(cloth, wide - cloth.width, long - cloth.length)), fine


def _times(part: Part, n: int) -> Part:
    return replace(
        part,
        x=part.x * n,
        y=part.y * n,
        width=part.width * n,
        length=part.length * n,
        parts=tuple(_times(inner, n) for inner in part.parts),
    )


def _grown(part: Part, wider: int, longer: int) -> Part:
    """A part made larger; what is added is left over."""
    if not wider and not longer:
        return part
    larger = replace(part, width=part.width + wider, length=part.length + longer)
    if part.piece is not None:
        way = "across" if longer else "along"
        return _grown(replace(part, cut=way, parts=(part,), piece=None, turned=False), wider, longer)
    if not part.parts:
        return larger
    along = part.cut == "along"
    sideways = (0, longer) if along else (wider, 0)
    inner = [_grown(each, *sideways) for each in part.parts]
    more = wider if along else longer
    last = inner[-1]
    if more and last.piece is None and not last.parts:
        inner[-1] = _grown(last, *((more, 0) if along else (0, more)))
    elif more and along:
        inner.append(Part(part.x + part.width, part.y, more, larger.length))
    elif more:
        inner.append(Part(part.x, part.y + part.length, larger.width, more))
    return replace(larger, parts=tuple(inner))
