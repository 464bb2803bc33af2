"""How high each run lies over the table, stretch by stretch, in layers.

A run between two ends is straight, as high as it must be anywhere. A strip that runs on sinks on its way out as far as
what lies below lets it. What lies over something solid follows it.
"""

from collections.abc import Mapping
from fractions import Fraction

from calculators.trade.sections.section import CrossSection, Run

Cell = tuple[Fraction, Fraction]
SOLID = 3.0  # layers that something solid is high unless it is said otherwise


def levels(section: CrossSection, heights: Mapping[str, float] | None = None) -> dict[Run, dict[Cell, float]]:
    """The height of every run over each stretch that it covers.

    section: the runs and their order; heights: of what is solid [layers].
    Returns heights over the table [layers].
    Source: derived, each run lies a layer above what is below it.
    """
    cells = section.cells()
    found: dict[Run, dict[Cell, float]] = {}
    top: dict[Cell, float] = dict.fromkeys(cells, -1)
    lifted: dict[Cell, float] = dict.fromkeys(cells, 0)
    for run in section.layers:
        mine = [cell for cell in cells if run in section.lying(cell)]
        if run.solid:
            found[run] = dict.fromkeys(mine, max(top[cell] + 1 for cell in mine))
            for cell in mine:
                lifted[cell] += (heights or {}).get(run.strip, SOLID)
                top[cell] += lifted[cell]
            continue
        need = {cell: top[cell] - lifted[cell] + 1 for cell in mine}
        if run.runs_on:
            outward = mine if run.way > 0 else mine[::-1]
            found[run] = {
                cell: max(need[farther] for farther in outward[number:]) for number, cell in enumerate(outward)
            }
        else:
            found[run] = dict.fromkeys(mine, max(need.values()))
        found[run] = {cell: level + lifted[cell] for cell, level in found[run].items()}
        top |= found[run]
    return found
