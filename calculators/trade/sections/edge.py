"""What a hem, a seam or a closing is: its measures, its steps in order, and what it promises."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from calculators.trade.sections.section import CrossSection

PIECE, LOWER, UPPER = "piece", "lower piece", "upper piece"
FACING, BINDING, LINING = "facing", "binding", "lining"
HEM_ROW, HAND_ROW = "hem row", "hand stitches"
FIRST_ROW, SECOND_ROW = "first row", "second row"


@dataclass(frozen=True)
class EdgeMeasures:
    """What an edge is made with [mm].

    turn: first turn. hem: depth of a hem, a facing, a casing or a heading, width of a binding. edge_stitch: from the
    inner fold to its row. allowance: what a seam takes up at each edge. by_hand: whether a hem is sewn down by hand.
    """

    turn: Fraction
    hem: Fraction
    edge_stitch: Fraction
    allowance: Fraction
    by_hand: bool = False

    @property
    def hem_row(self) -> str:
        return HAND_ROW if self.by_hand else HEM_ROW


@dataclass(frozen=True)
class EdgeStep:
    """One step. Its texts have ``{name}`` where a length of this job belongs.

    name: what it is called in the workroom. do: one command without its full stop. section: the edge after it.
    lengths: those told [mm]. how: what belongs to doing it. why: the reason, which a page folds away. rules: keys of
    the trade's rules that it needs.
    """

    name: str
    do: str
    section: CrossSection
    lengths: Mapping[str, Fraction] = field(default_factory=dict)
    how: str = ""
    why: str = ""
    rules: tuple[str, ...] = ()


@dataclass(frozen=True)
class Edge:
    """A kind of hem, seam or closing.

    title: its name. steps: of making it. takes: what it takes up at each of its edges, of the finished section [mm].
    layers: at most so many of cloth lie over one another. through: how many each of its rows goes through. raw: the
    strips whose raw edges it promises to shut in; others are neatened, or `bare`. deep: whether it has a hem, or
    anything as deep. turned: whether that has a first turn of its own. seamed: whether it has a seam. room: less than
    this an allowance has to be [mm], where something else limits it. iso_4916: its class in that standard, where a
    source says so (`iso-4916`).
    """

    title: str
    steps: Callable[[EdgeMeasures], list[EdgeStep]]
    takes: Callable[[CrossSection], Fraction]
    layers: int
    through: Mapping[str, int]
    raw: tuple[str, ...] = ()
    bare: tuple[str, ...] = ()
    deep: bool = True
    turned: bool = False
    seamed: bool = False
    room: Callable[[EdgeMeasures], Fraction] | None = None
    iso_4916: int | None = None


def hem_takes(section: CrossSection) -> Fraction:
    """What a hem takes up.

    section: the finished hem.
    Returns the cloth that it takes [mm].
    Source: derived, the cloth from the raw edge to the finished fold, where the piece begins.
    """
    return section.runs_of(PIECE)[-1].low


def seam_takes(row: str, strip: str = LOWER) -> Callable[[CrossSection], Fraction]:
    """What a seam takes up at its edge.

    row: that holds it; strip: the piece that is looked at.
    Returns the cloth that it takes of a finished section [mm].
    Source: derived, the cloth from the raw edge to the row.
    """
    return lambda section: section.held(row, strip)
