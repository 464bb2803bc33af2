"""Small random tasks for hypothesis."""

from hypothesis import strategies as st

from calculators.trade.lay_plan.solving.model import Piece, Task


@st.composite
def small_tasks(draw, stages=(2,), first_cuts=("across", "along"), with_length=True):
    """Tasks so small that trying everything ends soon."""
    width = draw(st.integers(2, 6))
    length = draw(st.integers(2, 6)) if with_length else None
    pieces = []
    left = 5
    for _ in range(draw(st.integers(1, 3))):
        quantity = draw(st.integers(1, 3))
        quantity = min(quantity, left)
        if quantity == 0:
            break
        left -= quantity
        piece_width = draw(st.integers(1, width if not with_length else width + 1))
        pieces.append(
            Piece(
                width=piece_width,
                length=draw(st.integers(1, 4)),
                quantity=quantity,
                value=draw(st.one_of(st.none(), st.integers(1, 12))),
                may_turn=draw(st.booleans()),
            )
        )
    return Task(width, length, tuple(pieces), draw(st.sampled_from(stages)), draw(st.sampled_from(first_cuts)))
