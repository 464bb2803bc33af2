"""How high each run lies over the table, stretch by stretch, in layers.

A run between two ends is straight, as high as it must be anywhere. A strip that runs on sinks on its way out as far as
what lies below lets it.
"""

from fractions import Fraction

from calculators.trade.sections.section import CrossSection, Run

Cell = tuple[Fraction, Fraction]


def levels(section: CrossSection) -> dict[Run, dict[Cell, int]]:
    """The height of every run over each stretch that it covers, 0 on the table."""
    cells = section.cells()
    found: dict[Run, dict[Cell, int]] = {}
    top: dict[Cell, int] = dict.fromkeys(cells, -1)
    for run in section.layers:
        mine = [cell for cell in cells if run in section.over(cell)]
        if run.runs_on:
            outward = mine if run.way > 0 else mine[::-1]
            found[run] = {
                cell: max(top[farther] + 1 for farther in outward[number:]) for number, cell in enumerate(outward)
            }
        else:
            found[run] = dict.fromkeys(mine, max(top[cell] + 1 for cell in mine))
        top |= found[run]
    return found
