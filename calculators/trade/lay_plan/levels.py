"""A plan put so that each level of cuts turns the other way than the one before: all marks of a level are then set out
in one go."""

from collections.abc import Iterator
from dataclasses import replace

from calculators.trade.lay_plan.solving.model import Task
from calculators.trade.lay_plan.solving.plan import Part, Plan, piece_size


def by_levels(plan: Plan) -> Plan:
    """The same pieces in the same places, with parts that are cut the same way as what they are cut from taken up into
    it.

    plan: any plan. Returns one that needs no more cuts.
    Source: derived.
    """
    root = _levelled(plan.task, plan.cloth)
    if root.cut != plan.cloth.cut:
        root = replace(plan.cloth, parts=(root,))  # a single strip stays a strip
    elif root.piece is not None:
        cut = "across" if piece_size(plan.task, root.piece, root.turned)[1] < root.length else "along"
        parts = tuple(_taken_up(plan.task, root, cut))
        root = replace(root, cut=cut, parts=parts, piece=None, turned=False) if len(parts) > 1 else root
    return replace(plan, cloth=root)


def _levelled(task: Task, part: Part) -> Part:
    if not part.parts:
        return part
    inner = [found for each in part.parts for found in _taken_up(task, _levelled(task, each), part.cut)]
    return inner[0] if len(inner) == 1 else replace(part, parts=tuple(inner))


def _taken_up(task: Task, part: Part, cut: str) -> Iterator[Part]:
    """What stands in the row of its outer part: its own parts where it is cut the same way, or its piece and what is
    trimmed off it."""
    if part.cut == cut:
        yield from part.parts
        return
    size = part.width, part.length
    width, length = size if part.piece is None else piece_size(task, part.piece, part.turned)
    if cut == "along" and width < part.width:
        yield replace(part, width=width)
        yield Part(part.x + width, part.y, part.width - width, part.length)
    elif cut == "across" and length < part.length:
        yield replace(part, length=length)
        yield Part(part.x, part.y + length, part.width, part.length - length)
    else:
        yield part
