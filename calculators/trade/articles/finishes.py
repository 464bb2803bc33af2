"""What is done to an edge, and the cloth that it takes up there."""

from dataclasses import dataclass
from fractions import Fraction

from calculators.trade.articles.parts import EdgeStretch

HEM, SEAM, BOUND, KEPT, RAW, CASING = "hem", "seam", "bound", "kept", "raw", "casing"
STRAP, TURNED_UNDER = "strap", "turned under"


@dataclass(frozen=True)
class Finish:
    """What is done to a stretch of an edge.

    how: one of the ways above. takes: cloth beyond the finished edge [mm]. hem: depth of the hem or casing that is
    folded there, of which the turn is what else it takes [mm].
    """

    stretch: EdgeStretch
    how: str
    takes: Fraction
    hem: Fraction = Fraction(0)


@dataclass(frozen=True)
class Glue:
    """Two stretches of equal length that lie on each other once the article is made up.

    angle: how far the second part is turned over the line, from 0, beside the first in one plane, to 180, lying on it.
    fold: whether the two parts are cut in one piece. inset: how far inside the edge of the first the second lies [mm].
    over: whether the second then lies on the right side of the first, as a border does that is turned to it.
    """

    one: EdgeStretch
    other: EdgeStretch
    angle: int = 180
    fold: bool = False
    inset: Fraction = Fraction(0)
    over: bool = False
