"""Where care pays on a ticket: for the steps of a corner from its geometry, for the others as the workroom knows."""

from dataclasses import dataclass
from fractions import Fraction

from calculators.ticket.batch import Batch
from calculators.trade.corners.care import effects
from calculators.trade.corners.corner import Corner
from calculators.values.measure import Ruler
from calculators.values.phrase import Phrase, say
from calculators.values.small_lengths import show_small

CORNER_STEPS = ("turn", "hem", "marks", "alignment", "stitching")
_OFF = {"in": Fraction(254, 160)}  # [mm] the slip that is told of: 1 mm, or 1/16 in
_AS_MUCH, _HARDLY = 0.75, 0.05  # shares of the slip that show at the inner corner


@dataclass(frozen=True)
class Care:
    """How much care a step deserves, and why. is_worked_out: whether that follows from the corner; else it is common
    practice, no source."""

    level: str
    why: Phrase
    is_worked_out: bool = False


def corner_care(batch: Batch) -> dict[str, Care]:
    """The care that each step of this batch's corners deserves.

    Much, where a slip shows at the inner corner about as large as it was made, or larger; little, where it does not
    show there.
    """
    asked = batch.values["mitre-marks"]
    corner = Corner(*(float(asked[name]) for name in ("hem_1", "hem_2", "angle", "turn")))
    off = float(_OFF.get(batch.ruler.unit, Fraction(1)))
    found = effects(corner, dict.fromkeys(CORNER_STEPS, off))
    return {step: _care(off, seen["inner"], seen["edge"], batch.ruler) for step, seen in found.items()}


def _care(off: float, inner: float, edge: float, ruler: Ruler) -> Care:
    if inner < off * _HARDLY:
        moves = " Only the finished edge moves." if edge else ""
        return Care(
            "little",
            say(f"A slip here leaves the mitre right: the marks are taken from what it leaves.{moves}"),
            is_worked_out=True,
        )
    told = say(
        "A slip of {off:text} sets the hems {inner:text} apart at the inner corner.",
        off=show_small(off, ruler),
        inner=show_small(inner, ruler),
    )
    return Care("much" if inner >= off * _AS_MUCH else "some", told, is_worked_out=True)


STRAIGHTEN = Care("much", say("Everything else is measured from this end."))
MEASURE = Care("some", say("The length decides how many pieces there are; the ends only have to be clean."))
MARK = Care("much", say("The first end and the last mark prove all that lies between."))
CUT = Care("much", say("The hem will follow the thread you cut along. Loose threads at the edge need no trimming."))
WASH = Care("some", say("Wash as the finished pieces will be washed, and let the cloth dry without pulling it."))
TRIM = Care("little", say("No ruler is needed once the first corner has been looked at."))
TURN_OUT = Care("some", say("What is sharp goes through the cloth."))
EDGE_STITCH = Care("some", say("Everyone looks at the last stitches before a corner."))
PRESS = Care("little", say("The folds were set before; this press only smooths."))
CHECK = Care("much", say("The next plan begins with what was really measured."))
