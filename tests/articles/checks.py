"""What must hold of any article: each finds what hands could not make, or what would not come out as asked."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from math import dist

from shapely import LineString, Point, Polygon, union_all

from calculators.trade.articles.cutting import ArticlePiece, cut_pieces
from calculators.trade.articles.made_up import made_up, times, total
from calculators.trade.articles.work import CLOSE_GAP, MakingUp

_FAR = 100_000.0  # [mm]


def not_finished_once(work: MakingUp) -> list[str]:
    """Sides of which some stretch is finished twice, or not at all."""
    found = []
    for part in work.parts:
        for side in part.sides:
            spans = [
                sorted((each.start, each.end))
                for each in (
                    *(finish.stretch for finish in work.finishes),
                    *(end for glue in work.folds for end in (glue.one, glue.other)),
                )
                if each.part == part and each.side == side
            ]
            reached = Fraction(0)
            for start, end in sorted(spans):
                if start != reached:
                    break
                reached = end
            else:
                if reached == part.length_of(side):
                    continue
            found.append(f"{part.name}, {side}")
    return found


def do_not_walk(work: MakingUp) -> list[str]:
    """Joined stretches of unequal length."""
    return [
        f"{glue.one.part.name} {glue.one.side} and {glue.other.part.name} {glue.other.side}"
        for glue in work.glues
        if abs(glue.one.length - glue.other.length) > Fraction(1, 10**9)
    ]


def cut_unlike(work: MakingUp) -> list[str]:
    """Parts that are said to be cut alike to another and are not."""
    pieces = {piece.parts[0].part.name: piece for piece in cut_pieces(work)}
    alone = MakingUp()
    alone.parts, alone.operations = [replace(part, like="") for part in work.parts], work.operations
    found = []
    for part, piece in zip(work.parts, cut_pieces(alone)):
        if part.like and (piece.width, piece.length) != (pieces[part.like].width, pieces[part.like].length):
            found.append(part.name)
    return found


def cut_amiss(piece: ArticlePiece) -> list[str]:
    """Parts that are not cut as far outside each finished side as it takes up: a library that knows nothing of sewing
    cuts a sheet away along every side."""
    found = []
    for laid in piece.parts:
        if laid.part.is_round:
            continue
        sides = {side: LineString([tuple(map(float, end)) for end in laid.side(side)]) for side in laid.part.sides}
        middle = union_all(list(sides.values())).convex_hull.centroid
        sheet = middle.buffer(_FAR)
        for side, line in sides.items():
            takes = float(piece.takes.get((laid.part.name, side), 0))
            sheet = sheet.intersection(_this_side_of(line, middle, takes))
        cut = Polygon([tuple(map(float, one)) for one, _ in piece.cut_sides(laid).values()])
        off = dist(sheet.bounds, tuple(map(float, piece.cut_box(laid))))
        if off > 1e-3 or sheet.symmetric_difference(cut).area > 1:
            found.append(laid.part.name)
    return found


def _this_side_of(line: LineString, middle: Point, takes: float) -> Polygon:
    """All of the plane on the side of a line where the middle is, and so much beyond it."""
    (x1, y1), (x2, y2) = line.coords
    along = (x2 - x1) / line.length, (y2 - y1) / line.length
    out = -along[1], along[0]
    sign = -1 if (middle.x - x1) * out[0] + (middle.y - y1) * out[1] > 0 else 1
    corners = ((-_FAR, takes), (_FAR, takes), (_FAR, -_FAR), (-_FAR, -_FAR))
    return Polygon([(x1 + u * along[0] + sign * v * out[0], y1 + u * along[1] + sign * v * out[1]) for u, v in corners])


def do_not_meet(work: MakingUp) -> list[str]:
    """What is joined and does not lie on each other once the article is made up, and parts that hang on nothing."""
    placed = made_up(work)
    found = [
        f"{part.name} hangs on nothing" for part in work.parts if part.name not in placed and part not in work.straps
    ]
    for glue in work.glues:
        if glue.one.part.name not in placed or glue.other.part.name not in placed:
            continue
        one, other = placed[glue.one.part.name], placed[glue.other.part.name]
        for here, there in ((glue.one.start, glue.other.start), (glue.one.end, glue.other.end)):
            laid = one.along(glue.one, here)
            if glue.inset:
                laid = total(laid, times(glue.inset, one.inward(glue.one.side)))
            if dist(laid, other.along(glue.other, there)) > 1e-6:  # a slant is no exact number
                found.append(f"{glue.one.part.name} {glue.one.side} and {glue.other.part.name} {glue.other.side}")
    return found


def finished_size(work: MakingUp) -> tuple[Fraction, Fraction]:
    """How wide and how long it is made up [mm]: all parts where they lie."""
    points = [
        each.at(x, y)
        for each in made_up(work).values()
        for x in (Fraction(0), each.part.width)
        for y in (Fraction(0), each.part.length)
    ]
    xs, ys, _ = zip(*points)
    return max(xs) - min(xs), max(ys) - min(ys)


def out_of_order(work: MakingUp) -> Iterator[str]:
    """What is done when it can no longer be done: at an article that is turned out, whatever wants a flat part comes
    before the first seam that shuts it, and the turning out after the last."""
    verbs = [each.verb for each in work.operations]
    if "turn out" not in verbs:
        return
    shutting = [
        number
        for number, each in enumerate(work.operations)
        if each.verb != CLOSE_GAP and any(glue.angle for glue in each.glues)
    ]
    for number, verb in enumerate(verbs):
        if verb in {"hem", "zip", "buttons"} and number > shutting[0]:
            yield f"{verb} after the seam that shuts it"
        if verb == "turn out" and number < shutting[-1]:
            yield "turned out before the last seam"


def left_inside_out(work: MakingUp) -> list[str]:
    """Parts that lie on each other and are joined along two sides or more, wrong sides out, and are never turned."""
    if any(each.verb == "turn out" for each in work.operations):
        return []
    joined: dict[frozenset[str], set[tuple[str, str]]] = {}
    seams = (glue for each in work.operations if each.verb == "seam" for glue in each.glues)
    for glue in (*work.folds, *seams):
        if glue.angle == 180 and not glue.inset:
            pair = joined.setdefault(frozenset({glue.one.part.name, glue.other.part.name}), set())
            pair.add((glue.one.part.name, glue.one.side))
    return [" and ".join(sorted(parts)) for parts, sides in joined.items() if len(sides) > 1]


def too_narrow_to_turn(work: MakingUp) -> bool:
    """Whether an article that is turned out has no edge left open as long as it says."""
    if work.opening is None:
        return False
    joined: dict[tuple[str, str], Fraction] = {}
    gaps = [each.glues[0].one.length for each in work.operations if each.verb == CLOSE_GAP]
    for glue in work.glues:
        if not glue.fold and glue.angle:
            for end in (glue.one, glue.other):
                key = end.part.name, end.side
                joined[key] = joined.get(key, Fraction(0)) + end.length
    rims = [
        each.stretch.length - joined.get((each.stretch.part.name, each.stretch.side), Fraction(0))
        for each in work.finishes
        if each.how in {"hem", "kept", "casing"}
    ]
    zips = [each.length or Fraction(0) for each in work.to_buy if each.thing == "zip"]
    return work.opening > max((*rims, *zips, *gaps), default=Fraction(0))


def hang_beside_an_edge(work: MakingUp) -> list[str]:
    """Loops and ties that do not come out of the edge they hang on, or of which not all are hung."""
    found = [
        f"{hung.part.name} at the {end.side}"
        for hung in work.hung
        for end in hung.ends
        if min(end.start, end.end) < 0 or max(end.start, end.end) > end.part.length_of(end.side)
    ]
    for strap in work.straps:
        if not strap.is_bias and sum(each.part == strap for each in work.hung) != strap.count:
            found.append(f"{strap.name}, {strap.count}")
    return found
