"""Folded cloth: facets in stacking order, and what a maker's hands do to them.

A stack never changes; every action gives a new one. Folding moves facets by reflection, so cloth neither stretches nor
tears, and the flat cloth can always be found again under every facet.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction

from calculators.trade.corners.cloth import ClothLine, Facet, FlatCloth
from calculators.trade.corners.convex import Bounds, Edge, box, centre, cut, edges, holds, part_inside
from calculators.trade.corners.plane import (
    TOUCHING,
    Isometry,
    Line,
    Number,
    Point,
    absolute,
    along,
    distance,
    minus,
    same_place,
)
from calculators.trade.corners.seam import Seam, Thread

Grip = tuple[str, Point]
"""Where a flap is held: the cloth's name and a place in the flat cloth."""


class NothingThere(ValueError):
    """Raised when an action finds no cloth to act on."""


@dataclass(frozen=True)
class FoldPart:
    """A part of the table in a fold made in one go: left of every line of `inside`, it moves and comes to lie at a
    level.

    cloths: the only cloths meant, by name, where several lie on the table and part ways.
    """

    inside: tuple[Line, ...]
    movement: Isometry
    level: int
    cloths: tuple[str, ...] | None = None


@dataclass(frozen=True)
class Stack:
    """Cloth on the table.

    layers: facets in stacking order, the lowest first.
    lines: creases, stitches, marks and cuts, each on its own cloth.
    seams: stitched lines that hold layers together.
    before: the stacks this one was folded from, latest last, for unfolding.
    """

    layers: tuple[Facet, ...]
    lines: tuple[ClothLine, ...] = ()
    seams: tuple[Seam, ...] = ()
    before: tuple["Stack", ...] = ()

    @classmethod
    def flat(cls, *cloths: FlatCloth) -> "Stack":
        """Cloths lying flat over each other, the lowest first."""
        return cls(tuple(Facet(cloth, part) for cloth in cloths for part in cloth.shape))

    def fold(self, line: Line, over: bool = True, take: Grip | None = None, pressed: bool = True) -> "Stack":
        """Fold what lies right of a line onto its left.

        over: onto the top of the stack (towards the maker), or else underneath.
        take: hold the cloth here and fold only the flap that hangs together with it; without it all layers are folded.
        pressed: leave a crease.
        Raises NothingThere when no cloth lies right of the line.
        """
        parts = [_divided(facet, line) for facet in self.layers]
        moving = _flap([rest for _, rest in parts if rest], take)
        if not moving:
            raise NothingThere("no cloth lies beyond the line of this fold")
        staying = [each for both in parts for each in both if each and not _among(each, moving)]
        turned = [facet.moved(Isometry.folded_over(line)) for facet in reversed(moving)]
        creases = [
            ClothLine("crease", left.cloth.name, *_shared_border(left, rest))
            for left, rest in parts
            if pressed and left and rest and _among(rest, moving)
        ]
        layers = (*staying, *turned) if over else (*turned, *staying)
        return replace(self, layers=layers, lines=(*self.lines, *creases), before=(*self.before, self))

    def fold_in_one(self, parts: Iterable[FoldPart]) -> "Stack":
        """Move parts of the table at once, each as one block with all its layers, as when a corner is turned out.

        The parts must cover all the cloth. Within a part that is turned over, the order of its layers is reversed.
        """
        layers = []
        for part in sorted(parts, key=lambda each: each.level):
            meant = [facet for facet in self.layers if part.cloths is None or facet.cloth.name in part.cloths]
            block = [inner for facet in meant if (inner := _within(facet, part.inside))]
            if part.movement.turned_over:
                block.reverse()
            layers += [facet.moved(part.movement) for facet in block]
        return replace(self, layers=tuple(layers), before=(*self.before, self))

    def unfold(self) -> "Stack":
        """Open the latest fold; stitches, marks, creases and cuts made since stay."""
        if not self.before:
            raise NothingThere("this cloth has not been folded")
        return self.lie_as(self.before[-1])

    def lie_as(self, earlier: "Stack") -> "Stack":
        """Lay the cloth as it lay in an earlier stack; stitches, marks, creases and cuts made since stay."""
        laid = []
        for facet in self.layers:
            spot = centre(facet.flat)
            place = next(
                i for i, old in enumerate(earlier.layers) if old.cloth == facet.cloth and holds(old.flat, spot)
            )
            laid.append((place, replace(facet, lay=earlier.layers[place].lay)))
        laid.sort(key=lambda each: each[0])
        return replace(self, layers=tuple(facet for _, facet in laid), before=earlier.before)

    def in_floats(self) -> "Stack":
        """The same stack in floats: quicker to look at where exactness is not asked for."""
        layers = (
            Facet(f.cloth, tuple((float(x), float(y)) for x, y in f.flat), f.lay.in_floats()) for f in self.layers
        )
        return replace(self, layers=tuple(layers))

    def over(self, lower: "Stack") -> "Stack":
        """This stack laid on another; neither is unfolded afterwards."""
        return Stack(lower.layers + self.layers, lower.lines + self.lines, lower.seams + self.seams)

    def turned_over(self, middle: Number = Fraction(0)) -> "Stack":
        """The whole work turned over on the table, left for right about an upright line at `middle` [mm]."""
        movement = Isometry.folded_over(Line((middle, 0), (0, 1)))
        return replace(self, layers=tuple(facet.moved(movement) for facet in reversed(self.layers)))

    def mark(self, start: Point, end: Point) -> "Stack":
        """Draw a pencil line where it can be seen from above: on the topmost layer all along it."""
        drawn: list[ClothLine] = []
        bare: list[tuple[Number, Number]] = [(Fraction(0), Fraction(1))]
        for facet in reversed(self.layers):
            for _, ends, (first, last) in _on_flat([facet], (start, end)):
                for low, high in bare:
                    low, high = max(low, first), min(high, last)
                    if (high - low) * distance(start, end) > TOUCHING * 10:
                        low_end, high_end = (along(*ends, (share - first) / (last - first)) for share in (low, high))
                        side = facet.right_side_up
                        drawn.append(ClothLine("mark", facet.cloth.name, low_end, high_end, on_right_side=side))
                bare = [
                    gap
                    for low, high in bare
                    for gap in ((low, min(high, first)), (max(low, last), high))
                    if gap[0] < gap[1]
                ]
        return replace(self, lines=(*self.lines, *drawn))

    def stitch(self, start: Point, end: Point) -> "Stack":
        """Stitch along a straight line through every layer.

        Raises NothingThere when no cloth lies under the line.
        """
        found = _on_flat(self.layers, (start, end))
        if not found:
            raise NothingThere("there is no cloth under this line of stitching")
        threads = tuple(Thread(facet.cloth.name, *ends, *shares) for facet, ends, shares in found)
        stitches = [ClothLine("stitch", facet.cloth.name, *ends) for facet, ends, _ in found]
        return replace(self, lines=(*self.lines, *stitches), seams=(*self.seams, Seam(threads)))

    def trim(self, line: Line, take: Grip | None = None) -> "Stack":
        """Cut along a line through every layer and drop what lies right of it (only the flap held at `take`, if given).

        Raises NothingThere when no cloth lies right of the line.
        """
        parts = [_divided(facet, line) for facet in self.layers]
        dropped = _flap([rest for _, rest in parts if rest], take)
        if not dropped:
            raise NothingThere("no cloth lies beyond this cut")
        kept = [each for both in parts for each in both if each and not _among(each, dropped)]
        cuts = [
            ClothLine("cut", left.cloth.name, *_shared_border(left, rest))
            for left, rest in parts
            if left and rest and _among(rest, dropped)
        ]
        return replace(self, layers=tuple(kept), lines=(*self.lines, *cuts))

    def places(self, cloth: str, flat: Point) -> list[Point]:
        """Where a place of the flat cloth lies on the table: one place, or none when it was cut away."""
        found: list[Point] = []
        for facet in self.layers:
            if facet.cloth.name == cloth and holds(facet.flat, flat):
                place = facet.lay.place(flat)
                if not any(same_place(place, other) for other in found):
                    found.append(place)
        return found


