"""How time grows with the number of pieces and of sizes: made-up orders of table linen."""

from collections.abc import Iterator
from random import Random

from calculators.trade.lay_plan.solving.model import Piece, Task
from scripts.plan_cases.cases import Case

WIDTH = 150
PIECES = (10, 25, 50, 100, 250, 500)
SIZES = (1, 2, 5, 10, 20)


def orders() -> Iterator[Case]:
    """Orders on the shortest length of a cloth 150 cm wide, in whole centimetres, the same every time."""
    for pieces in PIECES:
        for sizes in SIZES:
            if sizes > pieces:
                continue
            random = Random(f"{pieces} {sizes}")
            shares = [1 + pieces // sizes - 1 + (1 if size < pieces % sizes else 0) for size in range(sizes)]
            order = tuple(Piece(random.randint(20, 75), random.randint(20, 120), share) for share in shares)
            yield Case(f"{pieces} pieces, {sizes} sizes", "2 stages, across, shortest", Task(WIDTH, None, order), 0)
