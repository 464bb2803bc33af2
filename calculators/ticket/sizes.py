"""Sizes measured at the end of a batch, against what the ticket says: each by itself, whether a piece is square, and
all together."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import isqrt

from calculators.ticket.batch import Batch
from calculators.values.kind import InvalidValue
from calculators.values.kinds import Length
from calculators.values.measure import quote, show_length
from calculators.values.phrase import Phrase, say
from calculators.values.small_lengths import is_slight, show_small

MORE_AND_LESS = {"width": ("wider", "narrower"), "length": ("longer", "shorter")}
DIAGONALS = ("diagonal_1", "diagonal_2")
_WHERE = dict.fromkeys(DIAGONALS, "that the sizes on the ticket give from corner to corner")
_FAR_OFF = Fraction(1, 2)  # a measure off by more than half is a slip of the pencil, not of the iron


@dataclass(frozen=True)
class SizeCheck:
    """A measured size: whether it is within what the house allows, and that in a sentence."""

    within: bool
    message: Phrase


def read_size(text: str, side: str, batch: Batch) -> Fraction:
    """A measured size [mm] as it was typed.

    side: "width", "length", or one of DIAGONALS.
    Raises InvalidValue with one sentence.
    """
    size = Length(least=Fraction(1)).parse(text, batch.ruler)
    meant = _diagonal(batch) if side in DIAGONALS else batch.finished[side]
    if abs(size - meant) > meant * _FAR_OFF:
        raise InvalidValue(
            f"{quote(text)} is far from the {show_length(meant, batch.ruler)} {_WHERE.get(side, 'of the ticket')}. "
            "Measure again, and write the unit with the number."
        )
    return size


def compared(size: Fraction, side: str, batch: Batch) -> SizeCheck:
    """A measured size against the ticket.

    size: as measured [mm]. side: "width" or "length".
    """
    meant, tolerance = batch.finished[side], batch.settled("tolerance_finished")
    off = size - meant
    if is_slight(off, batch.ruler):
        return SizeCheck(True, say("As the ticket says."))
    word = MORE_AND_LESS[side][off < 0]
    values = {"off": show_small(abs(off), batch.ruler), "allowed": show_small(tolerance, batch.ruler)}
    if abs(off) <= tolerance:
        return SizeCheck(True, say(f"{{off:text}} {word} than the ticket says; within {{allowed:text}}.", **values))
    return SizeCheck(
        False,
        say(
            f"{{off:text}} {word} than the ticket says, more than the {{allowed:text}} allowed: put it aside.", **values
        ),
    )


def square(diagonals: Sequence[Fraction], batch: Batch) -> SizeCheck:
    """Whether a piece is square. diagonals: both, as measured [mm]."""
    off, tolerance = abs(diagonals[0] - diagonals[1]), batch.settled("tolerance_square")
    if is_slight(off, batch.ruler):
        return SizeCheck(True, say("Both diagonals are the same: square."))
    values = {"off": show_small(off, batch.ruler), "allowed": show_small(tolerance, batch.ruler)}
    if off <= tolerance:
        return SizeCheck(True, say("The diagonals differ by {off:text}; within {allowed:text}.", **values))
    return SizeCheck(
        False,
        say(
            "The diagonals differ by {off:text}, more than the {allowed:text} allowed: not square, put it aside.",
            **values,
        ),
    )


def together(sizes: Sequence[Fraction], side: str, batch: Batch) -> Phrase:
    """The mean of several pieces against the ticket, and how far they lie apart.

    sizes: widths or lengths as measured [mm], two or more. side: "width" or "length".
    """
    mean = sum(sizes, Fraction(0)) / len(sizes)
    off = mean - batch.finished[side]
    against = (
        "as the ticket says"
        if is_slight(off, batch.ruler)
        else f"{{off:text}} {MORE_AND_LESS[side][off < 0]} than the ticket says"
    )
    spread = max(sizes) - min(sizes)
    apart = (
        "all are the same" if is_slight(spread, batch.ruler) else "from the smallest to the largest it is {spread:text}"
    )
    return say(
        f"{side.capitalize()} of {{count:piece|pieces}}: {{mean:length}} on average, {against}; {apart}.",
        count=len(sizes), mean=mean, off=show_small(abs(off), batch.ruler), spread=show_small(spread, batch.ruler),
    )  # fmt: skip


def squareness_together(differences: Sequence[Fraction], batch: Batch) -> Phrase:
    """How far the diagonals of several pieces differ. differences: of the two diagonals of each piece [mm], two or
    more."""
    values = {
        "count": len(differences),
        "most": show_small(max(differences), batch.ruler),
        "allowed": show_small(batch.settled("tolerance_square"), batch.ruler),
    }
    if is_slight(max(differences), batch.ruler):
        return say("Diagonals of {count:piece|pieces}: the same on every piece.", **values)
    over = sum(each > batch.settled("tolerance_square") for each in differences)
    if over:
        return say(
            "Diagonals of {count:piece|pieces}: they differ by {most:text} at most; on {over:piece|pieces} by more "
            "than the {allowed:text} allowed.",
            over=over,
            **values,
        )
    return say(
        "Diagonals of {count:piece|pieces}: they differ by {most:text} at most; within {allowed:text}.", **values
    )


def _diagonal(batch: Batch) -> Fraction:
    """From corner to corner of a piece as the ticket has it, down to a thousandth of a millimetre."""
    squared = sum(each**2 for each in batch.finished.values()) * 1000**2
    return Fraction(isqrt(int(squared)), 1000)
