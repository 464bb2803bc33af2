"""Good contents at once: they fit, they are counted right, and with few pieces the best one is among them."""

from hypothesis import given
from hypothesis import strategies as st

from calculators.layplan.counts import PackedCounts
from calculators.layplan.strip_quick import good_contents
from calculators.layplan.strip_table import StripShapes, Way

SIZES = st.lists(st.tuples(st.integers(1, 12), st.integers(1, 5), st.integers(1, 3), st.integers(0, 20), st.integers(0, 3)), min_size=1, max_size=5)


@given(SIZES, st.integers(0, 12))
def test_contents_fit_and_the_best_is_found(sizes, width):
    """Each size: width, height, copies in the table, value, copies taken since."""
    copies = [copies for _, _, copies, _, _ in sizes]
    left = [max(0, copies - taken) for _, _, copies, _, taken in sizes]
    values = [value for _, _, _, value, _ in sizes]
    shapes = StripShapes(12, [Way(number, across, height) for number, (across, height, *_) in enumerate(sizes)], copies)
    counts = PackedCounts(copies)
    found = good_contents(shapes, counts, left, shapes.fill(values)[-1], width, 4)
    for worth, packed, space in found:
        taken = counts.unpack(packed)
        assert all(count <= there for count, there in zip(taken, left))
        assert worth == sum(value * count for value, count in zip(values, taken))
        assert space == width - sum(size[0] * count for size, count in zip(sizes, taken)) >= 0
    best = [0] * (width + 1)
    for (across, *_), value, count in zip(sizes, values, left):
        for _ in range(count):
            for place in range(width, across - 1, -1):
                best[place] = max(best[place], best[place - across] + value)
    assert best[width] == found[0][0]
