"""The kinds of value of measures that a house settles: one each, so that what one page takes every other page takes."""

from dataclasses import replace
from fractions import Fraction

from calculators.values.kinds import Length, LongLength, Percent

HEM = Length(least=Fraction(1), most=Fraction(1_000))
HEM_OR_NONE = replace(HEM, or_none=True)
TURN = Length(most=Fraction(1_000))
ALLOWANCE = Length(least=Fraction(1, 2), most=Fraction(200))
ALLOWANCE_OR_NONE = replace(ALLOWANCE, or_none=True)
EDGE_STITCH = Length(least=Fraction(1, 2), most=Fraction(200))
STITCH = Length(least=Fraction(1, 2), most=Fraction(50))
HEM_THICKNESS = Length(least=Fraction(1, 8), most=Fraction(50))
SPOOL = LongLength(least=Fraction(1_000), most=Fraction(50_000_000))
BOBBIN = LongLength(least=Fraction(1_000))
CLOTH_WIDTH = Length(least=Fraction(10), most=Fraction(6_000))
LEARNING = Percent(least=Fraction(50), most=Fraction(100), sample="95")
PIECE = Length(least=Fraction(20), most=Fraction(20_000))
