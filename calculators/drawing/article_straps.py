"""Loops and ties, as they hang from an article that is made up."""

from collections.abc import Sequence
from math import cos, hypot, pi, sin

Flat = tuple[float, float]  # [mm] as it is seen; up is up
Box = tuple[float, float, float, float]
_CORNERS = 16  # of a curve


def strap_hanging(ends: Sequence[Sequence[Flat]], length: float, article: Box, limit: float) -> list[Flat]:
    """The outline of a loop or a tie.

    ends: where each of its ends comes out of an edge, from one side of it to the other. length: of it, where it is seen
    [mm]. article: the box of the article. limit: how much of it is shown at most [mm].
    Source: derived. A doubled loop stands straight out, a tie goes out and hangs down, and a loop between two places is
    half an ellipse about as long.
    """
    if len(ends) == 2 and ends[0] != ends[1]:
        return _arch(ends, length, article, limit)
    (one, other), out = ends[0], _outward(ends[0], article)
    if len(ends) == 2:
        reach = min(length / 2, limit)
        return [one, other, _moved(other, out, reach), _moved(one, out, reach)]
    return _tie(one, other, out, min(length, limit))


def _tie(one: Flat, other: Flat, out: Flat, length: float) -> list[Flat]:
    if not out[0]:
        return [one, other, _moved(other, out, length), _moved(one, out, length)]
    upper, lower = (one, other) if one[1] > other[1] else (other, one)
    wide = upper[1] - lower[1]
    turn = (lower[0] + out[0] * wide, lower[1] - wide)  # about which it bends down
    quarter = [pi / 2 * number / _CORNERS for number in range(_CORNERS + 1)]
    outer, inner = (
        [(turn[0] - out[0] * wide + out[0] * reach * sin(each), turn[1] + reach * cos(each)) for each in quarter]
        for reach in (2 * wide, wide)
    )
    foot = max(length - 2.4 * wide, wide)
    return [*outer, (outer[-1][0], outer[-1][1] - foot), (inner[-1][0], inner[-1][1] - foot), *inner[::-1]]


def _arch(ends: Sequence[Sequence[Flat]], length: float, article: Box, limit: float) -> list[Flat]:
    (a, b), (c, d) = ends
    out = _outward(ends[0], article)
    places = sorted((a, b, c, d), key=lambda place: place[0] if out[1] else place[1])
    middle = (places[0][0] + places[-1][0]) / 2, (places[0][1] + places[-1][1]) / 2
    half_outer = hypot(places[-1][0] - places[0][0], places[-1][1] - places[0][1]) / 2
    half_inner = hypot(places[2][0] - places[1][0], places[2][1] - places[1][1]) / 2
    # half the way round an ellipse lies between its height and its half axis times π ÷ 2
    high = min(max((length - half_outer) / 2, half_outer), limit)
    turns = [pi * number / (2 * _CORNERS) for number in range(2 * _CORNERS + 1)]
    along = abs(out[1]), abs(out[0])
    shapes = (half_outer, high), (half_inner, high - (half_outer - half_inner))
    outer, inner = (
        [_moved(_moved(middle, along, -half * cos(turn)), out, up * sin(turn)) for turn in turns] for half, up in shapes
    )
    return [*outer, *inner[::-1]]


def _outward(end: Sequence[Flat], article: Box) -> Flat:
    """Straight away from the article, level or upright."""
    (x1, y1), (x2, y2) = end
    if abs(x2 - x1) >= abs(y2 - y1):
        return (0.0, 1.0 if (y1 + y2) > article[1] + article[3] else -1.0)
    return (1.0 if (x1 + x2) > article[0] + article[2] else -1.0, 0.0)


def _moved(place: Flat, way: Flat, by: float) -> Flat:
    return place[0] + way[0] * by, place[1] + way[1] * by
