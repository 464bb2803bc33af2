"""A finished plan on one cloth, back in millimetres."""

from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import cache, cached_property, partial

from calculators.trade.lay_plan.order import Wanted
from calculators.trade.lay_plan.solving.plan import Part, Plan
from calculators.trade.lay_plan.usable import Usable


@dataclass(frozen=True)
class Rectangle:
    """A rectangle on the usable cloth: x across from its first long edge, y along from its straight end [mm]."""

    x: Fraction
    y: Fraction
    width: Fraction
    length: Fraction

    @property
    def right(self) -> Fraction:
        """Where it ends across the cloth [mm].

        Source: derived, its start across and its width.
        """
        return self.x + self.width

    @property
    def end(self) -> Fraction:
        """Where it ends along the cloth [mm].

        Source: derived, its start along and its length.
        """
        return self.y + self.length


@dataclass(frozen=True)
class LaidPiece:
    """Where one piece lies [mm]. piece: its number in the order; strip: number of the strip it is cut from, from 1."""

    piece: int
    box: Rectangle
    turned: bool
    strip: int


@dataclass(frozen=True)
class Lay:
    """One cloth with its plan.

    pieces: the sizes wanted, as the plan numbers them. unit: what one unit of the plan stands for [mm]. gap: between
    pieces [mm].
    """

    cloth: Usable
    pieces: tuple[Wanted, ...]
    plan: Plan
    unit: Fraction
    gap: Fraction

    @cached_property
    def strips(self) -> tuple[Part, ...]:
        """What the first cuts part the cloth into, in order, waste among it."""
        root = self.plan.cloth
        return root.parts or (root,)

    @cached_property
    def strip_boxes(self) -> tuple[Rectangle, ...]:
        """The strips as rectangles of cloth."""
        return tuple(self.extent(part) for part in self.strips)

    @property
    def first_cut(self) -> str:
        """The way of the first cuts: "across" or "along"."""
        return self.plan.cloth.cut or "across"

    @cached_property
    def placed(self) -> tuple[LaidPiece, ...]:
        """Every piece in cutting order."""
        return tuple(self._placed())

    def _placed(self) -> Iterator[LaidPiece]:
        number = 0
        for strip in self.strips:
            held = list(strip.held())
            number += bool(held)
            for piece, part in held:
                wanted = self.pieces[piece]
                width, length = (wanted.length, wanted.width) if part.turned else (wanted.width, wanted.length)
                yield LaidPiece(
                    piece, Rectangle(part.x * self.unit, part.y * self.unit, width, length), part.turned, number
                )

    @cached_property
    def counts(self) -> Counter[int]:
        return self.plan.counts()

    @cached_property
    def used_length(self) -> Fraction:
        """How far along the cloth the pieces reach [mm].

        Source: derived, the end of the piece that reaches farthest.
        """
        return max((placed.box.end for placed in self.placed), default=Fraction(0))

    @cached_property
    def length(self) -> Fraction:
        """Length that is drawn and cut from: the cloth's, or what is used of a cloth still to be bought [mm].

        Source: derived, a cloth still to be bought ends with its last piece.
        """
        return self.used_length if self.cloth.length is None else self.cloth.length

    @cached_property
    def piece_area(self) -> Fraction:
        """Area of all pieces [mm²].

        Source: derived, the pieces' areas added up, allowances and all.
        """
        return sum((placed.box.width * placed.box.length for placed in self.placed), Fraction(0))

    def extent(self, part: Part) -> Rectangle:
        """A part of the plan as a rectangle of cloth, without the gap that follows it."""
        follows = part.piece is not None or bool(part.parts)
        x, width = self._across(part.x, part.x + part.width, follows)
        y, length = self._along(part.y, part.y + part.length, follows)
        return Rectangle(x, y, width, length)

    @cached_property
    def _across(self) -> Callable[[int, int, bool], tuple[Fraction, Fraction]]:
        return cache(partial(self._from_and_size, self.cloth.width))

    @cached_property
    def _along(self) -> Callable[[int, int, bool], tuple[Fraction, Fraction]]:
        return cache(partial(self._from_and_size, self.length))

    def _from_and_size(self, room: Fraction, start: int, end: int, follows: bool) -> tuple[Fraction, Fraction]:
        """Where a stretch of the plan begins on the cloth and how long it is, which many parts of a plan share [mm]."""
        begins = start * self.unit
        return begins, max(min(end * self.unit - (self.gap if follows else 0), room) - begins, Fraction(0))
