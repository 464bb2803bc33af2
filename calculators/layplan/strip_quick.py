"""Good contents for a strip at once, from a table made when there were more copies than now.

Such a table tells at most too much for what is left, so it still guides a search and cuts it short; a limited number of looks is
enough for contents close to the best ones.
"""

from collections.abc import Sequence

from calculators.layplan.counts import PackedCounts
from calculators.layplan.strip_table import Filled, StripShapes

LOOKS = 250


def good_contents(shapes: StripShapes, counts: PackedCounts, copies: Sequence[int], filled: Filled, width: int, most: int) -> list[tuple[int, int, int]]:
    """Up to `most` contents of a part of a strip `width` wide, at least one: triples (worth, packed pieces, space left over).

    Parameters:
        copies: how many of each piece are left.
        filled: a table for at least these copies.
    """
    floor = shapes.widths.floor
    layers = [
        (before, across, min(limit, copies[piece]), value, counts.unit(piece))
        for before, across, limit, value, piece in filled.entries
        if across <= width and copies[piece]
    ]
    depth = len(layers)
    found: list[tuple[int, int, int]] = []
    least = -1
    looks = LOOKS
    stack = [(0, 0, width, 0, 0)]
    while stack:
        index, hope, space, worth, packed = stack.pop()
        looks -= 1
        if hope <= least and found:
            continue
        if index == depth:
            found.append((worth, packed, space))
            if len(found) > most:
                found.sort(reverse=True)
                found.pop()
                least = found[-1][0]
            if looks < 0:
                break
            continue
        if looks < 0 and found:
            break
        before, piece_width, limit, value, unit = layers[index]
        index += 1
        if space < piece_width:
            stack.append((index, worth + before[floor[space]], space, worth, packed))
            continue
        ways = []
        for count in range(min(limit, space // piece_width) + 1):
            hope = worth + before[floor[space]]
            if hope > least:
                ways.append((hope, count, (index, hope, space, worth, packed)))
            space -= piece_width
            worth += value
            packed += unit
        ways.sort()
        stack.extend(way[2] for way in ways)
    found.sort(reverse=True)
    return found
