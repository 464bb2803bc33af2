"""What every calculator asks that takes the width of a cloth: whether its selvedges are still on, and what is trimmed
off."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import Field, invalid_input
from calculators.trade.cloth import LongEdges
from calculators.values.kinds import Choice, Length

SELVEDGES, TRIMMED = "selvedges", "trimmed"
MEASURED = Field(
    "measured",
    "Width measured",
    Choice(options={SELVEDGES: "selvedge to selvedge", TRIMMED: "already trimmed"}),
    "Selvedge to selvedge: what is trimmed off both sides is taken off for you. Already trimmed: all of the width is "
    "used.",
    fixed=SELVEDGES,
    known_as=("measured",),
)
SELVEDGE = Field(
    "selvedge",
    "Selvedge trimmed off each side",
    Length(most=Fraction(500)),
    "Strip cut away at each side of a cloth that still has its selvedges; 0 to keep them.",
    "selvedge",
)


def long_edges(measured: str, selvedge: Fraction) -> LongEdges:
    """The long edges of a cloth as the two questions put them: how its width was measured, and the strip of a selvedge
    [mm]."""
    return LongEdges(measured == TRIMMED, selvedge)


def edges_that_leave_cloth(given: SimpleNamespace, width: Fraction) -> LongEdges:
    """The long edges asked for, of a cloth so wide [mm]; raises InvalidInput where its selvedges leave nothing between
    them."""
    edges = long_edges(given.measured, given.selvedge)
    if edges.between(width) <= 0:
        raise invalid_input(
            "selvedge",
            "Two selvedges of {selvedge:length} take up all of {width:length}. Write the strip trimmed off one side.",
            selvedge=given.selvedge,
            width=width,
        )
    return edges
