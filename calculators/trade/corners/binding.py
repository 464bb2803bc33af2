"""The mitred binding: a strip sewn along both edges, pleated at the corner and wrapped around."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from calculators.trade.corners.cloth import Facet, FlatCloth
from calculators.trade.corners.convex import polygon
from calculators.trade.corners.corner import Corner
from calculators.trade.corners.plane import Isometry, Line, Number, Point, distance, onward
from calculators.trade.corners.stack import Stack
from calculators.trade.corners.steps import CornerStep, Measured, through_one_window
from calculators.trade.corners.turning_out import PokesOut
from calculators.trade.corners.window import AMPLE

Pleats = Literal["opposite ways", "the same way"]

PIECE, STRIP = "piece", "binding"


def mitred_binding(width: Number, angle: Number, pleats: Pleats = "opposite ways") -> list[CornerStep]:
    """A single binding with a mitred corner: the strip is four times its finished width.

    width: finished width of the binding [mm].
    angle: inside angle of the corner [degrees].
    pleats: whether the mitre on the back is laid to the other side than the one on the front, or to the same.

    The strip needs nothing extra at a corner: between the two ends of the stitching it takes up just what the raw edge
    would, whatever the angle.
    Raises PokesOut at a corner sharper than 90°, where the pleat is wider than the mitre it lies under.
    """
    if angle < 90:
        raise PokesOut("the pleat of this corner would stick out beyond the edge")
    corner = Corner(width, width, angle)
    reach = 7 * width / min(corner.direction_2[1], Fraction(1))
    stop, outer = corner.crossing, corner.at(0, 0)
    from_edge = distance(outer, (stop[0], Fraction(0)))
    far = AMPLE * reach
    piece = corner.cloth(far, PIECE, right_side_up=True)
    strip = FlatCloth(STRIP, (polygon([(-far, 0), (far, 0), (far, 4 * width), (-far, 4 * width)]),))
    laid = Stack.flat(piece, strip)
    first = laid.stitch(stop, (far, stop[1]))
    end: Point = (-far + width / 4, width)
    bisector = Line.through(outer, stop).towards((far, Fraction(0)))
    up = first.fold(bisector, take=(STRIP, end))
    square = Line(outer, (corner.direction_2[1], -corner.direction_2[0])).towards(corner.direction_2)
    down = up.fold(square, take=(STRIP, end))
    second = down.stitch(stop, onward(stop, corner.direction_2, far))
    finished = Stack(_Wrapping(strip, width, stop[0], far).around(piece, pleats), second.lines, second.seams)
    lengths = {"width": width, "strip_width": 4 * width, "stop": from_edge}
    steps = [
        CornerStep(
            "Lay the strip on",
            "Lay the strip, {strip_width} wide, on the right side",
            laid,
            lengths,
            how="Right sides together, raw edges level.",
        ),
        CornerStep(
            "Stitch to the stop",
            "Stitch {width} from the edge, stop {stop} before the corner and fasten",
            first,
            lengths,
            (Measured("stop", outer, (stop[0], Fraction(0))),),
        ),
        CornerStep(
            "Fold away",
            "Fold the strip away from the piece",
            up,
            how="Its raw edge runs on in line with the second edge.",
        ),
        CornerStep(
            "Fold back",
            "Fold it back over the piece, the fold level with the corner",
            down,
            how="Its raw edge lies along the second edge.",
        ),
        CornerStep(
            "Stitch the second side", "Stitch {width} from the second edge, from the stop onwards", second, lengths
        ),
        CornerStep(
            "Wrap",
            "Turn the binding over the edge and fold both mitres",
            finished,
            how="First the one on the front; turn the raw edge in, then fold the one on the back.",
        ),
        CornerStep(
            "Back",
            "Sew the binding’s fold down by hand along the seam, and the mitres closed",
            finished,
            from_below=True,
        ),
    ]
    return through_one_window(corner, reach, steps)


@dataclass(frozen=True)
class _Wrapping:
    """How the strip lies once it is wrapped around the edge.

    Along the strip lie four bands: allowance, front, back, turn. At the corner a pleat lies between the two sides, and
    its middle is the axis of the strip. On each face one side runs on into its half of the pleat and lies under the
    mitre; the other side ends in the mitre fold and has its half of the pleat tucked beneath it.
    """

    strip: FlatCloth
    width: Number
    stop: Number
    reach: Number

    @property
    def axis(self) -> Line:
        return Line((0, 0), (0, 1))

    def lay(self, side: int, band: int) -> Isometry:
        """How a side (1 or 2) lies in a band: it folds over at every border between bands."""
        if side == 2:
            mitre_fold = Line.through((0, 0), (self.stop, self.width))
            lay = Isometry.folded_over(self.axis).then(Isometry.folded_over(mitre_fold))
        else:
            lay = Isometry()
        for border in range(1, band + 1):
            lay = Isometry.folded_over(Line((0, border * self.width), (1, 0))).then(lay)
        return lay

    def _mitre_end(self, side: int, border: int) -> Point:
        """Where the mitre fold meets a border between bands: by turns at the strip's middle and at the stop."""
        away = 0 if border % 2 == 0 else self.stop
        return (away if side == 1 else -away, border * self.width)

    def arm(self, side: int, band: int) -> Facet:
        """A side of the strip in a band, as far as the mitre fold."""
        far = self.reach if side == 1 else -self.reach
        ends = ((far, band * self.width), (far, (band + 1) * self.width))
        ring = (self._mitre_end(side, band), *ends, self._mitre_end(side, band + 1))
        return Facet(self.strip, polygon(ring), self.lay(side, band))

    def half_pleat(self, side: int, band: int, lay: Isometry) -> Facet:
        """The half of the pleat next to a side, in a band."""
        middle = [(0, border * self.width) for border in (band, band + 1)]
        ring = (middle[0], self._mitre_end(side, band), self._mitre_end(side, band + 1), middle[1])
        return Facet(self.strip, polygon(ring), lay)

    def face(self, inner: int, outer: int, under: int) -> list[Facet]:
        """One face of the binding from the piece outwards: its two bands, and the side that runs on under the mitre."""
        over = 3 - under
        tucked = {band: Isometry.folded_over(self.axis).then(self.lay(under, band)) for band in (inner, outer)}

        def running_on(band: int) -> list[Facet]:
            return [self.arm(under, band), self.half_pleat(under, band, self.lay(under, band))]

        return [
            self.arm(over, inner),
            self.half_pleat(over, inner, tucked[inner]),
            *running_on(inner),
            *running_on(outer),
            self.half_pleat(over, outer, tucked[outer]),
            self.arm(over, outer),
        ]

    def around(self, piece: FlatCloth, pleats: Pleats) -> tuple[Facet, ...]:
        """Everything from the back upwards."""
        front = self.face(inner=0, outer=1, under=2)
        back = self.face(inner=3, outer=2, under=1 if pleats == "opposite ways" else 2)
        return (*reversed(back), *(Facet(piece, part) for part in piece.shape), *front)