def _divided(facet: Facet, line: Line) -> tuple[Facet | None, Facet | None]:
    left, right = cut(facet.on_table, line)
    if not right:
        return facet, None
    if not left:
        return None, facet
    return facet.part(left), facet.part(right)


def _within(facet: Facet, lines: tuple[Line, ...]) -> Facet | None:
    for line in lines:
        inside, _ = _divided(facet, line)
        if inside is None:
            return None
        facet = inside
    return facet


def _shared_border(left: Facet, right: Facet) -> Edge:
    """The flat line along which one facet was divided into two."""
    return next(shared for a in edges(left.flat) for b in edges(right.flat) if (shared := common_edge(a, b)))


def common_edge(one: Edge, other: Edge) -> Edge | None:
    """The part that two straight edges have in common, in the direction of the first."""
    (x, y), (dx, dy) = one[0], minus(one[1], one[0])
    longer = max(absolute(dx), absolute(dy))
    if any(absolute(dx * (end[1] - y) - dy * (end[0] - x)) >= TOUCHING * longer for end in other):
        return None
    axis, run = (0, dx) if absolute(dx) >= absolute(dy) else (1, dy)
    low, high = sorted((end[axis] - one[0][axis]) / run for end in other)
    low, high = max(low, 0), min(high, 1)
    return (along(*one, low), along(*one, high)) if (high - low) * longer > TOUCHING * 10 else None


