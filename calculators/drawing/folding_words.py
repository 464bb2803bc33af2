"""A drawn step in words, for those who do not see it: what has changed since the step before, and how the cloth lies
now. Both are taken from the folded cloth itself."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from calculators.drawing import lines
from calculators.trade.corners.borders import BorderKind, borders
from calculators.trade.corners.cloth import Facet
from calculators.trade.corners.convex import Edge, Polygon, area
from calculators.trade.corners.layers import seen_from_above
from calculators.trade.corners.stack import Stack
from calculators.trade.corners.steps import CornerStep

FIRST_CLOTHS = {"piece", "top cloth"}
_MADE = {"mark": "a pencil line is ruled", "stitch": "a row of stitches is sewn", "cut": "cloth is cut away"}
Borders = list[tuple[BorderKind, Edge]]


@dataclass(frozen=True)
class Lying:
    """How a step's cloth lies, as its drawing shows it.

    groups: the facets to be seen with their borders, the lowest first, those together that lie next in order and as
    flat as one. sides: the styles of what is to be seen with their shares of it [percent], the largest first. folds:
    how many edges are folded. creased: whether a crease lies open. seen: the parts that are to be seen, each with its
    facet.
    """

    groups: list[list[tuple[Facet, Borders]]]
    sides: tuple[tuple[str, int], ...]
    folds: int
    creased: bool
    seen: tuple[tuple[Facet, Polygon], ...]


def lying(stack: Stack, window: Polygon) -> Lying:
    """How a stack lies that is seen through a window."""
    visible = {id(seen.facet): seen for seen in seen_from_above(stack)}
    sides, kinds = Counter[str](), Counter[BorderKind]()
    groups: list[list[tuple[Facet, Borders]]] = []
    for facet, around in zip(stack.layers, borders(stack, window)):
        kinds.update(kind for kind, _ in around)
        if id(facet) not in visible:
            continue
        sides[side_style(facet)] += round(1000 * sum(area(part) for part in visible[id(facet)].parts))
        before = groups[-1][-1][0] if groups else None
        if before and before.cloth == facet.cloth and before.lay.same_as(facet.lay):
            groups[-1].append((facet, around))
        else:
            groups.append([(facet, around)])
    shares = ((style, round(100 * each / sides.total())) for style, each in sides.items())
    return Lying(
        groups,
        tuple(sorted(shares, key=lambda each: (-each[1], each[0]))),
        kinds["fold"],
        kinds["crease"] > 0,
        tuple((each.facet, part) for each in visible.values() for part in each.parts),
    )


def side_style(facet: Facet) -> str:
    """The style that tells which side of which cloth is up."""
    if facet.cloth.name in FIRST_CLOTHS:
        return lines.CLOTH_RIGHT if facet.right_side_up else lines.CLOTH_WRONG
    return lines.OTHER_RIGHT if facet.right_side_up else lines.OTHER_WRONG


def in_words(step: CornerStep, now: Lying, before: tuple[CornerStep, Lying] | None) -> str:
    """What a drawing of a step shows. before: the step before it and how that lay, None for the first."""
    changed = list(_changes(step, now, *before)) if before else []
    told = [f"Since the last drawing {_listed(changed)}."] if changed else []
    face = "The other face" if step.from_below else "The work"
    return " ".join([*told, f"{face} now: {'; '.join(_state(step, now))}."])


def _changes(step: CornerStep, now: Lying, last: CornerStep, then: Lying) -> Iterator[str]:
    if step.from_below != last.from_below:
        yield "the work is turned over"
    if {facet.cloth.name for facet in step.stack.layers} - {facet.cloth.name for facet in last.stack.layers}:
        yield "another cloth is laid with it"
    new = {line.kind for line in set(step.stack.lines) - set(last.stack.lines)}
    if step.stack.layers != last.stack.layers and "cut" not in new:
        yield (
            "cloth is folded over"
            if now.folds > then.folds
            else ("cloth is opened out" if now.folds < then.folds else "cloth is folded another way")
        )
    yield from (words for kind, words in _MADE.items() if kind in new)


def _state(step: CornerStep, now: Lying) -> Iterator[str]:
    (first, _), *others = now.sides
    yield f"{_side(first)} is up"
    yield from (f"{_side(style)} shows on about {share} % of what is seen" for style, share in others if share)
    if now.creased:
        yield "creases lie open"
    if any(line.kind == "cut" for line in step.stack.lines):
        yield "part of the corner is cut away"
    rows = len(step.stack.seams)
    if rows:
        yield "one row of stitches holds the layers" if rows == 1 else f"{rows} rows of stitches hold the layers"


def _side(style: str) -> str:
    """Such as *the wrong side of the other cloth*."""
    return f"the {' of the '.join(reversed(lines.WORDS[style].split(', ')))}"


def _listed(parts: list[str]) -> str:
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}"
