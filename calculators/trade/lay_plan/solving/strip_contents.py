"""The contents of a strip (or of a part of it) that are worth most, one by one, guided by the tables that filled it."""

from collections.abc import Generator, Sequence

from calculators.trade.lay_plan.solving.counts import PackedCounts
from calculators.trade.lay_plan.solving.in_one_go import in_one_go
from calculators.trade.lay_plan.solving.strip_table import KnapsackTable

# One kind of piece: the table without it, width, most copies, value, and one copy packed.
Layer = tuple[Sequence[int], int, int, int, int]
# A content: (worth, packed pieces, width left over).
Content = tuple[int, int, int]
ENDLESS = 1 << 60
PAUSE_EVERY = 8_000  # contents begun


def layers_of(
    filled: KnapsackTable, copies: Sequence[int], counts: PackedCounts, width: int | None = None
) -> list[Layer]:
    """The pieces of a table of which there are still some (and that are not wider than `width`), last entered first."""
    return [
        (before, across, limit if limit < copies[piece] else copies[piece], value, counts.unit(piece))
        for before, across, limit, value, piece in filled.entries
        if copies[piece] and (width is None or across <= width)
    ]


def contents_in_steps(
    layers: Sequence[Layer],
    floor: Sequence[int],
    width: int,
    least: int,
    most: int,
    wanted: int | None = None,
    looks: int = ENDLESS,
    all_or_none: bool = False,
) -> Generator[None, None, tuple[list[Content], int]]:
    """Contents of a part of a strip `width` wide that are worth at least `least`, best first, up to `most` of them;
    pausing often.

    Parameters:
        layers: the pieces; their tables may have been made for more copies.
        floor: the place of each width in the tables.
        wanted: fields of pieces of which there must be one.
        looks: after so many pieces looked at it may end with what was found by then.
        all_or_none: to give up once there are more than `most`.

    Returns: the contents, and from which worth on all are among them: more than `least` where some were left out.
    """
    depth = len(layers)
    widths = [*(layer[1] for layer in layers), 0]
    still_wanted = [1] * (depth + 1)
    if wanted is None:
        wanted = 0
    else:
        still_wanted[depth] = 0
        for index in range(depth - 1, -1, -1):
            still_wanted[index] = still_wanted[index + 1] | (layers[index][4] & wanted)
    full = most if all_or_none else 2 * most
    found: list[Content] = []
    stack = [(least, 0, width, 0, 0)]
    begun = 0
    while stack:
        begun += 1
        if begun % PAUSE_EVERY == 0:
            yield
        hope, index, space, worth, packed = stack.pop()
        if hope < least:
            continue
        if looks < 0 and found:
            break
        while True:
            while widths[index] > space:
                index += 1
            if not (packed & wanted or still_wanted[index]):
                break
            if index == depth:
                if worth < least:
                    break
                found.append((worth, packed, space))
                if len(found) > full:
                    if all_or_none:
                        return [], worth + 1
                    least = _best(found, most)
                break
            looks -= 1
            before, across, limit, value, unit = layers[index]
            index += 1
            hope = worth + before[floor[space]]
            if limit == 1:
                rest = space - across
                other = worth + value + before[floor[rest]]
                if other > hope:
                    if hope >= least:
                        stack.append((hope, index, space, worth, packed))
                    hope, space, worth, packed = other, rest, worth + value, packed + unit
                elif other >= least:
                    stack.append((other, index, rest, worth + value, packed + unit))
            else:
                rest, worth_then, packed_then = space, worth, packed
                for _ in range(limit):
                    rest -= across
                    if rest < 0:
                        break
                    worth_then += value
                    packed_then += unit
                    other = worth_then + before[floor[rest]]
                    if other > hope:
                        if hope >= least:
                            stack.append((hope, index, space, worth, packed))
                        hope, space, worth, packed = other, rest, worth_then, packed_then
                    elif other >= least:
                        stack.append((other, index, rest, worth_then, packed_then))
            if hope < least:
                break
    if len(found) > most:
        least = _best(found, most)
    else:
        found.sort(reverse=True)
    return found, least


contents = in_one_go(contents_in_steps)


def _best(found: list[Content], most: int) -> int:
    """Leaves the best contents alone; returns what another must be worth to come among them for sure."""
    found.sort(reverse=True)
    del found[most:]
    return found[-1][0] + 1
