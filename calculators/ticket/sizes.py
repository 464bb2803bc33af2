"""Sizes measured at the end of a batch, against what the ticket says."""

from dataclasses import dataclass
from fractions import Fraction

from calculators.kinds import Length, Refused
from calculators.measure import quote, show_length
from calculators.phrase import Phrase, say
from calculators.ticket.batch import Batch
from calculators.ticket.small import show_small

MORE_AND_LESS = {"width": ("wider", "narrower"), "length": ("longer", "shorter")}
_FAR_OFF = Fraction(1, 2)  # a measure off by more than half is a slip of the pencil, not of the iron


@dataclass(frozen=True)
class Compared:
    """A measured size: whether it is within what the house allows, and that in a sentence."""

    within: bool
    said: Phrase


def read_size(text: str, side: str, batch: Batch) -> Fraction:
    """A measured width or length [mm] as it was typed.

    Raises Refused with one sentence.
    """
    size = Length(least=Fraction(1)).parse(text, batch.ruler)
    meant = batch.finished[side]
    if abs(size - meant) > meant * _FAR_OFF:
        raise Refused(
            f"{quote(text)} is far from the {show_length(meant, batch.ruler)} of the ticket. Measure again, and write the unit with the number."
        )
    return size


def compared(size: Fraction, side: str, batch: Batch) -> Compared:
    """A measured size against the ticket.

    size: as measured [mm]. side: "width" or "length".
    """
    meant, tolerance = batch.finished[side], batch.settled("tolerance_finished")
    off = size - meant
    if abs(off) * 2 < batch.ruler.step_mm:
        return Compared(True, say("As the ticket says."))
    word = MORE_AND_LESS[side][off < 0]
    values = {"off": show_small(abs(off), batch.ruler), "allowed": show_small(tolerance, batch.ruler)}
    if abs(off) <= tolerance:
        return Compared(True, say(f"{{off:text}} {word} than the ticket says; within {{allowed:text}}.", **values))
    return Compared(False, say(f"{{off:text}} {word} than the ticket says, more than the {{allowed:text}} allowed: put it aside.", **values))