def hinges(facets: Iterable[Facet]) -> list[tuple[int, int, Edge]]:
    """Pairs of facets that are neighbours in one cloth, by their place in the list, with the flat edge they share."""
    facets = list(facets)
    boxes = [box(facet.flat) for facet in facets]
    sides = [edges(facet.flat) for facet in facets]
    return [
        (i, j, shared)
        for i, one in enumerate(facets)
        for j in range(i + 1, len(facets))
        if one.cloth is facets[j].cloth and _boxes_touch(boxes[i], boxes[j])
        for a in sides[i]
        for b in sides[j]
        if (shared := common_edge(a, b))
    ]


def _boxes_touch(one: Bounds, other: Bounds) -> bool:
    return (
        one[0] <= other[2] + TOUCHING
        and other[0] <= one[2] + TOUCHING
        and one[1] <= other[3] + TOUCHING
        and other[1] <= one[3] + TOUCHING
    )


def _among(facet: Facet, chosen: list[Facet]) -> bool:
    return any(facet is each for each in chosen)


def _flap(facets: list[Facet], grip: Grip | None) -> list[Facet]:
    """The facets that hang together with the one held; all of them when none is held."""
    if grip is None:
        return facets
    cloth, place = grip
    held = {i for i, facet in enumerate(facets) if facet.cloth.name == cloth and holds(facet.flat, place)}
    pairs = hinges(facets)
    while grown := {b for i, j, _ in pairs for a, b in ((i, j), (j, i)) if a in held} - held:
        held |= grown
    return [facets[i] for i in sorted(held)]


def _on_flat(facets: Iterable[Facet], edge: Edge) -> list[tuple[Facet, Edge, tuple[Number, Number]]]:
    """The facets under a straight line, with the line's ends in the flat cloth and its shares of the whole line."""
    found = []
    for facet in facets:
        if part := part_inside(edge, facet.on_table):
            back = facet.lay.undone()
            shares = _share(edge, part[0]), _share(edge, part[1])
            found.append((facet, (back.place(part[0]), back.place(part[1])), shares))
    return found


def _share(edge: Edge, place: Point) -> Number:
    axis = 0 if absolute(edge[1][0] - edge[0][0]) >= absolute(edge[1][1] - edge[0][1]) else 1
    return (place[axis] - edge[0][axis]) / (edge[1][axis] - edge[0][axis])
