"""Every corner construction by name, made from one set of measures."""

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from calculators.trade.corners.binding import Pleats, mitred_binding
from calculators.trade.corners.corner import Corner
from calculators.trade.corners.faced import applied_border, faced_corner
from calculators.trade.corners.folded_corner import folded_corner
from calculators.trade.corners.mitre import folded_mitre, mitre_opened_flat, mitre_with_turn_folded
from calculators.trade.corners.plane import Number
from calculators.trade.corners.self_bound import self_bound_edge
from calculators.trade.corners.steps import CornerStep
from calculators.trade.corners.turning_out import Pressing, Sewing, Trimming


@dataclass(frozen=True)
class Measures:
    """What a corner is made with. Each construction takes what it needs.

    hem_1, hem_2: hem depth on each edge; width of a facing, border or binding [mm].
    angle: inside angle of the corner [degrees].
    turn: first turn, also of a border's inner edge [mm]. turn_2: that on edge 2, where it is another [mm].
    seam_allowance: what trimming a mitre leaves outside its seam [mm].
    edge_stitch: from a hem's inner edge to its row of stitches [mm].
    facing_seam: outside the seam that joins a facing or a border to its piece [mm].
    """

    hem_1: Number
    hem_2: Number
    angle: Number = Fraction(90)
    turn: Number = Fraction(0)
    seam_allowance: Number = Fraction(6)
    edge_stitch: Number = Fraction(2)
    trimming: Trimming = "trimmed, point snipped"
    pressed: Pressing = "open"
    pleats: Pleats = "opposite ways"
    facing_seam: Number = Fraction(6)
    turn_2: Number | None = None

    @property
    def corner(self) -> Corner:
        return Corner(self.hem_1, self.hem_2, self.angle, self.turn, self.turn_2)

    @property
    def seamed_corner(self) -> Corner:
        """The corner of work whose edges are seams: the allowance takes the place of the turn, both widths are
        alike."""
        return Corner(self.hem_1, self.hem_1, self.angle, self.facing_seam)

    @property
    def sewing(self) -> Sewing:
        return Sewing(self.seam_allowance, self.edge_stitch, self.trimming, self.pressed)

    @property
    def clearance(self) -> Number | None:
        """Cloth left outside the corner of a seam whose point is cut across: half the allowance."""
        return None if self.trimming == "left whole" else self.facing_seam / 2


@dataclass(frozen=True)
class Construction:
    """A way to make a corner: its name in the trade and its steps for given measures."""

    title: str
    steps: Callable[[Measures], list[CornerStep]]


CONSTRUCTIONS = {
    "mitre": Construction("Mitre, the turn kept folded", lambda m: mitre_with_turn_folded(m.corner, m.sewing)),
    "mitre-opened-flat": Construction("Mitre, everything opened flat", lambda m: mitre_opened_flat(m.corner, m.sewing)),
    "folded-mitre": Construction("Folded mitre, no seam", lambda m: folded_mitre(m.corner, m.sewing)),
    "folded-corner": Construction("Folded corner, no mitre", lambda m: folded_corner(m.corner, m.edge_stitch)),
    "faced": Construction("Faced corner", lambda m: faced_corner(m.seamed_corner, m.clearance, m.edge_stitch)),
    "applied-border": Construction(
        "Mitred applied border", lambda m: applied_border(m.seamed_corner, m.turn, m.clearance, m.edge_stitch)
    ),
    "binding": Construction("Mitred binding", lambda m: mitred_binding(m.hem_1, m.angle, m.pleats)),
    "self-bound": Construction("Self-bound edge", lambda m: self_bound_edge(m.corner, m.sewing)),
}
