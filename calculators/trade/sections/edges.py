"""Every hem, seam and closing by name."""

from collections.abc import Mapping

from calculators.trade.sections.closings import CLOSINGS
from calculators.trade.sections.covered import COVERED
from calculators.trade.sections.edge import Edge
from calculators.trade.sections.hems import HEMS
from calculators.trade.sections.seams import SEAMS
from calculators.trade.sections.tops import TOPS

EDGES: Mapping[str, Edge] = {**HEMS, **COVERED, **SEAMS, **CLOSINGS, **TOPS}
