"""What is kept before all else where not everything fits: one of every kind, then what was ordered by number.

The pieces to be kept first are given to the solvers as pieces of their own that count more than all the others
together.
What a solver proves of the sum it then proves of both: as many of them as can be, and among such plans the most pieces.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from calculators.trade.lay_plan.order import Wanted
from calculators.trade.lay_plan.solving.model import Piece, Task
from calculators.trade.lay_plan.solving.plan import Part, Plan

OTHER, BY_NUMBER, FIRST = range(3)


@dataclass(frozen=True)
class Parted:
    """Pieces parted into those to be kept first and the rest.

    pieces: as a solver takes them. owners: for each the number of the piece it was. ranks: how soon each is kept.
    """

    pieces: tuple[Wanted, ...]
    owners: tuple[int, ...]
    ranks: tuple[int, ...]

    @cached_property
    def is_plain(self) -> bool:
        """Whether nothing is kept before anything else."""
        return not any(self.ranks)

    def valued(self, task: Task) -> Task:
        """A task for these pieces in which those kept sooner count more than all others together.

        task: one piece for each of ours, valued as if nothing came first.
        """
        if self.is_plain:
            return task
        values, below = [piece.worth for piece in task.pieces], 0
        for rank in (OTHER, BY_NUMBER, FIRST):
            numbers = [number for number, each in enumerate(self.ranks) if each == rank]
            for number in numbers if rank else ():
                values[number] += below
            below = max(
                below, 1 + sum(values[n] * task.quantity(n) for n, each in enumerate(self.ranks) if each <= rank)
            )
        return replace(task, pieces=tuple(replace(piece, value=value) for piece, value in zip(task.pieces, values)))

    def as_ordered(self, plan: Plan, pieces: tuple[Piece, ...]) -> Plan:
        """A plan for these pieces as a plan for the pieces they were."""
        return plan if self.is_plain else Plan(replace(plan.task, pieces=pieces), self._owned(plan.cloth))

    def _owned(self, part: Part) -> Part:
        parts = tuple(self._owned(each) for each in part.parts)
        return replace(part, parts=parts, piece=None if part.piece is None else self.owners[part.piece])


def parted(pieces: tuple[Wanted, ...], first: Mapping[int, int]) -> Parted:
    """The pieces with some copies of each set apart as those to be kept first.

    pieces: as ordered. first: copies of a piece to be kept first, by its number; empty where nothing comes first. Then
    what is ordered by
        number also comes before what is cut as often as it fits.
    Returns the pieces, who each belongs to, and how soon it is kept.
    Source: derived.
    """
    if not first:
        return Parted(pieces, tuple(range(len(pieces))), (OTHER,) * len(pieces))
    open_ended = any(piece.count is None for piece in pieces)
    found = []
    for number, piece in enumerate(pieces):
        copies = first.get(number, 0) if piece.count is None else min(piece.count, first.get(number, 0))
        left = None if piece.count is None else piece.count - copies
        if copies:
            found.append((replace(piece, count=copies), number, FIRST))
        if left != 0:
            found.append((replace(piece, count=left), number, BY_NUMBER if open_ended and left else OTHER))
    return Parted(*(tuple(column) for column in zip(*found)))
